package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.net.Uri;
import android.os.Looper;
import android.speech.tts.TextToSpeech;
import android.speech.tts.Voice;
import android.view.KeyEvent;
import android.webkit.WebMessage;
import android.webkit.WebResourceResponse;
import android.webkit.WebView;
import java.io.File;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.json.JSONObject;
import org.junit.After;
import org.junit.Before;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.readback.desk.Core;
import org.readback.desk.Reply;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.annotation.Config;
import org.robolectric.fakes.RoboWebMessagePort;
import org.robolectric.shadows.ShadowPowerManager;
import org.robolectric.shadows.ShadowTextToSpeech;

/** The shell with the real Go core in the same process: nothing between page and core is made of paper. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35})
public class RealCoreTest {
    private final ShellApp app = (ShellApp) RuntimeEnvironment.getApplication();
    private MainActivity activity;
    private RoboWebMessagePort page;

    @Before
    public void open() throws Exception {
        activity = Robolectric.setupActivity(MainActivity.class);
        TestApp.idle(app);
        assertTrue("the real core is behind the shell: " + app.core(), app.core() instanceof GoCore);
        WebView v = activity.page();
        shadowOf(v).getWebViewClient().onPageFinished(v, PageClient.HOME);
        TestApp.idle(app);
        List<RoboWebMessagePort[]> all = shadowOf(v).getCreatedPorts();
        page = all.get(all.size() - 1)[1];
    }

    @After
    public void close() {
        app.core().close();
    }

    private interface Condition {
        boolean holds() throws Exception;
    }

    private void eventually(String what, Condition c) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (!c.holds()) {
            assertFalse(what, System.nanoTime() > end);
            Thread.sleep(10);
            shadowOf(Looper.getMainLooper()).idle();
        }
    }

    private JSONObject call(int id, String method, String path, JSONObject body) throws Exception {
        JSONObject c = new JSONObject().put("id", id).put("method", method).put("path", path);
        if (body != null) {
            c.put("body", body);
        }
        page.postMessage(new WebMessage(c.toString()));
        JSONObject[] found = {null};
        eventually("an answer to " + path, () -> {
            for (String m : page.getReceivedMessages()) {
                JSONObject o = new JSONObject(m);
                if (o.optInt("re", -1) == id) {
                    found[0] = o;
                }
            }
            return found[0] != null;
        });
        return found[0];
    }

    @Test
    public void thePageIsTheCoresOwn() throws Exception {
        PageClient c = (PageClient) shadowOf(activity.page()).getWebViewClient();
        for (String path : new String[] {"/", "/app.js", "/style.css", "/icon.svg"}) {
            WebResourceResponse r = c.serve("GET", Uri.parse(PageClient.ORIGIN + path));
            assertEquals(path, 200, r.getStatusCode());
            try (InputStream in = r.getData()) {
                assertTrue(path, in.readAllBytes().length > 100);
            }
        }
        assertEquals(404, c.serve("GET", Uri.parse(PageClient.ORIGIN + "/no")).getStatusCode());
    }

    @Test
    public void thePageTalksToTheCoreOverItsPort() throws Exception {
        JSONObject state = call(1, "GET", "/api/state", null);
        assertEquals(200, state.getInt("status"));
        assertTrue(state.getJSONObject("body").has("jobs"));
        JSONObject prefs = new JSONObject().put("voice", false).put("done", true).put("theme", "dark");
        assertEquals(200, call(2, "POST", "/api/prefs", prefs).getInt("status"));
        assertEquals("dark", call(3, "GET", "/api/state", null).getJSONObject("body").getJSONObject("prefs").getString("theme"));
    }

    @Test
    public void newsOfThePhoneComesBackInTheStream() throws Exception {
        app.desk().tell("battery", 42, "");
        eventually("the page hears of the battery", () -> page.getReceivedMessages().stream().anyMatch(m -> m.contains("battery") && m.contains("42")));
    }

    @Test
    public void whySpeechIsOffReachesThePage() throws Exception {
        eventually("why speech is off", () -> new String(app.core().request("GET", "/api/state", new byte[0]).body, StandardCharsets.UTF_8)
                .contains("this build carries no recogniser"));
    }

    @Test
    public void aBadPictureIsAReportAndNotTheEnd() {
        app.core().photo("before", "not a picture".getBytes(StandardCharsets.UTF_8));
        assertEquals(200, app.core().request("GET", "/", new byte[0]).status);
    }

    private JSONObject start(int id, boolean voice) throws Exception {
        JSONObject r = call(id, "POST", "/api/start", new JSONObject().put("appliance", "furnace-hsi").put("voice", voice));
        assertEquals(r.toString(), 200, r.getInt("status"));
        return r.getJSONObject("body");
    }

    @Test
    public void aJobSpeaksThroughThePhonesVoiceAndHearsItsEnd() throws Exception {
        TextToSpeech tts = ShadowTextToSpeech.getLastTextToSpeechInstance();
        ShadowTextToSpeech.addVoice(new Voice("v", Locale.US, 300, 200, false, Collections.emptySet()));
        shadowOf(tts).getOnInitListener().onInit(TextToSpeech.SUCCESS);
        start(11, true);
        eventually("the core speaks", () -> shadowOf(tts).getLastSpokenText() != null);
        assertTrue("and keeps the phone awake", ShadowPowerManager.getLatestWakeLock().isHeld());
        eventually("the whole first step is said", () -> !app.desk().mouth().speaking());
        File journal = new File(app.jobs(), "jobs").listFiles()[0];
        eventually("the end of a saying is in the record", () -> records(journal).contains("\"type\":\"spoke\""));
        activity.onKeyUp(KeyEvent.KEYCODE_VOLUME_DOWN, new KeyEvent(KeyEvent.ACTION_UP, KeyEvent.KEYCODE_VOLUME_DOWN));
        eventually("the volume key is an answer in the record", () -> records(journal).contains("\"source\":\"key\"") && records(journal).contains("\"repeat\""));
    }

    private static String records(File dir) throws Exception {
        StringBuilder all = new StringBuilder();
        for (File f : dir.listFiles()) {
            if (f.getName().startsWith("journal")) {
                all.append(Files.readString(f.toPath()));
            }
        }
        return all.toString();
    }

    @Test
    public void theEndOfTheProcessLosesNothingButTheCertaintyAboutPower() throws Exception {
        start(21, false);
        app.core().close(); // what is on disk is all that is left
        Core again = GoCore.open(app.jobs().getPath(), "test", "en", app.desk(), t -> { });
        try {
            String state = again.request("GET", "/api/state", new byte[0]).string();
            String job = new JSONObject(state).getJSONArray("jobs").getJSONObject(0).getString("id");
            Reply r = again.request("POST", "/api/jobs/" + job + "/resume", "{}".getBytes(StandardCharsets.UTF_8));
            assertEquals(r.string(), 200, r.status);
            JSONObject view = new JSONObject(r.string()).getJSONObject("view");
            assertEquals(job, view.getString("job"));
            assertEquals("unknown", view.getJSONObject("site").getString("power"));
        } finally {
            again.close();
        }
    }
}
