package org.readback.desk;

import java.util.HashMap;
import java.util.Map;

/**
 * Asks for a permission when it is first needed: first one sentence of why, by us, then the phone's own question. A refusal is
 * remembered for as long as the app lives, so nobody is asked twice for the same act; asking by hand (the button on the page)
 * starts anew. When the phone has stopped asking, the way to its settings is offered.
 */
public final class Permits {
    /** What may be asked for. */
    public enum Need { MICROPHONE, CAMERA, NOTICE }

    /** How a request ended. */
    public interface Result {
        void granted(boolean yes);
    }

    /** The phone's side. */
    public interface Phone {
        boolean has(Need need);

        /** Shows the sentence of why with "continue" and "not now". */
        void explain(Need need, Result go);

        /** Shows the phone's question. */
        void ask(Need need, Result answer);

        /** Whether the phone would still ask; false after a refusal for good. */
        boolean willAsk(Need need);

        /** Says that the phone no longer asks and offers its settings; nothing waits for it. */
        void settings(Need need);
    }

    private final Phone phone;
    private final Map<Need, Boolean> refused = new HashMap<>();

    public Permits(Phone phone) {
        this.phone = phone;
    }

    /** Whether it is given. */
    public boolean has(Need need) {
        return phone.has(need);
    }

    /** Gets a permission for something the program wants. After a refusal it answers no without a word. */
    public void want(Need need, Result then) {
        if (!phone.has(need) && Boolean.TRUE.equals(refused.get(need))) {
            then.granted(false);
            return;
        }
        run(need, then);
    }

    /** Gets a permission because the person asked for it. */
    public void byHand(Need need, Result then) {
        if (!phone.has(need) && Boolean.TRUE.equals(refused.get(need)) && !phone.willAsk(need)) {
            phone.settings(need);
            then.granted(false);
            return;
        }
        run(need, then);
    }

    private void run(Need need, Result then) {
        if (phone.has(need)) {
            then.granted(true);
            return;
        }
        phone.explain(need, go -> {
            if (!go) {
                refused.put(need, true);
                then.granted(false);
                return;
            }
            phone.ask(need, yes -> {
                refused.put(need, !yes);
                then.granted(yes);
            });
        });
    }
}
