package org.readback.shell;

import java.nio.charset.StandardCharsets;
import org.readback.desk.Core;
import org.readback.desk.Luma;
import org.readback.desk.Reply;

/**
 * Stands in when the core cannot be opened: an APK without native code, or a folder that cannot be written. Its one page says
 * so in the largest type; nothing that looks like a job can be started.
 */
final class NoCore implements Core {
    private final String page;

    NoCore(String lang, String title, String text, String how) {
        page = "<!doctype html><html lang=\"" + escape(lang) + "\"><meta charset=\"utf-8\">"
                + "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">"
                + "<link rel=\"stylesheet\" href=\"/shell/plain.css\"><title>" + escape(title) + "</title>"
                + "<main><h1>" + escape(title) + "</h1><p>" + escape(text) + "</p><p class=\"how\">" + escape(how) + "</p></main>";
    }

    static String escape(String s) {
        return s.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }

    @Override
    public Reply request(String method, String path, byte[] body) {
        if (method.equals("GET") && path.equals("/")) {
            return new Reply(200, "text/html; charset=utf-8", page.getBytes(StandardCharsets.UTF_8));
        }
        return Reply.text(404, "not here");
    }

    @Override
    public byte[] message(byte[] call) {
        return "{\"re\":0,\"status\":503,\"body\":null}".getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public Stop subscribe(Listener listener) {
        return () -> { };
    }

    @Override
    public void feed(byte[] pcm, int length) {
    }

    @Override
    public void spoke(String id, boolean cut) {
    }

    @Override
    public void device(String kind, double level, String text) {
    }

    @Override
    public void photo(String id, byte[] jpeg) {
    }

    @Override
    public void frame(String kind, Luma luma, long at, long exposure) {
    }

    @Override
    public void model(String dir, String why) {
    }

    @Override
    public void spare(boolean on) {
    }

    @Override
    public void close() {
    }
}
