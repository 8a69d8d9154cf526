package org.readback.desk;

import static org.junit.Assert.assertArrayEquals;
import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNull;
import static org.junit.Assert.assertThrows;
import static org.junit.Assert.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.FileNotFoundException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.Before;
import org.junit.Rule;
import org.junit.Test;
import org.junit.rules.TemporaryFolder;

public class ModelStoreTest {
    @Rule public final TemporaryFolder tmp = new TemporaryFolder();
    private final Map<String, byte[]> assets = new TreeMap<>();
    private final List<String> opened = new ArrayList<>();
    private final List<Integer> progress = new ArrayList<>();
    private int breakAfter = Integer.MAX_VALUE; // bytes

    @Before
    public void files() throws Exception {
        put("am/final.mdl", 100_000);
        put("conf/mfcc.conf", 10);
        put("graph/words.txt", 70_000);
        list();
    }

    private void put(String path, int size) {
        byte[] b = new byte[size];
        for (int i = 0; i < size; i++) {
            b[i] = (byte) (i * 31 + path.hashCode());
        }
        assets.put(path, b);
    }

    private void list() throws Exception {
        StringBuilder s = new StringBuilder();
        for (Map.Entry<String, byte[]> e : assets.entrySet()) {
            if (e.getKey().equals("model.list")) {
                continue;
            }
            StringBuilder hex = new StringBuilder();
            for (byte x : MessageDigest.getInstance("SHA-256").digest(e.getValue())) {
                hex.append(String.format("%02x", x));
            }
            s.append(hex).append(' ').append(e.getValue().length).append(' ').append(e.getKey()).append('\n');
        }
        assets.put("model.list", s.toString().getBytes(StandardCharsets.UTF_8));
    }

    private ModelStore store() {
        return new ModelStore(path -> {
            byte[] b = assets.get(path);
            if (b == null) {
                throw new FileNotFoundException(path);
            }
            opened.add(path);
            return new FilterInputStream(new ByteArrayInputStream(b)) {
                @Override
                public int read(byte[] to, int at, int n) throws IOException {
                    if (breakAfter <= 0) {
                        throw new IOException("the process ended");
                    }
                    int got = super.read(to, at, Math.min(n, breakAfter));
                    if (!path.equals("model.list")) {
                        breakAfter -= Math.max(0, got);
                    }
                    return got;
                }
            };
        }, tmp.getRoot());
    }

    private void whole(File dir) throws Exception {
        for (Map.Entry<String, byte[]> e : assets.entrySet()) {
            if (!e.getKey().equals("model.list")) {
                assertArrayEquals(e.getKey(), e.getValue(), Files.readAllBytes(new File(dir, e.getKey()).toPath()));
            }
        }
    }

    @Test
    public void unpacksOnceWithProgress() throws Exception {
        whole(store().ready(progress::add));
        assertEquals(100, (int) progress.get(progress.size() - 1));
        for (int i = 1; i < progress.size(); i++) {
            assertTrue(progress.get(i) > progress.get(i - 1));
        }
        opened.clear();
        whole(store().ready(p -> { }));
        assertEquals(List.of("model.list"), opened);
    }

    @Test
    public void withoutAModelThereIsNone() throws Exception {
        assets.clear();
        assertNull(store().ready(p -> { }));
    }

    @Test
    public void goesOnWhereItWasCutOff() throws Exception {
        for (int cut : new int[] {0, 1, 65_536, 99_999, 100_000, 100_005, 100_010, 170_009}) {
            delete(tmp.getRoot());
            breakAfter = cut;
            assertThrows(IOException.class, () -> store().ready(p -> { }));
            assertEquals("no folder before it is whole, cut at " + cut, 0,
                    tmp.getRoot().listFiles((d, n) -> n.matches("model-[0-9a-f]+")).length);
            breakAfter = Integer.MAX_VALUE;
            opened.clear();
            whole(store().ready(p -> { }));
            assertEquals("cut at " + cut, cut <= 100_000, opened.contains("am/final.mdl"));
        }
    }

    @Test
    public void aDamagedFileIsNamed() throws Exception {
        assets.get("graph/words.txt")[5] ^= 1;
        ModelStore.DamagedException e = assertThrows(ModelStore.DamagedException.class, () -> store().ready(p -> { }));
        assertEquals("graph/words.txt", e.path);
        assets.put("graph/words.txt", Arrays.copyOf(assets.get("graph/words.txt"), 69_999));
        assertEquals("graph/words.txt", assertThrows(ModelStore.DamagedException.class, () -> store().ready(p -> { })).path);
    }

    @Test
    public void aFileLostLaterIsBroughtBack() throws Exception {
        File dir = store().ready(p -> { });
        assertTrue(new File(dir, "conf/mfcc.conf").delete());
        whole(store().ready(p -> { }));
    }

    @Test
    public void anotherVersionReplacesTheOld() throws Exception {
        File old = store().ready(p -> { });
        put("am/final.mdl", 50_000);
        list();
        File now = store().ready(p -> { });
        assertFalse(old.equals(now));
        assertFalse(old.exists());
        whole(now);
        assertEquals(1, tmp.getRoot().listFiles().length);
    }

    @Test
    public void aBadListIsNamed() {
        for (String bad : new String[] {"", "x 1 a\n", "00 1 a\n", "0".repeat(64) + " -1 a\n", "0".repeat(64) + " 1 ../a\n",
                "0".repeat(64) + " 1 /a\n", "0".repeat(64) + " 1 a//b\n", "0".repeat(64) + " 1 \n"}) {
            assets.put("model.list", bad.getBytes(StandardCharsets.UTF_8));
            assertEquals("model.list", assertThrows(bad, ModelStore.DamagedException.class, () -> store().ready(p -> { })).path);
        }
    }

    @Test
    public void tooLittleRoomIsToldBeforeWriting() throws Exception {
        assets.put("model.list", ("0".repeat(64) + " 900000000000000 a\n").getBytes(StandardCharsets.UTF_8));
        ModelStore.NoRoomException e = assertThrows(ModelStore.NoRoomException.class, () -> store().ready(p -> { }));
        assertTrue(e.needed > 0);
    }

    private static void delete(File dir) {
        for (File f : dir.listFiles()) {
            if (f.isDirectory()) {
                delete(f);
            }
            f.delete();
        }
    }
}
