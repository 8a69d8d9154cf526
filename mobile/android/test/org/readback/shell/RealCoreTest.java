package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.net.Uri;
import android.os.Looper;
import android.webkit.WebMessage;
import android.webkit.WebResourceResponse;
import android.webkit.WebView;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.json.JSONObject;
import org.junit.After;
import org.junit.Before;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.annotation.Config;
import org.robolectric.fakes.RoboWebMessagePort;

/** The shell with the real Go core in the same process: nothing between page and core is made of paper. */
@RunWith(CoreRunner.class)
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
}
