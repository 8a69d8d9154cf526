package org.readback.shell;

import android.content.Context;
import android.os.PowerManager;
import java.util.function.Consumer;
import org.readback.desk.Phone;

/** Keeps the processor awake by a wake lock and the screen by the window's flag, both only while a job runs. */
final class PhoneAwake implements Phone.Awake {
    /** A forgotten lock ends by itself after this long, in ms: longer than any job. */
    static final long LONGEST = 6L * 60 * 60 * 1000;

    private final PowerManager.WakeLock lock;
    private final Consumer<Boolean> screen;

    PhoneAwake(Context context, Consumer<Boolean> screen) {
        this.screen = screen;
        lock = context.getSystemService(PowerManager.class).newWakeLock(PowerManager.PARTIAL_WAKE_LOCK, "readback:job");
        lock.setReferenceCounted(false);
    }

    @Override
    public void keep(boolean on) {
        if (on) {
            lock.acquire(LONGEST);
        } else if (lock.isHeld()) {
            lock.release();
        }
        screen.accept(on);
    }

    boolean held() {
        return lock.isHeld();
    }
}
