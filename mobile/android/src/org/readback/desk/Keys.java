package org.readback.desk;

/**
 * Volume keys and the headset's button as answers, for hands that cannot touch the glass. Volume up is "ready", volume
 * down is "repeat". The headset button: once is "ready", or "quiet" while the voice speaks; twice is "repeat"; held is
 * "hold". Outside a job the keys do what they always do.
 */
public final class Keys {
    /** Key codes of the framework (android.view.KeyEvent). */
    public static final int VOLUME_UP = 24;
    public static final int VOLUME_DOWN = 25;
    public static final int HEADSET = 79;
    public static final int PLAY_PAUSE = 85;
    public static final int NEXT = 87;
    public static final int PREVIOUS = 88;

    /** Longest time between two presses of a double press, in ms. */
    public static final long DOUBLE = 350;

    /** A press this long, in ms, is a hold. */
    public static final long HOLD = 700;

    private long lastUp = Long.MIN_VALUE / 2;
    private boolean waiting;

    /** What a finished press asks for. */
    public enum Press { NONE, SINGLE_LATER, DOUBLE, HELD }

    /** Command of a volume key, or null when the key is not ours. */
    public static String volume(int code, boolean job) {
        if (!job) {
            return null;
        }
        switch (code) {
            case VOLUME_UP: return "ready";
            case VOLUME_DOWN: return "repeat";
            default: return null;
        }
    }

    /** Whether a key is the headset's button or a media key that stands for it. */
    public static boolean headset(int code) {
        return code == HEADSET || code == PLAY_PAUSE;
    }

    /** Command of the media keys that some headsets send for two and three presses. */
    public static String media(int code) {
        switch (code) {
            case NEXT: return "repeat";
            case PREVIOUS: return "hold";
            default: return null;
        }
    }

    /**
     * The button came up at {@code now} (ms) after being down for {@code down} ms. SINGLE_LATER: after DOUBLE ms call
     * {@link #single}, and only when that is true it was a single press.
     */
    public synchronized Press up(long now, long down) {
        if (down >= HOLD) {
            waiting = false;
            return Press.HELD;
        }
        if (waiting && now - lastUp <= DOUBLE) {
            waiting = false;
            return Press.DOUBLE;
        }
        waiting = true;
        lastUp = now;
        return Press.SINGLE_LATER;
    }

    /** Whether the press that came up at {@code then} stayed alone. */
    public synchronized boolean single(long then) {
        if (waiting && lastUp == then) {
            waiting = false;
            return true;
        }
        return false;
    }

    /** Command of a headset press. */
    public static String command(Press p, boolean speaking) {
        switch (p) {
            case SINGLE_LATER: return speaking ? "quiet" : "ready";
            case DOUBLE: return "repeat";
            case HELD: return "hold";
            default: return null;
        }
    }
}
