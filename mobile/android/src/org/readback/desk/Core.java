package org.readback.desk;

/**
 * The bound core as the shell uses it. GoCore is the real one, NoCore stands in when the APK carries no native code.
 * Methods may be called from any thread.
 */
public interface Core {
    /** Answers a request of the page; the answer of a failed request carries its own status. */
    Reply request(String method, String path, byte[] body);

    /** Answers one text message of the page's port: the JSON of a call in, the JSON of its reply out. */
    byte[] message(byte[] call);

    /** Sends every message of the stream, as JSON text, until the returned handle is stopped. */
    Stop subscribe(Listener listener);

    /** Takes microphone sound: 16 kHz, mono, signed 16 bit little endian. The array may be reused after the call. */
    void feed(byte[] pcm, int length);

    /** Tells that a saying ended, or was cut off. */
    void spoke(String id, boolean cut);

    /** Tells news of the phone; kinds are those of the session's protocol. Level and text may be 0 and empty. */
    void device(String kind, double level, String text);

    /** Hands over a picture asked for. */
    void photo(String id, byte[] jpeg);

    /** Hands over one upright camera frame, taken at ns on a steady clock; kind is meter or lamp. */
    void frame(String kind, Luma luma, long at, long exposure);

    /** Says where the unpacked model is, or, with dir empty, why there is none. Only the first call counts. */
    void model(String dir, String why);

    /** Lets second opinions on readings rest, or takes them up again. */
    void spare(boolean on);

    void close();

    /** Receives the stream, on any thread. */
    interface Listener {
        void message(String json);
    }

    /** Ends a subscription. */
    interface Stop {
        void stop();
    }

    /** What the core asks of the phone. Implementations return at once and never throw. */
    interface Host {
        void say(String id, String text, String level, boolean slow);

        void hush();

        void cue(String name);

        void takePhoto(String id);

        void keepAwake(boolean on);

        void vibrate(String pattern);

        void share(String name);
    }
}
