package org.readback.desk;

/**
 * Calls and other apps' sound. Turns the phone's audio focus and mode into the core's "call" and "back", once for each
 * interruption, in whichever order the phone tells them.
 */
public final class Attention {
    /** Values of android.media.AudioManager. */
    public static final int FOCUS_GAIN = 1;
    public static final int FOCUS_LOSS = -1;
    public static final int FOCUS_LOSS_TRANSIENT = -2;
    public static final int FOCUS_DUCK = -3;
    public static final int MODE_NORMAL = 0;
    public static final int MODE_RINGTONE = 1;
    public static final int MODE_IN_CALL = 2;
    public static final int MODE_IN_COMMUNICATION = 3;
    public static final int MODE_CALL_SCREENING = 4;

    /** Receives "call" and "back". */
    public interface Out {
        void device(String kind);

        /** A call began or ended; with other apps' sound there is none. */
        default void call(boolean on) {
        }
    }

    private final Out out;
    private boolean lost;
    private boolean call;

    public Attention(Out out) {
        this.out = out;
    }

    public synchronized void focus(int change) {
        boolean was = away();
        switch (change) {
            case FOCUS_GAIN: lost = false; break;
            case FOCUS_LOSS:
            case FOCUS_LOSS_TRANSIENT: lost = true; break;
            default: return; // another app is allowed to speak over us for a moment
        }
        tell(was);
    }

    public synchronized void mode(int mode) {
        boolean was = away();
        boolean calling = call;
        call = mode == MODE_RINGTONE || mode == MODE_IN_CALL || mode == MODE_IN_COMMUNICATION
                || mode == MODE_CALL_SCREENING;
        if (call != calling) {
            out.call(call);
        }
        tell(was);
    }

    /** Whether another app took the focus and did not give it back. */
    public synchronized boolean lost() {
        return lost;
    }

    private boolean away() {
        return lost || call;
    }

    private void tell(boolean was) {
        if (away() != was) {
            out.device(was ? "back" : "call");
        }
    }
}
