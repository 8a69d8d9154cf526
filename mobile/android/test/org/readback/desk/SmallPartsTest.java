package org.readback.desk;

import static org.junit.Assert.assertArrayEquals;
import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNotEquals;
import static org.junit.Assert.assertNull;
import static org.junit.Assert.assertThrows;
import static org.junit.Assert.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.Test;

/** The small deciders, each with its table. */
public class SmallPartsTest {
    @Test
    public void nothingHereTouchesTheFramework() throws IOException {
        Path desk = Path.of(System.getProperty("readback.sources"), "org/readback/desk");
        try (Stream<Path> files = Files.walk(desk)) {
            List<Path> java = files.filter(f -> f.toString().endsWith(".java")).collect(Collectors.toList());
            assertTrue(java.size() > 10);
            for (Path f : java) {
                String s = Files.readString(f);
                assertFalse(f + " imports the framework", s.contains("import android") || s.contains("import org.json") || s.contains("import org.readback.mobile"));
            }
        }
    }

    @Test
    public void safelyNeverThrows() {
        List<Throwable> got = new ArrayList<>();
        Safely s = new Safely(got::add);
        assertTrue(s.run(() -> { }));
        assertFalse(s.run(() -> { throw new IOException("checked"); }));
        assertFalse(s.run(() -> { throw new StackOverflowError(); }));
        assertEquals(2, got.size());
        assertFalse(new Safely(t -> { throw new IllegalStateException("the reporter too"); }).run(() -> { throw new OutOfMemoryError(); }));
    }

    @Test
    public void keysAreOursInAJobOnly() {
        assertEquals("ready", Keys.volume(Keys.VOLUME_UP, true));
        assertEquals("repeat", Keys.volume(Keys.VOLUME_DOWN, true));
        assertNull(Keys.volume(Keys.VOLUME_UP, false));
        assertNull(Keys.volume(Keys.HEADSET, true));
        assertTrue(Keys.headset(Keys.PLAY_PAUSE));
        assertEquals("repeat", Keys.media(Keys.NEXT));
        assertEquals("hold", Keys.media(Keys.PREVIOUS));
    }

    @Test
    public void headsetPressesAreToldApart() {
        Keys k = new Keys();
        assertEquals(Keys.Press.SINGLE_LATER, k.up(1000, 80));
        assertTrue(k.single(1000));
        assertFalse("told once", k.single(1000));
        assertEquals(Keys.Press.SINGLE_LATER, k.up(2000, 80));
        assertEquals(Keys.Press.DOUBLE, k.up(2200, 80));
        assertFalse("it became a double press", k.single(2000));
        assertEquals(Keys.Press.HELD, k.up(5000, 900));
        assertEquals(Keys.Press.SINGLE_LATER, k.up(8000, 80));
        assertEquals(Keys.Press.SINGLE_LATER, k.up(9000, 80));
        assertFalse(k.single(8000));
        assertTrue(k.single(9000));
        assertEquals("quiet", Keys.command(Keys.Press.SINGLE_LATER, true));
        assertEquals("ready", Keys.command(Keys.Press.SINGLE_LATER, false));
        assertEquals("repeat", Keys.command(Keys.Press.DOUBLE, true));
        assertEquals("hold", Keys.command(Keys.Press.HELD, false));
    }

    @Test
    public void cuesAreToldApartByRhythm() {
        String[] names = {"heard", "accepted", "ask", "refused", "hold", "resume", "timer", "danger"};
        for (String a : names) {
            short[] sa = Cues.sound(a);
            int peak = 0;
            for (short v : sa) {
                peak = Math.max(peak, Math.abs(v));
            }
            assertTrue(a + " is heard", peak > 500);
            assertTrue(a + " does not clip", peak < 32767);
            assertTrue(a + " is short", sa.length < 1.5 * Cues.RATE);
            assertEquals(a + " ends still", 0, sa[sa.length - 1]);
            for (String b : names) {
                if (!a.equals(b)) {
                    assertFalse(a + " and " + b, Arrays.equals(sa, Cues.sound(b)));
                }
            }
        }
        assertArrayEquals("an unknown one asks", Cues.sound("ask"), Cues.sound("no such cue"));
    }

    @Test
    public void aCueHasThePitchItIsMeantToHave() {
        short[] s = Cues.sound("heard");
        int crossings = 0;
        int n = Cues.RATE * 70 / 1000;
        for (int i = 1; i < n; i++) {
            if (s[i - 1] <= 0 && s[i] > 0) {
                crossings++;
            }
        }
        assertEquals(620, crossings * 1000.0 / 70, 30);
    }

