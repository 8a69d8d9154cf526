package org.readback.shell;

import android.app.Application;
import android.content.Context;
import android.content.Intent;
import android.content.pm.PackageManager;
import android.os.Handler;
import android.os.Looper;
import android.util.Log;
import android.widget.Toast;
import java.io.File;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.readback.desk.Attention;
import org.readback.desk.Battery;
import org.readback.desk.Core;
import org.readback.desk.Desk;
import org.readback.desk.Permits;
import org.readback.desk.Phone;
import org.readback.desk.Safely;

/**
 * Builds the shell once for the life of the process: the core, the desk and the phone's services. The activity comes and goes
 * and is told through {@link #window}.
 */
public class ShellApp extends Application {
    private static final String TAG = "readback";

    /** What only the visible activity can do. */
    interface Window {
        void keepScreenOn(boolean on);

        Permits.Phone permits();
    }

    private final Handler main = new Handler(Looper.getMainLooper());
    private final ExecutorService worker = Executors.newSingleThreadExecutor(r -> new Thread(r, "core"));
    private final CompletableFuture<Core> core = new CompletableFuture<>();
    private final Safely safely = new Safely(t -> Log.e(TAG, "caught", t));
    private Desk desk;
    private PhoneVoice voice;
    private PhoneNews news;
    private HeadsetButton headset;
    private PhoneStrain strain;
    private PhoneSharer sharer;
    private PhoneTorch torch;
    private PhoneWords words;
    private Window window;
    private boolean running;
    private volatile boolean noticeWanted;
    private volatile boolean noticeUp;

    @Override
    public void onCreate() {
        super.onCreate();
        words = new PhoneWords(this);
        torch = new PhoneTorch(this);
        Phone.Notes notes = this::note;
        sharer = new PhoneSharer(this, jobs(), notes);

        Desk.Parts p = new Desk.Parts();
        p.work = main::post;
        p.safely = safely;
        p.words = words;
        p.notes = notes;
        p.tones = new PhoneTones(safely);
        p.buzzer = new PhoneBuzzer(this);
        p.awake = new PhoneAwake(this, this::job);
        p.mic = new PhoneMic(this, notice(), safely);
        p.eye = new PhoneEye(this, safely);
        p.sharer = sharer;
        p.permits = new Permits(new WindowPermits());
        voice = new PhoneVoice(this, language(), new PhoneVoice.Events() {
            @Override
            public void ended(String id, boolean failed) {
                main.post(() -> desk.mouth().ended(id, failed));
            }

            @Override
            public void none() {
                main.post(() -> desk.tell("sound-off", 0, words.of("voice_missing")));
            }
        });
        p.voice = voice;
        desk = new Desk(p);
        news = new PhoneNews(this, new Battery(percent -> desk.tell("battery", percent, "")), new Attention(new Attention.Out() {
            @Override
            public void device(String kind) {
                desk.tell(kind, 0, "");
            }

            @Override
            public void call(boolean on) {
                desk.inCall(on);
            }
        }), safely);
        strain = new PhoneStrain(this, desk.strain(), main, safely);
        headset = new HeadsetButton(this, desk, main, safely);
        worker.execute(this::open);
    }

    /** Opens the core; whatever goes wrong, a core is there in the end and says what is missing. */
    private void open() {
        Core c;
        try {
            c = openCore(desk);
        } catch (Throwable t) {
            Log.e(TAG, "the core cannot be opened", t);
            boolean noCode = t instanceof LinkageError;
            c = new NoCore(language().getLanguage(), getString(R.string.nocore_title),
                    noCode ? getString(R.string.nocore_text) : getString(R.string.core_failed, String.valueOf(t.getMessage())),
                    noCode ? getString(R.string.nocore_how, String.valueOf(t.getMessage())) : "");
        }
        Core opened = c;
        desk.attach(opened);
        core.complete(opened);
        new Thread(() -> safely.run(() -> new ModelLoader(getAssets(), getNoBackupFilesDir(), words).run(opened)), "model").start();
    }

