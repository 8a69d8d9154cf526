package org.readback.shell;

import android.content.ClipData;
import android.content.Context;
import android.content.Intent;
import android.net.Uri;
import java.io.File;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import org.readback.desk.Phone;

/** Shares a file of the jobs' folder through the phone's share sheet. */
final class PhoneSharer implements Phone.Sharer {
    private final Context context;
    private final File jobs;
    private final Phone.Notes notes;

    PhoneSharer(Context context, File jobs, Phone.Notes notes) {
        this.context = context;
        this.jobs = jobs;
        this.notes = notes;
    }

    @Override
    public void share(String name) {
        try {
            File from = inside(jobs, name);
            try (InputStream in = new FileInputStream(from)) {
                send(from.getName(), in);
            }
        } catch (IOException e) {
            notes.show(context.getString(R.string.save_failed, e.getMessage()));
        }
    }

    /** Copies a stream into the share folder, which holds one sharing at a time, and opens the share sheet. */
    void send(String name, InputStream in) throws IOException {
        File dir = ShareProvider.folder(context);
        File[] old = dir.listFiles();
        for (File f : old == null ? new File[0] : old) {
            f.delete();
        }
        if (!dir.isDirectory() && !dir.mkdirs()) {
            throw new IOException("making the share folder");
        }
        try (OutputStream out = new FileOutputStream(new File(dir, name))) {
            copy(in, out);
        }
        Uri uri = ShareProvider.uri(name);
        Intent send = new Intent(Intent.ACTION_SEND).setType(ShareProvider.type(name)).putExtra(Intent.EXTRA_STREAM, uri)
                .addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION);
        send.setClipData(ClipData.newRawUri("", uri)); // the grant travels with the clip through the chooser
        context.startActivity(Intent.createChooser(send, context.getString(R.string.share_with))
                .addFlags(Intent.FLAG_ACTIVITY_NEW_TASK | Intent.FLAG_GRANT_READ_URI_PERMISSION));
    }

    /** A name that stays inside a folder, as a file that is there. */
    static File inside(File dir, String name) throws IOException {
        File root = dir.getCanonicalFile();
        File f = new File(name);
        f = (f.isAbsolute() ? f : new File(root, name)).getCanonicalFile();
        if (!f.getPath().startsWith(root.getPath() + File.separator) || !f.isFile()) {
            throw new IOException("no such file");
        }
        return f;
    }

    static void copy(InputStream in, OutputStream out) throws IOException {
        byte[] buf = new byte[1 << 16];
        for (int n; (n = in.read(buf)) > 0; ) {
            out.write(buf, 0, n);
        }
    }
}
