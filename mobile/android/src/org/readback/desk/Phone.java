package org.readback.desk;

/** The phone's services as the desk uses them. Each has one adapter that touches the framework, and a fake in the tests. */
public final class Phone {
    private Phone() {
    }

    /** Runs things on the app's one working thread, in order. */
    public interface Work {
        void post(Runnable r);
    }

    /** Plays a short sound; a new one follows the one that plays. */
    public interface Tones {
        void play(short[] pcm, int rate);
    }

    /** Vibrates: times in ms, off and on in turn. */
    public interface Buzzer {
        void buzz(long[] times);
    }

    /** Keeps the processor and the screen awake. */
    public interface Awake {
        void keep(boolean on);
    }

    /** The microphone, with the notice that goes with it. */
    public interface Mic {
        /** Starts sending sound; false when it cannot be opened. Starting twice is starting once. */
        boolean start(Sink sink);

        void stop();

        /** Receives sound on the microphone's own thread. The array is reused. */
        interface Sink {
            void block(byte[] pcm, int length);

            /** Another app has taken the microphone, or given it back. */
            void silenced(boolean on);
        }
    }

    /** The camera. */
    public interface Eye {
        /** Takes one upright JPEG picture and gives it, or null, on any thread. */
        void take(Shot then);

        /**
         * Sends upright frames, about so wide, until the receiver has had enough; failed is run once when there are none. Steady ones have colour, and
         * their exposure and white are locked, which keeps the camera from chasing a blinking light or a flame.
         */
        default void watch(int wide, boolean steady, Frames frames, Runnable failed) {
            failed.run();
        }

        interface Shot {
            void jpeg(byte[] data);
        }

        /** Receives frames on the camera's own thread. */
        interface Frames {
            /** At in ns on a steady clock. False ends the run. */
            boolean frame(Luma luma, long at, long exposure);
        }
    }

    /** Hands a file to another app that the person chooses. */
    public interface Sharer {
        void share(String name);
    }

    /** The shell's own sentences in the person's language, by their keys. */
    public interface Words {
        String of(String key, Object... args);
    }

    /** Shows a sentence for a moment. */
    public interface Notes {
        void show(String text);
    }
}
