package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNull;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.app.ActivityManager;
import android.content.ComponentCallbacks2;
import android.content.Context;
import android.os.Looper;
import android.os.PowerManager;
import java.time.Duration;
import org.json.JSONObject;
import org.junit.Before;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.annotation.Config;
import org.robolectric.shadows.ShadowToast;

/** A hot phone, and one short of memory, as the framework tells it. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class StrainedTest {
    private final TestApp app = (TestApp) RuntimeEnvironment.getApplication();
    private MainActivity activity;

    @Before
    public void open() throws Exception {
        activity = Robolectric.setupActivity(MainActivity.class);
        app.settle();
        app.host.keepAwake(true);
        app.settle();
    }

    private void heat(int status) throws Exception {
        shadowOf(app.getSystemService(PowerManager.class)).setCurrentThermalStatus(status);
        app.settle();
    }

    private void memory(boolean low) {
        ActivityManager.MemoryInfo info = new ActivityManager.MemoryInfo();
        info.lowMemory = low;
        shadowOf((ActivityManager) app.getSystemService(Context.ACTIVITY_SERVICE)).setMemoryInfo(info);
    }

    private void later() throws Exception {
        shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(PhoneStrain.AGAIN + 1));
        app.settle();
    }

    private String spared() throws Exception {
        return activity.call("state", new JSONObject()).getString("spared");
    }

    @Test
    public void aHotPhoneRestsTheSecondEngineAndSaysSo() throws Exception {
        heat(PowerManager.THERMAL_STATUS_MODERATE);
        assertTrue(app.saw("spare true"));
        assertTrue(ShadowToast.getTextOfLatestToast(), ShadowToast.getTextOfLatestToast().startsWith("The phone is hot"));
        assertEquals("less_heat", spared());
    }

    @Test
    public void aCoolOneTakesItUpAgain() throws Exception {
        heat(PowerManager.THERMAL_STATUS_SEVERE);
        heat(PowerManager.THERMAL_STATUS_NONE);
        assertTrue(app.saw("spare false"));
        assertEquals("Second opinions on readings are on again.", ShadowToast.getTextOfLatestToast());
        assertEquals("", spared());
    }

    @Test
    public void aWarmOneIsLeftAlone() throws Exception {
        heat(PowerManager.THERMAL_STATUS_LIGHT);
        assertFalse(app.saw("spare"));
        assertNull(ShadowToast.getTextOfLatestToast());
    }

    @Test
    public void theJobGoesOnInTheGreatestHeat() throws Exception {
        heat(PowerManager.THERMAL_STATUS_SHUTDOWN);
        assertTrue(app.desk().job());
        app.desk().command("repeat");
        app.settle();
        assertTrue(app.commanded("repeat"));
    }

    @Test
    public void aShortageOfMemoryRestsItUntilItIsOver() throws Exception {
        memory(true);
        app.strain().onLowMemory();
        app.settle();
        assertTrue(app.saw("spare true"));
        assertTrue(ShadowToast.getTextOfLatestToast().startsWith("The phone is short of memory"));
        later();
        assertFalse("still short", app.saw("spare false"));
        memory(false);
        later();
        assertTrue(app.saw("spare false"));
    }

    @Test
    @SuppressWarnings("deprecation")
    public void olderPhonesTellItByDegrees() throws Exception {
        app.onTrimMemory(ComponentCallbacks2.TRIM_MEMORY_UI_HIDDEN);
        app.onTrimMemory(ComponentCallbacks2.TRIM_MEMORY_BACKGROUND);
        app.settle();
        assertFalse("hidden is not short", app.saw("spare"));
        memory(true);
        app.onTrimMemory(ComponentCallbacks2.TRIM_MEMORY_RUNNING_CRITICAL);
        app.settle();
        assertTrue(app.saw("spare true"));
    }

    @Test
    public void heatAndMemoryTogetherAreToldOnce() throws Exception {
        heat(PowerManager.THERMAL_STATUS_MODERATE);
        memory(true);
        app.strain().onLowMemory();
        app.settle();
        synchronized (app.log) {
            assertEquals(1, app.log.stream().filter(l -> l.startsWith("spare")).count());
        }
    }
}
