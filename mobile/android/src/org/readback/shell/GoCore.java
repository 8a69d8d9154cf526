package org.readback.shell;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.Consumer;
import org.json.JSONException;
import org.json.JSONObject;
import org.readback.desk.Core;
import org.readback.desk.Luma;
import org.readback.desk.Reply;
import org.readback.desk.Safely;
import org.readback.mobile.Mobile;
import org.readback.mobile.Subscription;

/**
 * The bound core. The only class of the shell that knows the generated binding: it turns the binding's checked exceptions into
 * answers and reports, and puts every call from Go behind {@link Safely}.
 */
final class GoCore implements Core {
    private final org.readback.mobile.Core bound;
    private final Consumer<Throwable> reporter;

    /** Opens the core over its folder. Fails with an Error when the app carries no native code. */
    static GoCore open(String dir, String version, String lang, Core.Host host, Consumer<Throwable> reporter) throws Exception {
        return new GoCore(Mobile.open(dir, version, lang, new SafeHost(host, new Safely(reporter))), reporter);
    }

    private GoCore(org.readback.mobile.Core bound, Consumer<Throwable> reporter) {
        this.bound = bound;
        this.reporter = reporter;
    }

    @Override
    public Reply request(String method, String path, byte[] body) {
        try {
            org.readback.mobile.Reply r = bound.request(method, path, body);
            return new Reply((int) r.status(), r.type(), r.body());
        } catch (Exception e) {
            reporter.accept(e);
            return Reply.text(500, String.valueOf(e.getMessage()));
        }
    }

    @Override
    public byte[] message(byte[] call) {
        try {
            return bound.message(call);
        } catch (Exception e) {
            reporter.accept(e);
            return "{\"re\":0,\"status\":500,\"body\":null}".getBytes(StandardCharsets.UTF_8);
        }
    }

    @Override
    public Stop subscribe(Core.Listener listener) {
        Safely safely = new Safely(reporter);
        try {
            Subscription s = bound.subscribe(new org.readback.mobile.Listener() {
                @Override
                public void message(byte[] json) {
                    safely.run(() -> listener.message(new String(json, StandardCharsets.UTF_8)));
                }
            });
            return () -> run(s::stop);
        } catch (Exception e) {
            reporter.accept(e);
            return () -> { };
        }
    }

    @Override
    public void feed(byte[] pcm, int length) {
        try {
            bound.feed(length == pcm.length ? pcm : Arrays.copyOf(pcm, length));
        } catch (Exception e) {
            // While speech is loading or off every block is refused; the page already says so.
            if (!Mobile.code(e.getMessage()).equals("deaf")) {
                reporter.accept(e);
            }
        }
    }

    @Override
    public void spoke(String id, boolean cut) {
        run(() -> bound.spoke(id, cut));
    }

    @Override
    public void device(String kind, double level, String text) {
        run(() -> bound.device(news(kind, level, text)));
    }

    @Override
    public void photo(String id, byte[] jpeg) {
        run(() -> bound.photo(id, jpeg));
    }

    @Override
    public void frame(String kind, Luma luma, long at, long exposure) {
        run(() -> bound.frame(kind, luma.pixels, luma.width, luma.height, at, exposure));
    }

    @Override
    public void model(String dir, String why) {
        run(() -> bound.model("libvosk.so", dir, why));
    }

    @Override
    public void spare(boolean on) {
        run(() -> bound.spare(on));
    }

    @Override
    public void close() {
        run(bound::close);
    }

    static byte[] news(String kind, double level, String text) throws JSONException {
        JSONObject o = new JSONObject().put("kind", kind);
        if (level != 0) {
            o.put("level", level);
        }
        if (text != null && !text.isEmpty()) {
            o.put("text", text);
        }
        return o.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void run(Safely.Body body) {
        new Safely(reporter).run(body);
    }

    /** The host as the binding wants it. */
    private static final class SafeHost implements org.readback.mobile.Host {
        private final Core.Host host;
        private final Safely safely;

        SafeHost(Core.Host host, Safely safely) {
            this.host = host;
            this.safely = safely;
        }

        @Override
        public void say(String id, String text, String level, boolean slow) {
            safely.run(() -> host.say(id, text, level, slow));
        }

        @Override
        public void hush() {
            safely.run(host::hush);
        }

        @Override
        public void cue(String name) {
            safely.run(() -> host.cue(name));
        }

        @Override
        public void takePhoto(String id) {
            safely.run(() -> host.takePhoto(id));
        }

        @Override
        public void keepAwake(boolean on) {
            safely.run(() -> host.keepAwake(on));
        }

        @Override
        public void vibrate(String pattern) {
            safely.run(() -> host.vibrate(pattern));
        }

        @Override
        public void share(String name) {
            safely.run(() -> host.share(name));
        }
    }
}
