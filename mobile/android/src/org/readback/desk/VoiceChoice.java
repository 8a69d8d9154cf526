package org.readback.desk;

import java.util.List;

/** Chooses among the phone's voices: never one that needs a network, the wanted language, then the best quality. */
public final class VoiceChoice {
    /** What is known of a voice. Quality and latency as the framework gives them: higher quality, lower latency are better. */
    public static final class Info {
        public final String name;
        public final String lang; // "en"
        public final String region; // "US", may be empty
        public final boolean network;
        public final boolean installed;
        public final int quality;
        public final int latency;

        public Info(String name, String lang, String region, boolean network, boolean installed, int quality, int latency) {
            this.name = name;
            this.lang = lang;
            this.region = region;
            this.network = network;
            this.installed = installed;
            this.quality = quality;
            this.latency = latency;
        }
    }

    private VoiceChoice() {
    }

    /** Returns the name of the best voice, or null when no offline voice speaks the language. Equal ones go by name. */
    public static String best(List<Info> voices, String lang, String region) {
        Info best = null;
        for (Info v : voices) {
            if (v.network || !v.installed || !v.lang.equals(lang)) {
                continue;
            }
            if (best == null || before(v, best, region)) {
                best = v;
            }
        }
        return best == null ? null : best.name;
    }

    private static boolean before(Info a, Info b, String region) {
        boolean ra = a.region.equals(region);
        boolean rb = b.region.equals(region);
        if (ra != rb) {
            return ra;
        }
        if (a.quality != b.quality) {
            return a.quality > b.quality;
        }
        if (a.latency != b.latency) {
            return a.latency < b.latency;
        }
        return a.name.compareTo(b.name) < 0;
    }
}
