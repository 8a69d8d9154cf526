package org.readback.shell;

import android.content.BroadcastReceiver;
import android.content.Context;
import android.content.Intent;
import android.content.IntentFilter;
import android.media.AudioAttributes;
import android.media.AudioFocusRequest;
import android.media.AudioManager;
import android.os.BatteryManager;
import android.os.Build;
import org.readback.desk.Attention;
import org.readback.desk.Battery;
import org.readback.desk.Safely;

/** Watches battery, audio focus and calls while a job runs. A call is seen by the audio mode, which needs no permission. */
final class PhoneNews {
    private final Context context;
    private final AudioManager audio;
    private final Battery battery;
    private final Attention attention;
    private final Safely safely;
    private final AudioFocusRequest focus;
    private final BroadcastReceiver receiver;
    private AudioManager.OnModeChangedListener mode;
    private boolean on;

    PhoneNews(Context context, Battery battery, Attention attention, Safely safely) {
        this.context = context;
        this.battery = battery;
        this.attention = attention;
        this.safely = safely;
        audio = context.getSystemService(AudioManager.class);
        focus = new AudioFocusRequest.Builder(AudioManager.AUDIOFOCUS_GAIN_TRANSIENT_MAY_DUCK)
                .setAudioAttributes(new AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ASSISTANCE_NAVIGATION_GUIDANCE)
                        .setContentType(AudioAttributes.CONTENT_TYPE_SPEECH).build())
                .setOnAudioFocusChangeListener(change -> safely.run(() -> attention.focus(change)))
                .build();
        receiver = new BroadcastReceiver() {
            @Override
            public void onReceive(Context c, Intent i) {
                safely.run(() -> charge(i));
            }
        };
    }

    void start() {
        if (on) {
            return;
        }
        on = true;
        Intent now = context.registerReceiver(receiver, new IntentFilter(Intent.ACTION_BATTERY_CHANGED));
        if (now != null) {
            charge(now);
        }
        audio.requestAudioFocus(focus);
        if (Build.VERSION.SDK_INT >= 31) {
            mode = m -> safely.run(() -> attention.mode(m));
            audio.addOnModeChangedListener(Runnable::run, mode);
        }
    }

    /** The person is back at the app: focus that another app took for good is asked for again, or the job would wait for ever. */
    void again() {
        if (on && attention.lost() && audio.requestAudioFocus(focus) == AudioManager.AUDIOFOCUS_REQUEST_GRANTED) {
            safely.run(() -> attention.focus(Attention.FOCUS_GAIN));
        }
    }

    void stop() {
        if (!on) {
            return;
        }
        on = false;
        context.unregisterReceiver(receiver);
        audio.abandonAudioFocusRequest(focus);
        if (Build.VERSION.SDK_INT >= 31) {
            audio.removeOnModeChangedListener(mode);
        }
    }

    private void charge(Intent i) {
        battery.news(i.getIntExtra(BatteryManager.EXTRA_LEVEL, -1), i.getIntExtra(BatteryManager.EXTRA_SCALE, -1));
    }
}
