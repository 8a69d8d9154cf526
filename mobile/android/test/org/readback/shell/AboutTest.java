package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNotNull;
import static org.junit.Assert.assertNull;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.app.AlertDialog;
import android.content.Context;
import android.content.Intent;
import android.view.View;
import android.view.ViewGroup;
import android.widget.TextView;
import org.json.JSONObject;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.annotation.Config;
import org.robolectric.shadows.ShadowAlertDialog;

/** The trial says that it is one. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class AboutTest {
    private final TestApp app = (TestApp) RuntimeEnvironment.getApplication();

    private static String text(View v) {
        if (v instanceof TextView) {
            return ((TextView) v).getText() + "\n";
        }
        StringBuilder all = new StringBuilder();
        for (int i = 0; v instanceof ViewGroup && i < ((ViewGroup) v).getChildCount(); i++) {
            all.append(text(((ViewGroup) v).getChildAt(i)));
        }
        return all.toString();
    }

    @Test
    public void thePageSaysTrialVersionAndParts() {
        AboutActivity a = Robolectric.setupActivity(AboutActivity.class);
        String all = text(a.findViewById(android.R.id.content));
        assertTrue(all, all.startsWith("Readback trial\n"));
        assertTrue(all, all.contains("Version " + ShellApp.version(app)));
        assertTrue(all, all.contains("Nobody had run it on a phone"));
        assertTrue(all, all.contains("one person's build"));
        for (String part : new String[] {"Vosk", "ONNX Runtime", "Moonshine", "bionic", "purego", "gozxing", "Apache License", "MIT License", "BSD"}) {
            assertTrue(part, all.contains(part));
        }
    }

    @Test
    public void theNameSaysTrial() {
        assertEquals("Readback trial", app.getPackageManager().getApplicationLabel(app.getApplicationInfo()).toString());
    }

    @Test
    public void theStatementIsShownOnceInAVersion() throws Exception {
        app.getSharedPreferences("trial-read", Context.MODE_PRIVATE).edit().clear().commit();
        Robolectric.setupActivity(MainActivity.class);
        AlertDialog d = ShadowAlertDialog.getLatestAlertDialog();
        assertNotNull(d);
        assertTrue(String.valueOf(shadowOf(d).getMessage()).contains("trial build"));
        ShadowAlertDialog.reset();
        Robolectric.setupActivity(MainActivity.class);
        assertNotNull("not read is shown again", ShadowAlertDialog.getLatestAlertDialog());
        ShadowAlertDialog.getLatestAlertDialog().getButton(AlertDialog.BUTTON_POSITIVE).performClick();
        app.settle();
        ShadowAlertDialog.reset();
        Robolectric.setupActivity(MainActivity.class);
        assertNull(ShadowAlertDialog.getLatestAlertDialog());
    }

    @Test
    public void thePageCanAskForIt() throws Exception {
        MainActivity a = Robolectric.setupActivity(MainActivity.class);
        a.call("about", new JSONObject());
        Intent next = shadowOf(a).getNextStartedActivity();
        assertEquals(AboutActivity.class.getName(), next.getComponent().getClassName());
        assertFalse("nothing outside may open it", app.getPackageManager().resolveActivity(next, 0).activityInfo.exported);
    }
}
