package org.readback.shell;

import android.content.Context;
import android.os.VibrationEffect;
import android.os.Vibrator;
import org.readback.desk.Phone;

/** The phone's vibrator; a phone without one keeps still. */
final class PhoneBuzzer implements Phone.Buzzer {
    private final Vibrator vibrator;

    PhoneBuzzer(Context context) {
        vibrator = context.getSystemService(Vibrator.class);
    }

    @Override
    public void buzz(long[] times) {
        if (vibrator != null && vibrator.hasVibrator()) {
            vibrator.vibrate(VibrationEffect.createWaveform(times, -1));
        }
    }
}
