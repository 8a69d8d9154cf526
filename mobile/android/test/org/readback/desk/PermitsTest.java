package org.readback.desk;

import static org.junit.Assert.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.Test;
import org.readback.desk.Permits.Need;

public class PermitsTest {
    private final List<String> log = new ArrayList<>();
    private boolean has;
    private boolean go = true;
    private boolean yes = true;
    private boolean will = true;
    private final Permits permits = new Permits(new Permits.Phone() {
        @Override
        public boolean has(Need need) {
            return has;
        }

        @Override
        public void explain(Need need, Permits.Result r) {
            log.add("explain");
            r.granted(go);
        }

        @Override
        public void ask(Need need, Permits.Result r) {
            log.add("ask");
            has = yes;
            r.granted(yes);
        }

        @Override
        public boolean willAsk(Need need) {
            return will;
        }

        @Override
        public void settings(Need need) {
            log.add("settings");
        }
    });

    private void want() {
        permits.want(Need.MICROPHONE, ok -> log.add(ok ? "yes" : "no"));
    }

    private void byHand() {
        permits.byHand(Need.MICROPHONE, ok -> log.add(ok ? "yes" : "no"));
    }

    @Test
    public void whyComesBeforeThePhonesQuestion() {
        want();
        want();
        assertEquals(List.of("explain", "ask", "yes", "yes"), log);
    }

    @Test
    public void aRefusalIsAskedOnceOnly() {
        yes = false;
        want();
        want();
        assertEquals(List.of("explain", "ask", "no", "no"), log);
    }

    @Test
    public void notNowAsksThePhoneNothing() {
        go = false;
        want();
        want();
        assertEquals(List.of("explain", "no", "no"), log);
    }

    @Test
    public void askingByHandStartsAnew() {
        yes = false;
        want();
        yes = true;
        byHand();
        assertEquals(List.of("explain", "ask", "no", "explain", "ask", "yes"), log);
    }

    @Test
    public void whenThePhoneNoLongerAsksItsSettingsAreOffered() {
        yes = false;
        will = false;
        byHand();
        byHand();
        assertEquals(List.of("explain", "ask", "no", "settings", "no"), log);
    }
}