    @Test
    public void buzzPatternsBeginWithAPauseAndDiffer() {
        List<String> seen = new ArrayList<>();
        for (String p : new String[] {"short", "double", "long", "triple"}) {
            long[] t = Buzz.times(p);
            assertEquals(0, t[0]);
            assertEquals("ends with an on time", 0, t.length % 2);
            assertFalse(seen.contains(Arrays.toString(t)));
            seen.add(Arrays.toString(t));
        }
    }

    @Test
    public void batteryIsToldInSteps() {
        List<Double> got = new ArrayList<>();
        Battery b = new Battery(got::add);
        b.news(100, 100);
        b.news(99, 100);
        b.news(42, 200);
        b.news(20, 100);
        b.news(19, 100);
        b.news(15, 100);
        b.news(14, 100);
        b.news(5, 100);
        b.news(-1, 100);
        b.news(5, 0);
        assertEquals(List.of(100.0, 21.0, 20.0, 15.0, 5.0), got);
    }

    @Test
    public void oneInterruptionIsToldOnce() {
        List<String> got = new ArrayList<>();
        Attention a = new Attention(got::add);
        a.focus(Attention.FOCUS_DUCK);
        a.focus(Attention.FOCUS_LOSS_TRANSIENT);
        a.mode(Attention.MODE_RINGTONE);
        a.mode(Attention.MODE_IN_CALL);
        a.focus(Attention.FOCUS_GAIN);
        assertEquals(List.of("call"), got);
        a.mode(Attention.MODE_NORMAL);
        assertEquals(List.of("call", "back"), got);
        a.focus(Attention.FOCUS_LOSS);
        a.focus(Attention.FOCUS_GAIN);
        assertEquals(List.of("call", "back", "call", "back"), got);
    }

    @Test
    public void aCallIsToldApartFromOtherSound() {
        List<String> got = new ArrayList<>();
        Attention a = new Attention(new Attention.Out() {
            @Override
            public void device(String kind) {
                got.add(kind);
            }

            @Override
            public void call(boolean on) {
                got.add("in call " + on);
            }
        });
        a.focus(Attention.FOCUS_LOSS);
        assertTrue(a.lost());
        a.mode(Attention.MODE_CALL_SCREENING);
        a.mode(Attention.MODE_IN_COMMUNICATION);
        a.mode(Attention.MODE_NORMAL);
        a.focus(Attention.FOCUS_GAIN);
        assertEquals(List.of("call", "in call true", "in call false", "back"), got);
        assertFalse(a.lost());
    }

    @Test
    public void threeSecondsOfZerosAreNoRoom() {
        Silence s = new Silence(16000);
        byte[] zero = new byte[3200];
        byte[] room = new byte[3200];
        room[77] = 1;
        for (int i = 0; i < 29; i++) {
            assertEquals(0, s.block(zero, zero.length));
        }
        assertEquals(1, s.block(zero, zero.length));
        assertEquals(0, s.block(zero, zero.length));
        assertEquals(-1, s.block(room, room.length));
        assertEquals(0, s.block(room, room.length));
        assertEquals("only the part that is sound counts", 0, s.block(room, 76));
    }

    @Test
    public void brightnessIsPackedWithoutPadding() {
        byte[] plane = {1, 2, 3, 9, 4, 5, 6}; // the last row without its padding
        assertArrayEquals(new byte[] {1, 2, 3, 4, 5, 6}, Luma.pack(ByteBuffer.wrap(plane), 3, 2, 4, 1).pixels);
        byte[] spread = {1, 0, 2, 0, 9, 3, 0, 4};
        assertArrayEquals(new byte[] {1, 2, 3, 4}, Luma.pack(ByteBuffer.wrap(spread), 2, 2, 5, 2).pixels);
        ByteBuffer b = ByteBuffer.wrap(plane);
        Luma.pack(b, 3, 2, 4, 1);
        assertEquals(0, b.position());
        Luma two = Luma.pack(ByteBuffer.wrap(new byte[] {1, 2, 3, 4, 5, 6}), 3, 2, 3, 1);
        assertArrayEquals(new byte[] {4, 1, 5, 2, 6, 3}, two.turned(90).pixels);
        assertArrayEquals(new byte[] {6, 5, 4, 3, 2, 1}, two.turned(180).pixels);
        assertArrayEquals(new byte[] {3, 6, 2, 5, 1, 4}, two.turned(270).pixels);
        assertEquals(2, two.turned(90).width);
        assertEquals(two, two.turned(360));
        assertThrows(IllegalArgumentException.class, () -> Luma.pack(ByteBuffer.wrap(plane), 3, 3, 4, 1));
        assertThrows(IllegalArgumentException.class, () -> Luma.pack(ByteBuffer.wrap(plane), 5, 1, 4, 1));
        assertThrows(IllegalArgumentException.class, () -> Luma.pack(ByteBuffer.wrap(plane), 0, 1, 4, 1));
    }

