package org.readback.shell;

import android.app.Activity;
import android.app.AlertDialog;
import android.content.Context;
import android.content.Intent;
import android.content.pm.PackageManager;
import android.graphics.Insets;
import android.net.Uri;
import android.os.Build;
import android.os.Bundle;
import android.view.KeyEvent;
import android.view.View;
import android.view.WindowInsets;
import android.view.WindowManager;
import android.webkit.WebSettings;
import android.webkit.WebView;
import android.widget.FrameLayout;
import android.window.OnBackInvokedDispatcher;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import org.json.JSONException;
import org.json.JSONObject;
import org.readback.desk.Keys;
import org.readback.desk.Permits;
import org.readback.desk.Reply;

/** The one window: the page, and what only a window can do. It keeps no state of the job; the core is the truth. */
public final class MainActivity extends Activity implements ShellApp.Window, PagePort.Shell, PageClient.Events {
    private static final String SAVING = "saving";

    private ShellApp app;
    private FrameLayout frame;
    private WebView page;
    private PageClient client;
    private PagePort port;
    private PhonePermits permits;
    private ScreenReader reader;
    private Printer printer;
    private Saver saver;

    @Override
    protected void onCreate(Bundle saved) {
        super.onCreate(saved);
        app = (ShellApp) getApplication();
        permits = new PhonePermits(this);
        printer = new Printer(this);
        saver = new Saver(this, app);
        if (saved != null) {
            saver.waiting(saved.getString(SAVING));
        }
        client = new PageClient(getAssets(), app::core, this);
        port = new PagePort(app::core, app.worker(), app.main(), this);
        reader = new ScreenReader(this, this::screenReader);
        frame = new FrameLayout(this);
        frame.setFitsSystemWindows(false);
        frame.setOnApplyWindowInsetsListener(MainActivity::inset);
        setContentView(frame);
        showPage();
        back();
        String trial = AboutActivity.unread(this);
        if (!trial.isEmpty()) {
            new AlertDialog.Builder(this).setTitle(R.string.app_name).setMessage(trial)
                    .setPositiveButton(R.string.about_ok, (d, w) -> AboutActivity.read(this)).show();
        }
    }

    private void showPage() {
        if (page != null) {
            port.close();
            frame.removeView(page);
            page.destroy();
        }
        page = view(this);
        page.setWebViewClient(client);
        page.setWebChromeClient(new PageChrome());
        page.setDownloadListener((url, agent, disposition, type, length) -> {
            Uri u = Uri.parse(url);
            if (PageClient.ours(u) && u.getEncodedPath() != null) {
                record(u.getEncodedPath());
            }
        });
        frame.addView(page, new FrameLayout.LayoutParams(FrameLayout.LayoutParams.MATCH_PARENT, FrameLayout.LayoutParams.MATCH_PARENT));
        page.loadUrl(PageClient.HOME);
    }

    /** A web view with every door shut that is not needed. */
    @SuppressWarnings("deprecation") // two of these are the default by now; a phone of API 26 is told all the same
    static WebView view(Context context) {
        WebView v = new WebView(context);
        WebSettings s = v.getSettings();
        s.setJavaScriptEnabled(true);
        s.setAllowFileAccess(false);
        s.setAllowContentAccess(false);
        s.setAllowFileAccessFromFileURLs(false);
        s.setAllowUniversalAccessFromFileURLs(false);
        s.setSupportMultipleWindows(false);
        s.setJavaScriptCanOpenWindowsAutomatically(false);
        s.setGeolocationEnabled(false);
        s.setDomStorageEnabled(false);
        s.setMediaPlaybackRequiresUserGesture(true);
        s.setMixedContentMode(WebSettings.MIXED_CONTENT_NEVER_ALLOW);
        s.setCacheMode(WebSettings.LOAD_NO_CACHE);
        s.setTextZoom(Math.round(100 * context.getResources().getConfiguration().fontScale));
        v.setBackgroundColor(context.getColor(R.color.paper));
        return v;
    }

    /** Target 35 draws under the system bars: the page is kept clear of them, of the cut-out and of the keyboard. */
    private static WindowInsets inset(View v, WindowInsets insets) {
        if (Build.VERSION.SDK_INT >= 30) {
            Insets i = insets.getInsets(WindowInsets.Type.systemBars() | WindowInsets.Type.displayCutout() | WindowInsets.Type.ime());
            v.setPadding(i.left, i.top, i.right, i.bottom);
            return WindowInsets.CONSUMED;
        }
        v.setPadding(insets.getSystemWindowInsetLeft(), insets.getSystemWindowInsetTop(), insets.getSystemWindowInsetRight(), insets.getSystemWindowInsetBottom());
        return insets.consumeSystemWindowInsets();
    }

    /** Back never ends a job: it puts the app behind, and the notice brings it back. */
    private void back() {
        if (Build.VERSION.SDK_INT >= 33) {
            getOnBackInvokedDispatcher().registerOnBackInvokedCallback(OnBackInvokedDispatcher.PRIORITY_DEFAULT, () -> moveTaskToBack(true));
        }
    }

