package org.readback.desk;

/**
 * Notices a microphone that gives nothing: newer phones feed zeros to an app when another has the microphone. Exact zeros for
 * three seconds are no room, however quiet.
 */
public final class Silence {
    /** Seconds of zeros that count. */
    public static final int SECONDS = 3;

    private final int rate;
    private long zeros; // samples
    private boolean told;

    public Silence(int rate) {
        this.rate = rate;
    }

    /** Takes a block and returns 1 when the sound has just gone, -1 when it has just come back, else 0. */
    public int block(byte[] pcm, int length) {
        for (int i = 0; i < length; i++) {
            if (pcm[i] != 0) {
                zeros = 0;
                boolean back = told;
                told = false;
                return back ? -1 : 0;
            }
        }
        zeros += length / 2;
        if (!told && zeros >= (long) rate * SECONDS) {
            told = true;
            return 1;
        }
        return 0;
    }
}
