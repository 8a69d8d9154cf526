package org.readback.shell;

import android.app.Activity;
import android.content.Intent;
import android.net.Uri;
import java.io.IOException;
import java.io.OutputStream;
import org.readback.desk.Reply;

/** Saves a record where the person says, through the phone's document picker; needs no storage permission. */
final class Saver {
    static final int CODE = 0x5A;

    private final Activity activity;
    private final ShellApp app;
    private String path;

    Saver(Activity activity, ShellApp app) {
        this.activity = activity;
        this.app = app;
    }

    /** File name for a path such as /api/jobs/ID/export.zip. */
    static String name(String path) {
        String[] p = path.split("/");
        String last = p[p.length - 1];
        String job = p.length >= 4 ? p[3] : "job";
        return "readback-" + job + "-" + (last.indexOf('.') > 0 ? last : last + (last.equals("journal") ? ".jsonl" : ".html"));
    }

    void ask(String path) {
        this.path = path;
        String name = name(path);
        activity.startActivityForResult(new Intent(Intent.ACTION_CREATE_DOCUMENT).addCategory(Intent.CATEGORY_OPENABLE)
                .setType(ShareProvider.type(name)).putExtra(Intent.EXTRA_TITLE, name), CODE);
    }

    /** The picker's answer; a null place means that the person thought better of it. */
    void chosen(Uri place) {
        String from = path;
        path = null;
        if (place == null || from == null) {
            return;
        }
        app.worker().execute(() -> {
            String said;
            try {
                Reply r = app.core().request("GET", from, new byte[0]);
                if (r.status != 200) {
                    throw new IOException(r.string());
                }
                try (OutputStream out = app.getContentResolver().openOutputStream(place, "wt")) {
                    if (out == null) {
                        throw new IOException("the place cannot be written");
                    }
                    out.write(r.body);
                }
                said = app.getString(R.string.saved);
            } catch (IOException | SecurityException e) {
                said = app.getString(R.string.save_failed, e.getMessage());
            }
            String text = said;
            app.main().post(() -> app.note(text));
        });
    }

    String waiting() {
        return path;
    }

    /** Takes up a save that was under way when the process ended. */
    void waiting(String path) {
        this.path = path;
    }
}