    @Test
    public void colourFollowsTheBrightness() {
        Luma y = Luma.pack(ByteBuffer.wrap(new byte[] {1, 2, 3, 4, 5, 6}), 3, 2, 3, 1).turned(90);
        Luma cb = Luma.pack(ByteBuffer.wrap(new byte[] {7, 8}), 2, 1, 2, 1).turned(90);
        Luma cr = Luma.pack(ByteBuffer.wrap(new byte[] {9, 0, 10}), 2, 1, 3, 2).turned(90);
        assertArrayEquals(new byte[] {4, 1, 5, 2, 6, 3, 7, 8, 9, 10}, y.coloured(cb, cr).pixels);
        assertThrows(IllegalArgumentException.class, () -> y.coloured(cb, y));
    }

    @Test
    public void theSmallestSizeThatIsWideEnough() {
        int[][] sizes = {{4000, 3000}, {1920, 1080}, {640, 480}, {320, 240}};
        assertArrayEquals(new int[] {640, 480}, Luma.choose(sizes, 640));
        assertArrayEquals(new int[] {1920, 1080}, Luma.choose(sizes, 1000));
        assertArrayEquals(new int[] {4000, 3000}, Luma.choose(sizes, 9000));
        assertNull(Luma.choose(new int[0][], 640));
    }

    @Test
    public void slowSpeechIsCutAtItsPauses() {
        assertEquals(List.of("Power is off,", "and proved."), Phrases.split("Power is off, and proved."));
        assertEquals(List.of("One probe in each hole.", "Number and unit?"), Phrases.split("One probe in each hole. Number and unit?"));
        assertEquals(List.of("two point five volts"), Phrases.split("two point five volts"));
        assertEquals(List.of("a,", "b;", "c"), Phrases.split("a, b; c"));
        assertEquals(List.of(), Phrases.split("  "));
    }

    @Test
    public void theVoiceIsOfflineAndOfTheLanguage() {
        VoiceChoice.Info net = new VoiceChoice.Info("net", "en", "US", true, true, 500, 100);
        VoiceChoice.Info far = new VoiceChoice.Info("far", "en", "GB", false, true, 500, 100);
        VoiceChoice.Info near = new VoiceChoice.Info("near", "en", "US", false, true, 300, 200);
        VoiceChoice.Info quick = new VoiceChoice.Info("quick", "en", "US", false, true, 300, 100);
        VoiceChoice.Info absent = new VoiceChoice.Info("absent", "en", "US", false, false, 500, 100);
        VoiceChoice.Info other = new VoiceChoice.Info("other", "de", "DE", false, true, 500, 100);
        assertEquals("quick", VoiceChoice.best(List.of(net, far, near, quick, absent, other), "en", "US"));
        assertEquals("far", VoiceChoice.best(List.of(near, far), "en", "GB"));
        assertEquals("far", VoiceChoice.best(List.of(net, far), "en", "US"));
        assertNull(VoiceChoice.best(List.of(net, absent, other), "en", "US"));
    }

    @Test
    public void aKeysAnswerIsAPlainWord() {
        assertTrue(Said.command("ready").contains("\"source\":\"key\""));
        assertTrue(Said.command("cant-reach").contains("\"id\":\"cant-reach\""));
        assertThrows(IllegalArgumentException.class, () -> Said.command("a\"b"));
    }

    @Test
    public void aReplyKnowsItsType() {
        Reply r = new Reply(200, "text/html; charset=utf-8", null);
        assertEquals("text/html", r.mime());
        assertEquals("utf-8", r.charset());
        assertEquals("", r.string());
        assertNull(new Reply(200, "image/png", new byte[1]).charset());
        assertNotEquals(null, Reply.text(404, "x").body);
    }
}
