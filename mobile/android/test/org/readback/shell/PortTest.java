package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.webkit.WebMessage;
import android.webkit.WebView;
import java.util.ArrayList;
import java.util.List;
import org.json.JSONObject;
import org.junit.Before;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.annotation.Config;
import org.robolectric.fakes.RoboWebMessagePort;

/** The page's line to the core, seen from the page's end of it. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class PortTest {
    private final TestApp app = (TestApp) RuntimeEnvironment.getApplication();
    private MainActivity activity;
    private RoboWebMessagePort page;

    @Before
    public void open() throws Exception {
        activity = Robolectric.setupActivity(MainActivity.class);
        app.settle();
        page = load();
    }

    /** Lets the page finish loading, and takes its end of the port. */
    private RoboWebMessagePort load() throws Exception {
        WebView v = activity.page();
        shadowOf(v).getWebViewClient().onPageFinished(v, PageClient.HOME);
        app.settle();
        List<RoboWebMessagePort[]> all = shadowOf(v).getCreatedPorts();
        return all.get(all.size() - 1)[1];
    }

    /** What the page has been sent since it loaded. */
    private List<String> got() throws Exception {
        app.settle();
        return new ArrayList<>(page.getReceivedMessages());
    }

    private void send(String text) throws Exception {
        page.postMessage(new WebMessage(text));
        app.settle();
    }

    private JSONObject last() throws Exception {
        List<String> all = got();
        return new JSONObject(all.get(all.size() - 1));
    }

    @Test
    public void aCallGoesToTheCoreAndItsReplyComesBack() throws Exception {
        send("{\"id\":1,\"method\":\"GET\",\"path\":\"/api/state\"}");
        assertTrue(app.saw("message {\"id\":1,\"method\":\"GET\",\"path\":\"/api/state\"}"));
        assertEquals(1, last().getInt("re"));
    }

    @Test
    public void theStreamReachesThePage() throws Exception {
        assertTrue(app.saw("subscribe"));
        app.fake.listener.message("{\"n\":7,\"type\":\"say\",\"text\":\"f\u00fcnf\"}");
        assertEquals("{\"n\":7,\"type\":\"say\",\"text\":\"f\u00fcnf\"}", got().get(got().size() - 1));
    }

    @Test
    public void rubbishIsTheCoresToRefuse() throws Exception {
        send("{not json");
        assertTrue(app.saw("message {not json"));
    }

    @Test
    public void aReloadedPageGetsANewPortAndTheOldOneIsDead() throws Exception {
        RoboWebMessagePort old = page;
        page = load();
        assertTrue(old != page);
        assertTrue(app.saw("unsubscribe"));
        app.log.clear();
        int before = got().size();
        app.fake.listener.message("{\"n\":9}");
        assertEquals(before + 1, got().size());
    }

    @Test
    public void theShellSaysHowItIs() throws Exception {
        send("{\"id\":5,\"method\":\"POST\",\"path\":\"/shell/state\",\"body\":{}}");
        JSONObject body = last().getJSONObject("body");
        assertFalse(body.getBoolean("reader"));
        assertFalse(body.getBoolean("mic"));
        assertFalse(app.saw("message {\"id\":5"));
    }

    @Test
    public void anUnknownCallOfTheShellIsRefused() throws Exception {
        send("{\"id\":6,\"method\":\"POST\",\"path\":\"/shell/format-disk\"}");
        assertEquals(404, last().getInt("status"));
        assertEquals(6, last().getInt("re"));
    }

    @Test
    public void onlyRecordsCanBeSavedSharedOrPrinted() throws Exception {
        for (String call : new String[] {"save", "share", "print"}) {
            send("{\"id\":8,\"method\":\"POST\",\"path\":\"/shell/" + call + "\",\"body\":{\"path\":\"/etc/hosts\"}}");
            assertTrue(call, last().getJSONObject("body").has("error"));
        }
    }

    @Test
    public void aRunningScreenReaderIsToldToThePage() throws Exception {
        shadowOf(activity.getSystemService(android.view.accessibility.AccessibilityManager.class)).setEnabled(true);
        shadowOf(activity.getSystemService(android.view.accessibility.AccessibilityManager.class)).setTouchExplorationEnabled(true);
        JSONObject news = last();
        assertEquals("shell", news.getString("type"));
        assertTrue(news.getJSONObject("shell").getBoolean("reader"));
        app.host.say("1", "hello", "info", false);
        app.settle();
        assertTrue("one voice: the reader's", app.saw("spoke 1 false"));
    }
}
