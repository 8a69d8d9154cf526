package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNotNull;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.net.Uri;
import android.webkit.PermissionRequest;
import android.webkit.WebResourceRequest;
import android.webkit.WebResourceResponse;
import android.webkit.WebSettings;
import android.webkit.WebView;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.Before;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.annotation.Config;

/** The page's view: every door shut but the one in process. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class PageTest {
    private final TestApp app = (TestApp) RuntimeEnvironment.getApplication();
    private MainActivity activity;
    private PageClient client;

    @Before
    public void open() throws Exception {
        activity = Robolectric.setupActivity(MainActivity.class);
        app.settle();
        client = (PageClient) shadowOf(activity.page()).getWebViewClient();
    }

    private WebResourceResponse get(String url) {
        WebResourceResponse r = client.serve("GET", Uri.parse(url));
        assertNotNull("an answer for " + url + ", or the view would go to a network", r);
        return r;
    }

    private static String text(WebResourceResponse r) throws Exception {
        try (InputStream in = r.getData()) {
            return new String(in.readAllBytes(), "UTF-8");
        }
    }

    static WebResourceRequest request(String url, boolean mainFrame) {
        return new WebResourceRequest() {
            @Override
            public Uri getUrl() {
                return Uri.parse(url);
            }

            @Override
            public boolean isForMainFrame() {
                return mainFrame;
            }

            @Override
            public boolean isRedirect() {
                return false;
            }

            @Override
            public boolean hasGesture() {
                return true;
            }

            @Override
            public String getMethod() {
                return "GET";
            }

            @Override
            public Map<String, String> getRequestHeaders() {
                return Collections.emptyMap();
            }
        };
    }

    @Test
    public void theViewIsShutTight() {
        WebSettings s = activity.page().getSettings();
        assertTrue(s.getJavaScriptEnabled());
        assertFalse(s.getAllowFileAccess());
        assertFalse(s.getAllowContentAccess());
        assertFalse(s.getAllowFileAccessFromFileURLs());
        assertFalse(s.getAllowUniversalAccessFromFileURLs());
        assertFalse(s.supportMultipleWindows());
        assertFalse(s.getJavaScriptCanOpenWindowsAutomatically());
        assertFalse(s.getDomStorageEnabled());
        assertEquals(WebSettings.MIXED_CONTENT_NEVER_ALLOW, s.getMixedContentMode());
        assertEquals("https://appassets.androidplatform.net/", shadowOf(activity.page()).getLastLoadedUrl());
    }

    @Test
    public void thePageComesFromTheCore() throws Exception {
        WebResourceResponse r = get(PageClient.HOME);
        assertEquals(200, r.getStatusCode());
        assertEquals("text/html", r.getMimeType());
        assertEquals("utf-8", r.getEncoding());
        assertTrue(text(r).contains("<title>Page</title>"));
        assertEquals(404, get(PageClient.ORIGIN + "/nothing").getStatusCode());
        get(PageClient.ORIGIN + "/api/drawing?all=1");
        assertTrue("with its query", app.saw("GET /api/drawing?all=1"));
    }

    @Test
    public void everyAnswerCarriesThePolicy() {
        for (String url : new String[] {PageClient.HOME, PageClient.ORIGIN + "/nothing", PageClient.ORIGIN + "/shell/plain.css", "https://example.org/x"}) {
            Map<String, String> h = get(url).getResponseHeaders();
            assertTrue(url, h.get("Content-Security-Policy").startsWith("default-src 'none'; script-src 'self';"));
            assertEquals(url, "nosniff", h.get("X-Content-Type-Options"));
            assertEquals(url, "no-store", h.get("Cache-Control"));
        }
    }

    @Test
    public void everythingElseIsNotHere() {
        app.log.clear();
        for (String url : new String[] {"http://appassets.androidplatform.net/", "https://appassets.androidplatform.net:8443/",
                "https://user@appassets.androidplatform.net/", "https://example.org/", "file:///etc/hosts", "content://x/y", "data:text/html,x",
                PageClient.ORIGIN + "/shell/../AndroidManifest.xml", PageClient.ORIGIN + "/shell/a.b.css", PageClient.ORIGIN + "/shell/none.css"}) {
            assertEquals(url, 404, get(url).getStatusCode());
        }
        assertEquals("none of them reached the core", List.of(), new ArrayList<>(app.log));
        assertEquals(405, client.serve("POST", Uri.parse(PageClient.HOME)).getStatusCode());
    }

    @Test
    public void theShellsOwnFilesComeFromTheApk() throws Exception {
        WebResourceResponse r = get(PageClient.ORIGIN + "/shell/plain.css");
        assertEquals("text/css", r.getMimeType());
        assertTrue(text(r).contains("prefers-color-scheme"));
    }

    @Test
    public void navigationIsBlocked() {
        WebView v = activity.page();
        assertFalse("a reload is not", client.shouldOverrideUrlLoading(v, request(PageClient.HOME, true)));
        for (String url : new String[] {"https://example.org/", "http://127.0.0.1/", "intent://x", "tel:112", PageClient.ORIGIN + "/other", "javascript:1"}) {
            assertTrue(url, client.shouldOverrideUrlLoading(v, request(url, true)));
        }
        assertTrue("frames too", client.shouldOverrideUrlLoading(v, request(PageClient.HOME, false)));
    }

    @Test
    public void thePageGetsNoSense() {
        boolean[] denied = {false};
        new PageChrome().onPermissionRequest(new PermissionRequest() {
            @Override
            public Uri getOrigin() {
                return Uri.parse(PageClient.HOME);
            }

            @Override
            public String[] getResources() {
                return new String[] {RESOURCE_AUDIO_CAPTURE};
            }

            @Override
            public void grant(String[] resources) {
                throw new AssertionError("granted");
            }

            @Override
            public void deny() {
                denied[0] = true;
            }
        });
        assertTrue(denied[0]);
    }

    @Test
    public void aPageThatDiedIsMadeAnew() {
        WebView old = activity.page();
        assertTrue(client.onRenderProcessGone(old, null));
        assertTrue(old != activity.page());
        assertEquals(PageClient.HOME, shadowOf(activity.page()).getLastLoadedUrl());
        assertTrue(shadowOf(old).wasDestroyCalled());
    }

    @Test
    public void aRecordIsPrintedFromAViewWithoutScripts() {
        assertTrue(client.shouldOverrideUrlLoading(activity.page(), request(PageClient.ORIGIN + "/api/jobs/j1/transcript", true)));
        WebView p = activity.printer().page();
        assertEquals(PageClient.ORIGIN + "/api/jobs/j1/transcript", shadowOf(p).getLastLoadedUrl());
        assertFalse(p.getSettings().getJavaScriptEnabled());
        assertFalse(p.getSettings().getAllowFileAccess());
        assertEquals("the page itself stays", PageClient.HOME, shadowOf(activity.page()).getLastLoadedUrl());
    }
}
