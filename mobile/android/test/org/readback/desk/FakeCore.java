package org.readback.desk;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** A core of paper: it writes down what it is told and serves two pages. */
public class FakeCore implements Core {
    public final List<String> log;
    public Listener listener;
    public boolean closed;

    public FakeCore(List<String> log) {
        this.log = log;
    }

    @Override
    public Reply request(String method, String path, byte[] body) {
        if (method.equals("GET")) {
            log.add("GET " + path);
            switch (path) {
                case "/": return new Reply(200, "text/html; charset=utf-8", "<!doctype html><title>Page</title>".getBytes(StandardCharsets.UTF_8));
                case "/api/jobs/j1/export.zip": return new Reply(200, "application/zip", new byte[] {'P', 'K', 3, 4});
                case "/api/jobs/j1/transcript": return new Reply(200, "text/html; charset=utf-8", "<!doctype html><title>Record</title>".getBytes(StandardCharsets.UTF_8));
                default: return Reply.text(404, "no such thing");
            }
        }
        log.add(method + " " + path + " " + new String(body, StandardCharsets.UTF_8));
        return new Reply(200, "application/json; charset=utf-8", "{}".getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public byte[] message(byte[] call) {
        log.add("message " + new String(call, StandardCharsets.UTF_8));
        return "{\"re\":1,\"status\":200,\"body\":{}}".getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public Stop subscribe(Listener l) {
        listener = l;
        log.add("subscribe");
        return () -> log.add("unsubscribe");
    }

    @Override
    public void feed(byte[] pcm, int length) {
        log.add("feed " + length + " " + pcm[3]);
    }

    @Override
    public void spoke(String id, boolean cut) {
        log.add("spoke " + id + " " + cut);
    }

    @Override
    public void device(String kind, double level, String text) {
        log.add("device " + kind + " " + level + " " + text);
    }

    @Override
    public void photo(String id, byte[] jpeg) {
        log.add("photo " + id + " " + jpeg.length);
    }

    @Override
    public void frame(String kind, Luma luma, long at, long exposure) {
        log.add("frame " + kind + " " + luma.width + "x" + luma.height + " " + at);
    }

    @Override
    public void model(String dir, String why) {
        log.add("model " + dir + " " + why);
    }

    @Override
    public void spare(boolean on) {
        log.add("spare " + on);
    }

    @Override
    public void close() {
        closed = true;
    }
}
