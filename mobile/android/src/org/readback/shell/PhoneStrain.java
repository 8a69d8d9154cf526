package org.readback.shell;

import android.app.ActivityManager;
import android.content.ComponentCallbacks2;
import android.content.Context;
import android.content.res.Configuration;
import android.os.Build;
import android.os.Handler;
import android.os.PowerManager;
import org.readback.desk.Safely;
import org.readback.desk.Strain;

/** Watches heat and memory while the app lives. Newer phones no longer say when memory is back, so that is looked at again. */
final class PhoneStrain implements ComponentCallbacks2 {
    /** How long after a shortage memory is looked at again, in ms. */
    static final long AGAIN = 60_000;

    private final Context context;
    private final Strain strain;
    private final Handler main;
    private final Safely safely;
    private final Runnable look = this::look;

    PhoneStrain(Context context, Strain strain, Handler main, Safely safely) {
        this.context = context;
        this.strain = strain;
        this.main = main;
        this.safely = safely;
        context.registerComponentCallbacks(this);
        if (Build.VERSION.SDK_INT >= 29) {
            // A phone without a thermal service throws; it is never told to be hot then.
            safely.run(() -> context.getSystemService(PowerManager.class).addThermalStatusListener(status -> safely.run(() -> strain.heat(status))));
        }
    }

    @Override
    @SuppressWarnings("deprecation") // phones before API 34 tell it so
    public void onTrimMemory(int level) {
        if (level == TRIM_MEMORY_RUNNING_LOW || level == TRIM_MEMORY_RUNNING_CRITICAL) {
            onLowMemory();
        }
    }

    @Override
    public void onLowMemory() {
        safely.run(() -> strain.memory(true));
        main.removeCallbacks(look);
        main.postDelayed(look, AGAIN);
    }

    private void look() {
        ActivityManager.MemoryInfo info = new ActivityManager.MemoryInfo();
        context.getSystemService(ActivityManager.class).getMemoryInfo(info);
        if (info.lowMemory) {
            main.postDelayed(look, AGAIN);
        } else {
            safely.run(() -> strain.memory(false));
        }
    }

    @Override
    public void onConfigurationChanged(Configuration c) {
    }
}
