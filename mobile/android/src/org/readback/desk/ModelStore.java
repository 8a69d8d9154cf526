package org.readback.desk;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.FileNotFoundException;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;

/**
 * Unpacks the recogniser's model out of the app once. Every file is verified while it is copied; the work can be cut off at
 * any byte and goes on with the first file that is not whole; the finished folder appears by one rename, so a folder that
 * is there is complete. A folder of another version is removed only after the new one stands.
 *
 * <p>The list of files is an asset: one line a file, {@code sha256 size path}, in any order.
 */
public final class ModelStore {
    /** Opens an asset by its path under the model's folder. */
    public interface Source {
        InputStream open(String path) throws IOException;
    }

    /** Receives per cent, 0 to 100, each at most once and rising. */
    public interface Progress {
        void percent(int percent);
    }

    /** Not enough free space. */
    public static final class NoRoomException extends IOException {
        public final long needed; // bytes

        NoRoomException(long needed) {
            super("model: " + needed + " bytes of free space are needed");
            this.needed = needed;
        }
    }

    /** A file differs from the list. */
    public static final class DamagedException extends IOException {
        public final String path;

        DamagedException(String path, String what) {
            super("model: " + path + ": " + what);
            this.path = path;
        }
    }

    private static final class Entry {
        final String sha256;
        final long size;
        final String path;

        Entry(String sha256, long size, String path) {
            this.sha256 = sha256;
            this.size = size;
            this.path = path;
        }
    }

    private static final String LIST = "model.list";
    private static final long SPARE = 8L << 20; // bytes that must stay free for the records of jobs

    private final Source source;
    private final File root;

    /** Root is a private folder of the app; it is made when missing. */
    public ModelStore(Source source, File root) {
        this.source = source;
        this.root = root;
    }

    /**
     * Returns the folder of the complete model, unpacking first when needed; may take many seconds. Null: the app carries
     * no model.
     */
    public File ready(Progress progress) throws IOException {
        byte[] list;
        try (InputStream in = source.open(LIST)) {
            list = readAll(in);
        } catch (FileNotFoundException none) {
            return null;
        }
        List<Entry> entries = parse(list);
        File done = new File(root, "model-" + hex(digest().digest(list)).substring(0, 16));
        if (complete(done, entries)) {
            progress.percent(100);
            return done;
        }
        File part = new File(root, done.getName() + ".part");
        unpack(entries, part, progress);
        if (done.exists()) {
            delete(done); // it is not complete, or we would not be here
        }
        if (!part.renameTo(done)) {
            throw new IOException("model: renaming " + part + " to " + done);
        }
        sweep(done);
        progress.percent(100);
        return done;
    }

    private void unpack(List<Entry> entries, File part, Progress progress) throws IOException {
        long total = 0;
        long have = 0;
        for (Entry e : entries) {
            total += e.size;
            File f = new File(part, e.path);
            if (f.isFile()) {
                have += Math.min(f.length(), e.size);
            }
        }
        if (!part.isDirectory() && !part.mkdirs()) {
            throw new IOException("model: making " + part);
        }
        long free = root.getUsableSpace();
        if (free < total - have + SPARE) {
            throw new NoRoomException(total - have + SPARE - free);
        }
        long done = 0;
        int told = -1;
        for (Entry e : entries) {
            File to = new File(part, e.path);
            // A file under its own name was verified and synced before it got that name.
            if (!(to.isFile() && to.length() == e.size)) {
                File dir = to.getParentFile();
                if (!dir.isDirectory() && !dir.mkdirs()) {
                    throw new IOException("model: making " + dir);
                }
                File tmp = new File(dir, to.getName() + ".tmp");
                copy(e, tmp);
                if (!tmp.renameTo(to)) {
                    throw new IOException("model: renaming " + tmp);
                }
            }
            done += e.size;
            int percent = total == 0 ? 99 : (int) Math.min(99, done * 100 / total);
            if (percent > told) {
                told = percent;
                progress.percent(percent);
            }
        }
    }

    private void copy(Entry e, File tmp) throws IOException {
        MessageDigest md = digest();
        long size = 0;
        try (InputStream in = source.open(e.path); FileOutputStream out = new FileOutputStream(tmp)) {
            byte[] buf = new byte[1 << 16];
            for (int n; (n = in.read(buf)) > 0; ) {
                md.update(buf, 0, n);
                out.write(buf, 0, n);
                size += n;
            }
            out.getFD().sync();
        }
        if (size != e.size) {
            throw new DamagedException(e.path, size + " bytes, not " + e.size);
        }
        if (!hex(md.digest()).equals(e.sha256)) {
            throw new DamagedException(e.path, "its sum differs");
        }
    }

    private static boolean complete(File dir, List<Entry> entries) {
        for (Entry e : entries) {
            File f = new File(dir, e.path);
            if (!f.isFile() || f.length() != e.size) {
                return false;
            }
        }
        return true;
    }

    private void sweep(File keep) throws IOException {
        File[] all = root.listFiles((d, name) -> name.startsWith("model-"));
        for (File f : all == null ? new File[0] : all) {
            if (!f.equals(keep)) {
                delete(f);
            }
        }
    }

    private static List<Entry> parse(byte[] list) throws IOException {
        List<Entry> out = new ArrayList<>();
        BufferedReader r = new BufferedReader(new InputStreamReader(new ByteArrayInputStream(list), StandardCharsets.UTF_8));
        int n = 0;
        for (String line; (line = r.readLine()) != null; ) {
            n++;
            if (line.isEmpty()) {
                continue;
            }
            String[] p = line.split(" ", 3);
            if (p.length != 3 || !p[0].matches("[0-9a-f]{64}") || !p[1].matches("[0-9]{1,15}") || !safe(p[2])) {
                throw new DamagedException(LIST, "line " + n + " is not \"sha256 size path\"");
            }
            out.add(new Entry(p[0], Long.parseLong(p[1]), p[2]));
        }
        if (out.isEmpty()) {
            throw new DamagedException(LIST, "it names no file");
        }
        return out;
    }

    /** A path that stays inside its folder. */
    static boolean safe(String path) {
        if (path.isEmpty() || path.startsWith("/") || path.indexOf('\\') >= 0 || path.indexOf('\0') >= 0) {
            return false;
        }
        for (String s : path.split("/", -1)) {
            if (s.isEmpty() || s.equals(".") || s.equals("..")) {
                return false;
            }
        }
        return true;
    }

    private static void delete(File f) throws IOException {
        File[] in = f.listFiles();
        for (File c : in == null ? new File[0] : in) {
            delete(c);
        }
        if (f.exists() && !f.delete()) {
            throw new IOException("model: removing " + f);
        }
    }

    private static byte[] readAll(InputStream in) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        byte[] buf = new byte[1 << 16];
        for (int n; (n = in.read(buf)) > 0; ) {
            out.write(buf, 0, n);
        }
        return out.toByteArray();
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("model: SHA-256 is part of every Java", e);
        }
    }

    private static String hex(byte[] b) {
        StringBuilder s = new StringBuilder(2 * b.length);
        for (byte x : b) {
            s.append(Character.forDigit(x >> 4 & 15, 16)).append(Character.forDigit(x & 15, 16));
        }
        return s.toString();
    }
}
