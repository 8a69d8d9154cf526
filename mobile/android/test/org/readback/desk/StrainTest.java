package org.readback.desk;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.Test;

/** What is spared when the phone is hot or short of memory. */
public class StrainTest {
    private final List<String> out = new ArrayList<>();
    private final Strain strain = new Strain(new Strain.Out() {
        @Override
        public void spare(boolean on, String why) {
            out.add(on + " " + why);
        }

        @Override
        public void noCamera() {
            out.add("no camera");
        }
    });

    @Test
    public void aWarmPhoneIsNotSpared() {
        strain.heat(Strain.LIGHT);
        assertEquals(List.of(), out);
        assertFalse(strain.spared());
    }

    @Test
    public void aPhoneThatSlowsItselfDownIsSparedOnce() {
        strain.heat(Strain.MODERATE);
        strain.heat(Strain.MODERATE);
        assertEquals(List.of("true less_heat"), out);
    }

    @Test
    public void itIsTakenUpAgainOnlyWhenCool() {
        strain.heat(Strain.MODERATE);
        strain.heat(Strain.LIGHT);
        strain.heat(Strain.MODERATE);
        strain.heat(Strain.LIGHT);
        assertEquals(List.of("true less_heat"), out);
        strain.heat(Strain.COOL);
        assertEquals(List.of("true less_heat", "false less_back"), out);
    }

    @Test
    public void theSecondEngineGoesBeforeTheCamera() {
        strain.heat(Strain.SEVERE);
        strain.heat(Strain.SEVERE + 1);
        assertEquals(List.of("true less_heat", "no camera"), out);
    }

    @Test
    public void theCameraIsPutAwayAtEachNewHeight() {
        strain.heat(Strain.SEVERE);
        strain.heat(Strain.MODERATE);
        strain.heat(Strain.SEVERE);
        assertEquals(List.of("true less_heat", "no camera", "no camera"), out);
    }

    @Test
    public void littleMemoryIsSparedAndToldByItsName() {
        strain.memory(true);
        strain.memory(true);
        strain.memory(false);
        assertEquals(List.of("true less_memory", "false less_back"), out);
    }

    @Test
    public void bothCausesMustBeOver() {
        strain.memory(true);
        strain.heat(Strain.MODERATE);
        strain.memory(false);
        assertTrue(strain.spared());
        strain.heat(Strain.COOL);
        assertEquals(List.of("true less_memory", "false less_back"), out);
    }
}
