package org.readback.shell;

import android.content.res.AssetManager;
import android.net.Uri;
import android.webkit.RenderProcessGoneDetail;
import android.webkit.WebResourceRequest;
import android.webkit.WebResourceResponse;
import android.webkit.WebView;
import android.webkit.WebViewClient;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.readback.desk.Core;
import org.readback.desk.Reply;

/**
 * Answers every load of the page inside the process. No URL ever reaches a network: what is not ours gets a 404, and the
 * app has no network permission in the first place.
 */
final class PageClient extends WebViewClient {
    /** The host set aside by the platform for pages served by the app itself; it names no server. */
    static final String HOST = "appassets.androidplatform.net";
    static final String ORIGIN = "https://" + HOST;
    static final String HOME = ORIGIN + "/";

    /** The core's page sends the same policy; it is set here for every answer, so that no answer can be without. */
    static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; "
            + "media-src 'self' blob:; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** Where the shell's own files are: assets/shell in the APK. */
    private static final String OWN = "/shell/";

    /** Hears about things the page wanted and the WebView does not do by itself. */
    interface Events {
        /** A page of ours has loaded in this view and may be given its port, or be printed. */
        void loaded(WebView view);

        /** The page was left for a record: a path that begins with /api/. */
        void record(String path);

        /** The page's process has gone; the view must be made anew. */
        void gone();
    }

    private final AssetManager assets;
    private final Supplier<Core> core;
    private final Events events;

    PageClient(AssetManager assets, Supplier<Core> core, Events events) {
        this.assets = assets;
        this.core = core;
        this.events = events;
    }

    @Override
    public WebResourceResponse shouldInterceptRequest(WebView view, WebResourceRequest request) {
        return serve(request.getMethod(), request.getUrl());
    }

    /** Answers one load; never null. Called off the main thread. */
    WebResourceResponse serve(String method, Uri url) {
        Reply reply;
        if (!ours(url)) {
            reply = Reply.text(404, "not here");
        } else if (!method.equals("GET") && !method.equals("HEAD")) {
            reply = Reply.text(405, "only reading comes this way");
        } else if (String.valueOf(url.getPath()).startsWith(OWN)) {
            reply = own(url.getPath());
        } else {
            String path = url.getEncodedPath();
            String query = url.getEncodedQuery();
            reply = core.get().request("GET", (path == null || path.isEmpty() ? "/" : path) + (query == null ? "" : "?" + query), new byte[0]);
        }
        return response(reply);
    }

    static boolean ours(Uri url) {
        return "https".equals(url.getScheme()) && HOST.equals(url.getHost()) && url.getPort() == -1 && url.getUserInfo() == null;
    }

    private Reply own(String path) {
        if (!path.matches("/shell/[a-z]+\\.(css|js)")) {
            return Reply.text(404, "not here");
        }
        try (InputStream in = assets.open(path.substring(1))) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            byte[] buf = new byte[8192];
            for (int n; (n = in.read(buf)) > 0; ) {
                out.write(buf, 0, n);
            }
            return new Reply(200, path.endsWith(".css") ? "text/css; charset=utf-8" : "text/javascript; charset=utf-8", out.toByteArray());
        } catch (IOException e) {
            return Reply.text(404, "not here");
        }
    }

    private static WebResourceResponse response(Reply r) {
        Map<String, String> headers = new HashMap<>();
        headers.put("Content-Security-Policy", POLICY);
        headers.put("X-Content-Type-Options", "nosniff");
        headers.put("Referrer-Policy", "no-referrer");
        headers.put("Cache-Control", "no-store");
        return new WebResourceResponse(r.mime(), r.charset(), r.status, reason(r.status), headers, new ByteArrayInputStream(r.body));
    }

    private static String reason(int status) {
        switch (status) {
            case 200: return "OK";
            case 404: return "Not Found";
            case 405: return "Method Not Allowed";
            default: return "Status " + status;
        }
    }

    @Override
    public boolean shouldOverrideUrlLoading(WebView view, WebResourceRequest request) {
        Uri url = request.getUrl();
        if (ours(url) && request.isForMainFrame()) {
            String path = String.valueOf(url.getEncodedPath());
            if (path.equals("/")) {
                return false; // a reload
            }
            if (path.startsWith("/api/")) {
                events.record(path);
            }
        }
        return true;
    }

    @Override
    public void onPageFinished(WebView view, String url) {
        if (ours(Uri.parse(url))) {
            events.loaded(view);
        }
    }

    @Override
    public boolean onRenderProcessGone(WebView view, RenderProcessGoneDetail detail) {
        events.gone();
        return true; // or the whole app would be ended, in the middle of a job
    }
}
