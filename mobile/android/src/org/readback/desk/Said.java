package org.readback.desk;

/** Writes an answer given by a key in the core's protocol. */
public final class Said {
    private Said() {
    }

    /** JSON of a command; the id is a plain word of the lexicon. */
    public static String command(String id) {
        if (!id.matches("[a-z-]{1,32}")) {
            throw new IllegalArgumentException("said: a command is a word of small letters");
        }
        return "{\"step\":\"\",\"event\":{\"at\":0,\"type\":\"said\",\"said\":{\"text\":\"" + id + "\",\"source\":\"key\","
                + "\"meanings\":[{\"kind\":\"command\",\"id\":\"" + id + "\",\"cost\":0}]}}}";
    }
}
