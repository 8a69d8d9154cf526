package org.readback.desk;

import java.util.function.Consumer;

/**
 * Runs what the core calls. A Java exception must never cross back into native code: on a phone it would end the
 * process, so every callback body goes through here. What was caught is handed to the reporter and the callback returns
 * as if it had done nothing.
 */
public final class Safely {
    /** A body that may throw anything. */
    public interface Body {
        void run() throws Throwable;
    }

    private final Consumer<Throwable> reporter;

    public Safely(Consumer<Throwable> reporter) {
        this.reporter = reporter;
    }

    /** Runs the body and returns whether it came to its end. Never throws, not even when the reporter does. */
    public boolean run(Body body) {
        try {
            body.run();
            return true;
        } catch (Throwable t) {
            try {
                reporter.accept(t);
            } catch (Throwable again) {
                // Nothing is left that could be told.
            }
            return false;
        }
    }
}
