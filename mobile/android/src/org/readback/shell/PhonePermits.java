package org.readback.shell;

import android.Manifest;
import android.app.Activity;
import android.app.AlertDialog;
import android.content.Context;
import android.content.Intent;
import android.content.pm.PackageManager;
import android.net.Uri;
import android.os.Build;
import android.provider.Settings;
import java.util.HashMap;
import java.util.Map;
import org.readback.desk.Permits;

/** Asks the person through an activity: our sentence first, then the phone's question. */
final class PhonePermits implements Permits.Phone {
    private final Activity activity;
    private final Map<Integer, Permits.Result> open = new HashMap<>();
    private int next = 1;

    PhonePermits(Activity activity) {
        this.activity = activity;
    }

    static String name(Permits.Need need) {
        switch (need) {
            case MICROPHONE: return Manifest.permission.RECORD_AUDIO;
            case CAMERA: return Manifest.permission.CAMERA;
            default: return Manifest.permission.POST_NOTIFICATIONS;
        }
    }

    static boolean has(Context c, Permits.Need need) {
        if (need == Permits.Need.NOTICE && Build.VERSION.SDK_INT < 33) {
            return true; // older phones do not ask
        }
        return c.checkSelfPermission(name(need)) == PackageManager.PERMISSION_GRANTED;
    }

    @Override
    public boolean has(Permits.Need need) {
        return has(activity, need);
    }

    @Override
    public void explain(Permits.Need need, Permits.Result go) {
        int title;
        int why;
        int without;
        switch (need) {
            case MICROPHONE: title = R.string.mic_title; why = R.string.mic_why; without = R.string.mic_without; break;
            case CAMERA: title = R.string.camera_title; why = R.string.camera_why; without = R.string.camera_without; break;
            default: title = R.string.notify_title; why = R.string.notify_why; without = R.string.notify_without;
        }
        new AlertDialog.Builder(activity)
                .setTitle(title)
                .setMessage(activity.getString(why) + "\n\n" + activity.getString(without))
                .setPositiveButton(R.string.ask_yes, (d, w) -> go.granted(true))
                .setNegativeButton(R.string.ask_no, (d, w) -> go.granted(false))
                .setOnCancelListener(d -> go.granted(false))
                .show();
    }

    @Override
    public void ask(Permits.Need need, Permits.Result answer) {
        int code = next++;
        open.put(code, answer);
        activity.requestPermissions(new String[] {name(need)}, code);
    }

    /** The phone's answer. An empty one means that the question was broken off. */
    void answered(int code, int[] grants) {
        Permits.Result r = open.remove(code);
        if (r != null) {
            r.granted(grants.length > 0 && grants[0] == PackageManager.PERMISSION_GRANTED);
        }
    }

    /** The window goes: whatever waits gets a no, or the step would wait for ever. */
    void abandon() {
        Map<Integer, Permits.Result> left = new HashMap<>(open);
        open.clear();
        left.values().forEach(r -> r.granted(false));
    }

    @Override
    public boolean willAsk(Permits.Need need) {
        return activity.shouldShowRequestPermissionRationale(name(need));
    }

    @Override
    public void settings(Permits.Need need) {
        new AlertDialog.Builder(activity)
                .setMessage(R.string.refused_for_good)
                .setPositiveButton(R.string.open_settings, (d, w) -> activity.startActivity(
                        new Intent(Settings.ACTION_APPLICATION_DETAILS_SETTINGS, Uri.fromParts("package", activity.getPackageName(), null))))
                .setNegativeButton(R.string.ask_no, null)
                .show();
    }
}
