package org.readback.desk;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.Test;

public class MouthTest {
    private final List<String> log = new ArrayList<>();
    private boolean dumb;
    private final Mouth mouth = new Mouth(new Mouth.Voice() {
        @Override
        public boolean speak(String id, String text, boolean slow) {
            if (dumb) {
                return false;
            }
            log.add("speak " + id + (slow ? " slowly" : ""));
            return true;
        }

        @Override
        public void stop() {
            log.add("stop");
        }
    }, (id, cut) -> log.add((cut ? "cut " : "ended ") + id));

    private void is(String... lines) {
        assertEquals(List.of(lines), log);
    }

    @Test
    public void sayingsWaitForEachOther() {
        mouth.say("a", "x", "info", false);
        mouth.say("b", "x", "caution", true);
        is("speak a");
        mouth.ended("a", false);
        mouth.ended("b", false);
        is("speak a", "ended a", "speak b slowly", "ended b");
        assertFalse(mouth.speaking());
    }

    @Test
    public void anEmergencyCutsOffLessAndGoesFirst() {
        mouth.say("a", "x", "info", false);
        mouth.say("b", "x", "info", false);
        mouth.say("e", "x", "emergency", false);
        is("speak a", "stop", "cut a", "speak e");
        mouth.ended("e", false);
        is("speak a", "stop", "cut a", "speak e", "ended e", "speak b");
    }

    @Test
    public void dangerIsHeardToItsEnd() {
        mouth.say("d", "x", "danger", false);
        mouth.say("a", "x", "info", false);
        mouth.say("e", "x", "emergency", false);
        is("speak d");
        mouth.ended("d", false);
        is("speak d", "ended d", "speak e");
        mouth.ended("e", false);
        assertEquals("speak a", log.get(log.size() - 1));
    }

    @Test
    public void emergenciesKeepTheirOrder() {
        mouth.say("1", "x", "emergency", false);
        mouth.say("2", "x", "emergency", false);
        mouth.say("3", "x", "emergency", false);
        mouth.ended("1", false);
        mouth.ended("2", false);
        is("speak 1", "ended 1", "speak 2", "ended 2", "speak 3");
    }

    @Test
    public void hushCutsEverythingAndTellsEach() {
        mouth.say("a", "x", "info", false);
        mouth.say("b", "x", "danger", false);
        mouth.hush();
        is("speak a", "stop", "cut a", "cut b");
        mouth.ended("a", true); // the engine's late news of what was cut
        is("speak a", "stop", "cut a", "cut b");
        mouth.say("a", "x", "info", false); // the same saying may be asked for again
        assertEquals("speak a", log.get(log.size() - 1));
    }

    @Test
    public void aSayingIsSpokenOnce() {
        mouth.say("a", "x", "info", false);
        mouth.say("a", "x", "info", false);
        mouth.ended("a", false);
        is("speak a", "ended a");
    }

    @Test
    public void withoutAVoiceEverySayingIsReportedCut() {
        dumb = true;
        mouth.say("a", "x", "info", false);
        mouth.say("b", "x", "emergency", false);
        is("cut a", "cut b");
        assertFalse(mouth.speaking());
    }

    @Test
    public void aVoiceThatFailsGoesOnWithTheNext() {
        mouth.say("a", "x", "info", false);
        mouth.say("b", "x", "info", false);
        mouth.ended("a", true);
        is("speak a", "cut a", "speak b");
    }

    @Test
    public void beforeAScreenReaderOnlyDangerSpeaks() {
        mouth.screenReader(true);
        mouth.say("a", "x", "caution", false);
        mouth.say("d", "x", "danger", false);
        is("ended a", "speak d");
        mouth.screenReader(false);
        mouth.ended("d", false);
        mouth.say("b", "x", "info", false);
        assertEquals("speak b", log.get(log.size() - 1));
        assertTrue(mouth.speaking());
    }
}
