package org.readback.jvm;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.readback.mobile.Core;
import org.readback.mobile.Host;

/** A phone that does nothing but remember. Sayings end at once, as if spoken very fast. */
class FakeHost implements Host {
    final List<String> calls = new CopyOnWriteArrayList<>();
    final LinkedBlockingQueue<String> said = new LinkedBlockingQueue<>();
    final AtomicInteger speaking = new AtomicInteger(); // sayings whose end was not told yet
    volatile Core core; // told of the end of sayings when set

    private void note(String call) {
        calls.add(call);
    }

    @Override
    public void say(String id, String text, String level, boolean slow) throws Exception {
        note("say " + id + " " + level + " " + text);
        said.add(text);
        Core c = core;
        if (c != null) {
            // Never from inside: the core waits for this call to return.
            speaking.incrementAndGet();
            Thread t = new Thread(() -> {
                try {
                    c.spoke(id, false);
                } catch (Exception e) {
                    note("spoke: " + e.getMessage());
                }
                speaking.decrementAndGet();
            });
            t.setDaemon(true);
            t.start();
        }
    }

    @Override
    public void hush() throws Exception {
        note("hush");
    }

    @Override
    public void cue(String name) throws Exception {
        note("cue " + name);
    }

    @Override
    public void takePhoto(String id) throws Exception {
        note("photo " + id);
    }

    @Override
    public void keepAwake(boolean on) throws Exception {
        note("awake " + on);
    }

    @Override
    public void vibrate(String pattern) throws Exception {
        note("vibrate " + pattern);
    }

    @Override
    public void share(String name) throws Exception {
        note("share " + name);
    }

    /** Waits until a call that begins so was made. */
    boolean saw(String prefix, long seconds) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
        while (System.nanoTime() < end) {
            if (calls.stream().anyMatch(c -> c.startsWith(prefix))) {
                return true;
            }
            Thread.sleep(5);
        }
        return false;
    }
}
