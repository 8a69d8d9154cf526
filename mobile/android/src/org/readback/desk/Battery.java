package org.readback.desk;

/** Tells the core about the battery only when it matters: at each new step of five per cent, and when charging begins or ends. */
public final class Battery {
    /** Receives per cent. */
    public interface Out {
        void level(double percent);
    }

    private final Out out;
    private int last = -1;

    public Battery(Out out) {
        this.out = out;
    }

    /** News from the phone: level of scale. A scale of 0 or less is a phone that does not know. */
    public void news(int level, int scale) {
        if (scale <= 0 || level < 0) {
            return;
        }
        int percent = Math.min(100, (int) Math.round(100.0 * level / scale));
        int step = (percent + 4) / 5;
        if (step == last) {
            return;
        }
        last = step;
        out.level(percent);
    }
}
