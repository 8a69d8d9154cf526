package org.readback.shell;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.readback.desk.Core;
import org.readback.desk.FakeCore;
import org.robolectric.Shadows;

/** The shell over a core of paper. */
public class TestApp extends ShellApp {
    final List<String> log = Collections.synchronizedList(new ArrayList<>());
    FakeCore fake;
    Core.Host host;

    @Override
    public void onCreate() {
        AboutActivity.read(this); // or every test would begin with the trial's statement
        super.onCreate();
    }

    @Override
    Core openCore(Core.Host host) {
        this.host = host;
        fake = new FakeCore(log);
        return fake;
    }

    /** Waits for the core, then lets the main thread and the worker do what is due. */
    void settle() throws Exception {
        idle(this);
    }

    static void idle(ShellApp app) throws Exception {
        app.core();
        for (int i = 0; i < 3; i++) {
            try {
                app.worker().submit(() -> { }).get(5, TimeUnit.SECONDS);
            } catch (TimeoutException e) {
                throw new AssertionError("the worker is stuck", e);
            }
            Shadows.shadowOf(android.os.Looper.getMainLooper()).idle();
        }
    }

    boolean saw(String prefix) {
        synchronized (log) {
            return log.stream().anyMatch(l -> l.startsWith(prefix));
        }
    }

    /** Whether this command was given to the core. */
    boolean commanded(String id) {
        synchronized (log) {
            return log.stream().anyMatch(l -> l.startsWith("POST /api/event") && l.contains("\"id\":\"" + id + "\""));
        }
    }
}
