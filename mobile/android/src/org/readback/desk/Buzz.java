package org.readback.desk;

/** The buzz patterns: times in ms, off and on in turn, as the phone's vibrator takes them. */
public final class Buzz {
    private Buzz() {
    }

    public static long[] times(String pattern) {
        switch (pattern == null ? "" : pattern) {
            case "double": return new long[] {0, 60, 90, 60};
            case "long": return new long[] {0, 500};
            case "triple": return new long[] {0, 120, 80, 120, 80, 120};
            default: return new long[] {0, 60};
        }
    }
}
