package org.readback.desk;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The order of sayings. One is spoken at a time, the others wait in the order they came. An emergency goes to the front
 * and cuts off anything less; danger and emergency are never cut off by a new saying. Every saying is reported back
 * exactly once: ended, or cut.
 *
 * <p>With a screen reader on there is one voice only (the screen reader's, which reads the page): then a saying counts as
 * spoken at once and the voice keeps still, but for danger and emergency, which interrupt.
 */
public final class Mouth {
    /** The phone's voice. */
    public interface Voice {
        /** Starts speaking and returns. Calls {@link Mouth#ended} later, from any thread. False: there is no voice. */
        boolean speak(String id, String text, boolean slow);

        /** Stops at once. */
        void stop();
    }

    /** Receives what became of a saying. */
    public interface Report {
        void spoke(String id, boolean cut);
    }

    private static final class Saying {
        final String id;
        final String text;
        final boolean slow;
        final int rank;

        Saying(String id, String text, String level, boolean slow) {
            this.id = id;
            this.text = text;
            this.slow = slow;
            this.rank = rank(level);
        }
    }

    private static final int DANGER = 3;
    private static final int EMERGENCY = 4;

    private final Voice voice;
    private final Report report;
    private final Deque<Saying> queue = new ArrayDeque<>();
    private final Set<String> open = new HashSet<>();
    private Saying now;
    private boolean reader;

    public Mouth(Voice voice, Report report) {
        this.voice = voice;
        this.report = report;
    }

    static int rank(String level) {
        switch (level == null ? "" : level) {
            case "caution": return 1;
            case "warning": return 2;
            case "danger": return DANGER;
            case "emergency": return EMERGENCY;
            default: return 0;
        }
    }

    /** Switches to one voice when a screen reader runs. */
    public void screenReader(boolean on) {
        synchronized (this) {
            reader = on;
        }
    }

    public void say(String id, String text, String level, boolean slow) {
        Saying s = new Saying(id, text, level, slow);
        List<String> cut = new ArrayList<>();
        boolean silent;
        synchronized (this) {
            silent = reader && s.rank < DANGER;
            if (!silent) {
                if (!open.add(id)) {
                    return; // a saying is spoken once
                }
                if (s.rank == EMERGENCY) {
                    ahead(s);
                    if (now != null && now.rank < DANGER) {
                        cut.add(now.id);
                        open.remove(now.id);
                        now = null;
                        voice.stop();
                    }
                } else {
                    queue.addLast(s);
                }
            }
        }
        if (silent) {
            report.spoke(id, false);
            return;
        }
        for (String c : cut) {
            report.spoke(c, true);
        }
        next();
    }

    /** Puts an emergency behind those already waiting and before everything else. */
    private void ahead(Saying s) {
        Deque<Saying> rest = new ArrayDeque<>();
        while (!queue.isEmpty() && queue.peekFirst().rank == EMERGENCY) {
            rest.addLast(queue.pollFirst());
        }
        rest.addLast(s);
        while (!rest.isEmpty()) {
            queue.addFirst(rest.pollLast());
        }
    }

    /** Stops speaking and forgets what waits; the core says again what must not be missed. */
    public void hush() {
        List<String> cut = new ArrayList<>();
        synchronized (this) {
            if (now != null) {
                cut.add(now.id);
                now = null;
            }
            for (Saying s : queue) {
                cut.add(s.id);
            }
            queue.clear();
            open.clear();
            voice.stop();
        }
        for (String c : cut) {
            report.spoke(c, true);
        }
    }

    /** The voice came to the end of a saying, or failed in it. News of a saying that was cut is ignored. */
    public void ended(String id, boolean failed) {
        synchronized (this) {
            if (now == null || !now.id.equals(id)) {
                return;
            }
            open.remove(id);
            now = null;
        }
        report.spoke(id, failed);
        next();
    }

    public synchronized boolean speaking() {
        return now != null;
    }

    /** A voice that throws is no voice: the saying is told as cut and the next one gets its turn. */
    private boolean started(Saying s) {
        try {
            return voice.speak(s.id, s.text, s.slow);
        } catch (RuntimeException e) {
            return false;
        }
    }

    private void next() {
        List<String> unspoken = new ArrayList<>();
        synchronized (this) {
            while (now == null && !queue.isEmpty()) {
                Saying s = queue.pollFirst();
                now = s;
                if (!started(s)) {
                    now = null;
                    open.remove(s.id);
                    unspoken.add(s.id);
                }
            }
        }
        for (String u : unspoken) {
            report.spoke(u, true);
        }
    }
}
