package org.readback.desk;

/**
 * The cues as sound. Told apart by rhythm first and pitch second; every tone has four harmonics below 4 kHz, for ears
 * that have lost the high ones and for small loudspeakers. Levels are against the voice.
 */
public final class Cues {
    /** Samples a second. */
    public static final int RATE = 16000;

    /** Peak of a cue at 0 dB, as a fraction of full scale: leaves 3 dB and the harmonics' sum below clipping. */
    private static final double FULL = 0.25;

    private static final int GAP = 60; // ms between tones

    private Cues() {
    }

    /** The sound of a cue: mono, signed 16 bit. An unknown name gives the "ask" cue, so that nothing is silent. */
    public static short[] sound(String name) {
        switch (name == null ? "" : name) {
            case "heard": return tones(-12, new int[] {620, 80});
            case "accepted": return tones(-9, new int[] {520, 60}, new int[] {780, 100});
            case "refused": return tones(-6, new int[] {520, 80}, new int[] {390, 240});
            case "hold": return tones(-12, new int[] {780, 70}, new int[] {620, 70}, new int[] {520, 70});
            case "resume": return tones(-12, new int[] {520, 70}, new int[] {620, 70}, new int[] {780, 70});
            case "timer": return tones(-3, new int[] {660, 120}, new int[] {660, 120}, new int[] {660, 120});
            case "danger": return tones(3, new int[] {620, 110}, new int[] {620, 110}, new int[] {620, 110},
                    new int[] {0, 160}, new int[] {620, 110}, new int[] {620, 110});
            default: return tones(-9, new int[] {520, 80}, new int[] {520, 80});
        }
    }

    /** Each tone is {frequency in Hz, length in ms}; frequency 0 is a rest. */
    private static short[] tones(double db, int[]... parts) {
        int n = 0;
        for (int[] p : parts) {
            n += samples(p[1] + GAP);
        }
        short[] out = new short[n];
        double peak = 32767 * FULL * Math.pow(10, db / 20);
        int at = 0;
        for (int[] p : parts) {
            int len = samples(p[1]);
            int ramp = samples(8);
            for (int i = 0; p[0] > 0 && i < len; i++) {
                double edge = Math.min(1, Math.min(i, len - 1 - i) / (double) ramp);
                double t = 2 * Math.PI * p[0] * i / RATE;
                double v = Math.sin(t) + 0.5 * Math.sin(2 * t) + 0.3 * Math.sin(3 * t) + 0.2 * Math.sin(4 * t);
                out[at + i] = (short) Math.round(peak * edge * v / 1.6);
            }
            at += samples(p[1] + GAP);
        }
        return out;
    }

    private static int samples(int ms) {
        return RATE * ms / 1000;
    }
}