    /** Opens the real core; tests put another in its place. */
    Core openCore(Core.Host host) throws Exception {
        return GoCore.open(jobs().getPath(), version(this), language().getLanguage(), host, t -> Log.e(TAG, "core", t));
    }

    /** The core; waits while it opens, so never on the main thread. */
    Core core() {
        return core.join();
    }

    boolean opened() {
        return core.isDone();
    }

    Desk desk() {
        return desk;
    }

    Handler main() {
        return main;
    }

    ExecutorService worker() {
        return worker;
    }

    PhoneSharer sharer() {
        return sharer;
    }

    PhoneTorch torch() {
        return torch;
    }

    HeadsetButton headset() {
        return headset;
    }

    File jobs() {
        return new File(getFilesDir(), "readback");
    }

    /** The language spoken; one more language is sketched by the pseudo-locale, which speaks English. */
    static Locale language() {
        return Locale.ENGLISH.getLanguage().equals(Locale.getDefault().getLanguage()) ? Locale.getDefault() : Locale.ENGLISH;
    }

    static String version(Context c) {
        try {
            return c.getPackageManager().getPackageInfo(c.getPackageName(), 0).versionName;
        } catch (PackageManager.NameNotFoundException e) {
            throw new AssertionError("shell: an app that is not installed", e);
        }
    }

    /** Shows a sentence for a moment. */
    void note(String text) {
        Toast.makeText(this, text, Toast.LENGTH_LONG).show();
    }

    /** The activity that is on the screen, or null. */
    void window(Window w) {
        window = w;
        if (w != null) {
            news.again();
            w.keepScreenOn(running);
        }
    }

    /** A job began or ended. */
    private void job(boolean on) {
        running = on;
        if (window != null) {
            window.keepScreenOn(on);
        }
        headset.active(on);
        if (on) {
            news.start();
        } else {
            news.stop();
        }
    }

    /**
     * A service that was started must come to the foreground before it may be stopped, or the phone ends the app. So calling the
     * notice off stops a service that stands, and one that is still starting stops itself.
     */
    private PhoneMic.Notice notice() {
        return new PhoneMic.Notice() {
            @Override
            public boolean up() {
                noticeWanted = true;
                try {
                    startForegroundService(new Intent(ShellApp.this, ListenService.class));
                    return true;
                } catch (IllegalStateException | SecurityException e) {
                    noticeWanted = false;
                    return false; // not visible: the phone refuses, and would give silence anyway
                }
            }

            @Override
            public void down() {
                noticeWanted = false;
                if (noticeUp) {
                    stopService(new Intent(ShellApp.this, ListenService.class));
                }
            }
        };
    }

    /** The service is in the foreground now; whether it is still wanted. */
    boolean noticeStands() {
        noticeUp = noticeWanted;
        return noticeWanted;
    }

    void noticeGone() {
        noticeUp = false;
    }

    PhoneStrain strain() {
        return strain;
    }

    /** Asks through the activity on the screen. With none there is nobody to ask: the answer is no, and it is not remembered. */
    private final class WindowPermits implements Permits.Phone {
        private Permits.Phone now() {
            return window == null ? null : window.permits();
        }

        @Override
        public boolean has(Permits.Need need) {
            return PhonePermits.has(ShellApp.this, need);
        }

        @Override
        public void explain(Permits.Need need, Permits.Result go) {
            Permits.Phone p = now();
            if (p == null) {
                go.granted(false);
            } else {
                p.explain(need, go);
            }
        }

        @Override
        public void ask(Permits.Need need, Permits.Result answer) {
            Permits.Phone p = now();
            if (p == null) {
                answer.granted(false);
            } else {
                p.ask(need, answer);
            }
        }

        @Override
        public boolean willAsk(Permits.Need need) {
            Permits.Phone p = now();
            return p == null || p.willAsk(need);
        }

        @Override
        public void settings(Permits.Need need) {
            Permits.Phone p = now();
            if (p != null) {
                p.settings(need);
            }
        }
    }
}
