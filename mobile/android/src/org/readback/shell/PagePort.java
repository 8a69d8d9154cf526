package org.readback.shell;

import android.net.Uri;
import android.os.Handler;
import android.webkit.WebMessage;
import android.webkit.WebMessagePort;
import android.webkit.WebView;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import org.json.JSONException;
import org.json.JSONObject;
import org.readback.desk.Core;

/**
 * The page's line to the core: one message port, given to our own origin only. The page's calls are answered by the core in
 * order; the core's stream goes the other way. A call whose path begins with /shell/ is for the shell itself.
 */
final class PagePort {
    /** What the page may ask of the shell. */
    interface Shell {
        /** Answers a call; the path is without "/shell/". Null: there is no such call. Runs on the main thread. */
        JSONObject call(String path, JSONObject body) throws JSONException;
    }

    /** Text that comes with the port, so that the page knows it. */
    static final String HELLO = "readback-port";

    private final Supplier<Core> core;
    private final Executor worker;
    private final Handler main;
    private final Shell shell;
    private WebMessagePort port;
    private Core.Stop stream;

    PagePort(Supplier<Core> core, Executor worker, Handler main, Shell shell) {
        this.core = core;
        this.worker = worker;
        this.main = main;
        this.shell = shell;
    }

    /** Gives a freshly loaded page its port. The port of the page before is closed. Main thread. */
    void connect(WebView view) {
        close();
        WebMessagePort[] pair = view.createWebMessageChannel();
        if (pair == null || pair.length != 2) {
            return; // a view without a page
        }
        WebMessagePort mine = pair[0];
        port = mine;
        mine.setWebMessageCallback(new WebMessagePort.WebMessageCallback() {
            @Override
            public void onMessage(WebMessagePort p, WebMessage message) {
                received(mine, message.getData());
            }
        }, main);
        view.postWebMessage(new WebMessage(HELLO, new WebMessagePort[] {pair[1]}), Uri.parse(PageClient.ORIGIN));
        worker.execute(() -> {
            Core.Stop s = core.get().subscribe(json -> main.post(() -> post(mine, json)));
            main.post(() -> {
                if (port == mine) {
                    stream = s;
                } else {
                    s.stop();
                }
            });
        });
    }

    /** Takes one message of the page. Main thread. */
    void received(WebMessagePort from, String text) {
        if (text == null) {
            return;
        }
        JSONObject own = shellCall(text);
        if (own != null) {
            post(from, own.toString());
            return;
        }
        byte[] call = text.getBytes(StandardCharsets.UTF_8);
        worker.execute(() -> {
            String reply = new String(core.get().message(call), StandardCharsets.UTF_8);
            main.post(() -> post(from, reply));
        });
    }

    /** The reply to a call for the shell, or null when the message is not one. */
    private JSONObject shellCall(String text) {
        try {
            JSONObject call = new JSONObject(text);
            String path = call.optString("path");
            if (!path.startsWith("/shell/")) {
                return null;
            }
            JSONObject body = call.optJSONObject("body");
            JSONObject answer = shell.call(path.substring("/shell/".length()), body == null ? new JSONObject() : body);
            return new JSONObject().put("re", call.optLong("id")).put("status", answer == null ? 404 : 200)
                    .put("body", answer == null ? new JSONObject().put("error", "the shell knows no such call") : answer);
        } catch (JSONException e) {
            return null; // the core's answer says what is wrong with it
        }
    }

    /** Sends news of the shell to the page, such as a running screen reader. Main thread. */
    void news(JSONObject body) {
        if (port != null) {
            try {
                post(port, new JSONObject().put("type", "shell").put("shell", body).toString());
            } catch (JSONException e) {
                throw new AssertionError("port: news without a name", e);
            }
        }
    }

    private void post(WebMessagePort to, String text) {
        if (to == port) {
            to.postMessage(new WebMessage(text));
        }
    }

    /** Closes the port and ends the stream. Main thread. */
    void close() {
        if (stream != null) {
            Core.Stop s = stream;
            stream = null;
            worker.execute(s::stop);
        }
        if (port != null) {
            port.close();
            port = null;
        }
    }
}
