package org.readback.shell;

import android.app.Activity;
import android.content.Context;
import android.os.Bundle;
import android.view.View;
import android.widget.LinearLayout;
import android.widget.ScrollView;
import android.widget.TextView;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** What this copy is: its version, whether it is a trial, and the free software in it with its licences. */
public final class AboutActivity extends Activity {
    static final String PARTS = "shell/parts.txt";
    private static final String READ = "trial-read"; // the trial's statement was read, of which version

    @Override
    protected void onCreate(Bundle saved) {
        super.onCreate(saved);
        LinearLayout all = new LinearLayout(this);
        all.setOrientation(LinearLayout.VERTICAL);
        int gap = Math.round(16 * getResources().getDisplayMetrics().density);
        all.setPadding(gap, gap, gap, gap);
        add(all, getString(R.string.app_name), 26);
        add(all, getString(R.string.about_version, ShellApp.version(this)), 16);
        if (!getString(R.string.about_trial).isEmpty()) {
            add(all, getString(R.string.about_trial), 20);
        }
        add(all, getString(R.string.about_text), 16);
        add(all, getString(R.string.about_parts), 20);
        add(all, parts(this), 14);
        ScrollView scroll = new ScrollView(this);
        scroll.setFitsSystemWindows(true); // clear of the system's bars
        scroll.addView(all);
        setContentView(scroll);
    }

    private void add(LinearLayout all, String text, int size) {
        TextView v = new TextView(this);
        v.setText(text);
        v.setTextSize(size);
        v.setTextIsSelectable(true);
        v.setPadding(0, 0, 0, Math.round(12 * getResources().getDisplayMetrics().density));
        v.setTextAlignment(View.TEXT_ALIGNMENT_VIEW_START);
        all.addView(v);
    }

    /** The list that the packing put in. */
    static String parts(Context c) {
        try (InputStream in = c.getAssets().open(PARTS)) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            byte[] buf = new byte[4096];
            for (int n; (n = in.read(buf)) > 0; ) {
                out.write(buf, 0, n);
            }
            return new String(out.toByteArray(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError("about: the list of parts is packed into every APK", e);
        }
    }

    /** The trial's statement when it was not yet read in this version; empty in a release. */
    static String unread(Context c) {
        String read = c.getSharedPreferences(READ, Context.MODE_PRIVATE).getString(READ, "");
        return read.equals(ShellApp.version(c)) ? "" : c.getString(R.string.about_trial);
    }

    static void read(Context c) {
        c.getSharedPreferences(READ, Context.MODE_PRIVATE).edit().putString(READ, ShellApp.version(c)).apply();
    }
}
