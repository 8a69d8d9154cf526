package org.readback.desk;

/**
 * What a hot phone or one short of memory is spared first: the second engine's opinions on readings, then the camera. The recogniser
 * itself is never touched. Each change is told once, whichever of the two causes came first.
 */
public final class Strain {
    /** Values of android.os.PowerManager. From MODERATE on the phone slows itself down; SEVERE is felt by the person. */
    public static final int COOL = 0;
    public static final int LIGHT = 1;
    public static final int MODERATE = 2;
    public static final int SEVERE = 3;

    /** Receives what to do. */
    public interface Out {
        /** Second opinions rest, or are back; why is "less_heat", "less_memory" or "less_back". */
        void spare(boolean on, String why);

        /** The camera is to be put away. */
        void noCamera();
    }

    private final Out out;
    private int heat;
    private boolean hot;
    private boolean low;

    public Strain(Out out) {
        this.out = out;
    }

    /** A new thermal status. What began at MODERATE ends only when the phone is COOL again, so that it does not go to and fro. */
    public synchronized void heat(int status) {
        boolean was = spared();
        int before = heat;
        heat = status;
        if (status >= MODERATE) {
            hot = true;
        } else if (status <= COOL) {
            hot = false;
        }
        tell(was, "less_heat");
        if (status >= SEVERE && before < SEVERE) {
            out.noCamera();
        }
    }

    /** Whether the phone is short of memory. */
    public synchronized void memory(boolean isLow) {
        boolean was = spared();
        low = isLow;
        tell(was, "less_memory");
    }

    public synchronized boolean spared() {
        return hot || low;
    }

    private void tell(boolean was, String why) {
        if (spared() != was) {
            out.spare(!was, was ? "less_back" : why);
        }
    }
}
