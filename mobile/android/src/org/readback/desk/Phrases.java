package org.readback.desk;

import java.util.ArrayList;
import java.util.List;

/** Splits a saying for the slower voice: slowness comes from gaps between phrases more than from slow words. */
public final class Phrases {
    /** Gap after each phrase, in ms. */
    public static final int GAP = 400;

    /** Speech rates of the phone's voice; 1 is its normal rate. 135 words a minute against 155. */
    public static final float NORMAL = 1f;
    public static final float SLOW = 135f / 155f;

    private Phrases() {
    }

    /** Cuts after a full stop, question mark, comma, colon or semicolon that is followed by a space. */
    public static List<String> split(String text) {
        List<String> out = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < text.length(); i++) {
            boolean mark = ".,;:?!".indexOf(text.charAt(i)) >= 0;
            if (mark && (i + 1 == text.length() || text.charAt(i + 1) == ' ')) {
                add(out, text.substring(from, i + 1));
                from = i + 1;
            }
        }
        add(out, text.substring(from));
        return out;
    }

    private static void add(List<String> out, String phrase) {
        String p = phrase.trim();
        if (!p.isEmpty()) {
            out.add(p);
        }
    }
}