    @Override
    @SuppressWarnings("deprecation")
    public void onBackPressed() {
        moveTaskToBack(true);
    }

    @Override
    protected void onStart() {
        super.onStart();
        app.window(this);
        app.desk().returned();
        reader.start();
    }

    @Override
    protected void onStop() {
        reader.stop();
        app.torch().light(false);
        app.desk().watch(""); // the camera is not ours behind another app
        super.onStop();
    }

    @Override
    protected void onDestroy() {
        permits.abandon();
        app.window(null);
        port.close();
        page.destroy();
        super.onDestroy();
    }

    @Override
    protected void onSaveInstanceState(Bundle out) {
        super.onSaveInstanceState(out);
        out.putString(SAVING, saver.waiting());
    }

    @Override
    public void onRequestPermissionsResult(int code, String[] names, int[] grants) {
        permits.answered(code, grants);
    }

    @Override
    protected void onActivityResult(int request, int result, Intent data) {
        if (request == Saver.CODE) {
            saver.chosen(result == RESULT_OK && data != null ? data.getData() : null);
        }
    }

    @Override
    public boolean onKeyDown(int code, KeyEvent event) {
        if (Keys.volume(code, app.desk().job()) != null) {
            return true; // acted on when it comes up, so that holding it does nothing twice
        }
        if (Keys.headset(code) && app.desk().job()) {
            return true;
        }
        return super.onKeyDown(code, event);
    }

    @Override
    public boolean onKeyUp(int code, KeyEvent event) {
        String command = Keys.volume(code, app.desk().job());
        if (command != null) {
            app.desk().command(command);
            return true;
        }
        if (Keys.headset(code) && app.desk().job()) {
            app.headset().key(event);
            return true;
        }
        return super.onKeyUp(code, event);
    }

    // The window's part of the shell.

    @Override
    public void keepScreenOn(boolean on) {
        if (on) {
            getWindow().addFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON);
        } else {
            getWindow().clearFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON);
        }
    }

    @Override
    public Permits.Phone permits() {
        return permits;
    }

    private void screenReader(boolean on) {
        app.desk().mouth().screenReader(on);
        shellNews();
    }

    private void shellNews() {
        try {
            port.news(state());
        } catch (JSONException e) {
            throw new AssertionError("shell: news", e);
        }
    }

    private JSONObject state() throws JSONException {
        return new JSONObject().put("reader", reader.on()).put("mic", app.desk().listening()).put("torch", app.torch().on())
                .put("spared", app.desk().spared())
                .put("eye", getPackageManager().hasSystemFeature(PackageManager.FEATURE_CAMERA_ANY));
    }

    // What the page asks of the shell: /shell/NAME over its port.

    @Override
    public JSONObject call(String path, JSONObject body) throws JSONException {
        switch (path) {
            case "state":
                return state();
            case "mic":
                if (body.optBoolean("on")) {
                    app.desk().listen();
                } else {
                    app.desk().deafen();
                }
                return new JSONObject();
            case "torch":
                return new JSONObject().put("on", app.torch().light(body.optBoolean("on")) && app.torch().on());
            case "eye":
                app.desk().watch(body.optString("kind"));
                return new JSONObject();
            case "picture":
                app.desk().takePhoto(body.optString("id"));
                return new JSONObject();
            case "about":
                startActivity(new Intent(this, AboutActivity.class));
                return new JSONObject();
            case "save":
                return act(body, saver::ask);
            case "print":
                return act(body, p -> printer.print(p, client));
            case "share":
                return act(body, this::share);
            default:
                return null;
        }
    }

    private interface Act {
        void on(String path);
    }

    private static JSONObject act(JSONObject body, Act act) throws JSONException {
        String path = body.optString("path");
        if (!path.startsWith("/api/jobs/")) {
            return new JSONObject().put("error", "a record's path is wanted");
        }
        act.on(path);
        return new JSONObject();
    }

    /** The page followed a link to a record: a picture of it goes to the printer, a file is saved. */
    @Override
    public void record(String path) {
        if (path.endsWith("/transcript")) {
            printer.print(path, client);
        } else {
            saver.ask(path);
        }
    }

    private void share(String path) {
        app.worker().execute(() -> {
            Reply r = app.core().request("GET", path, new byte[0]);
            app.main().post(() -> {
                try {
                    if (r.status != 200) {
                        throw new IOException(r.string());
                    }
                    app.sharer().send(Saver.name(path), new ByteArrayInputStream(r.body));
                } catch (IOException e) {
                    app.note(getString(R.string.save_failed, e.getMessage()));
                }
            });
        });
    }

    @Override
    public void loaded(WebView view) {
        if (view == page) {
            port.connect(page);
            shellNews();
        } else {
            printer.loaded(view);
        }
    }

    @Override
    public void gone() {
        showPage();
    }

    WebView page() {
        return page;
    }

    PagePort port() {
        return port;
    }

    Printer printer() {
        return printer;
    }
}
