package org.readback.jvm;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.readback.mobile.Core;

/** Somebody with a broken appliance: the command person, in a process of its own. */
final class Person implements AutoCloseable {
    /** What a look at the page shows, and the answer to it. */
    static final class Look {
        final long seq;
        final String state;
        final String step;
        final String power;
        final String outcome;
        final boolean moved;
        final boolean agrees;
        final String file;
        final String words;
        final String said;

        Look(String line) {
            String[] f = line.split("\t", -1);
            seq = Long.parseLong(f[0]);
            state = f[1];
            step = f[2];
            power = f[3];
            outcome = f[4];
            moved = f[5].equals("moved");
            agrees = f[6].equals("agrees");
            file = f[7];
            words = f[8];
            said = f[9];
        }

        boolean over() {
            return state.equals("ended");
        }
    }

    private final Process process;
    private final OutputStream out;
    private final BufferedReader in;

    Person(String dialogue, Path dir, String voice) throws IOException {
        process = new ProcessBuilder(System.getProperty("readback.person"),
                System.getProperty("readback.root") + "/testdata/dialogues/" + dialogue, dir.toString(), voice)
                .redirectError(ProcessBuilder.Redirect.INHERIT).start();
        out = process.getOutputStream();
        in = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    }

    private Look send(String what, Core core) throws Exception {
        out.write((what + " ").getBytes(StandardCharsets.UTF_8));
        out.write(core.request("GET", "/api/state", null).body());
        out.write('\n');
        out.flush();
        String line = in.readLine();
        if (line == null) {
            throw new IOException("the person has left, exit " + process.waitFor());
        }
        return new Look(line);
    }

    Look look(Core core) throws Exception {
        return send("look", core);
    }

    Look answer(Core core) throws Exception {
        return send("answer", core);
    }

    Look speak(Core core) throws Exception {
        return send("speak", core);
    }

    Look again(Core core) throws Exception {
        return send("again", core);
    }

    Look object(Core core) throws Exception {
        return send("object", core);
    }

    /** Gives an answer by touch. */
    static void touch(Core core, Look a) throws Exception {
        String body = "{\"step\":\"\",\"event\":{\"at\":0,\"type\":\"said\",\"said\":" + a.said + "}}";
        org.readback.mobile.Reply r = core.request("POST", "/api/event", body.getBytes(StandardCharsets.UTF_8));
        if (r.status() != 200) {
            throw new IOException("at " + a.step + ": " + r.status() + " " + new String(r.body(), StandardCharsets.UTF_8));
        }
    }

    static void post(Core core, String path, String body) throws Exception {
        org.readback.mobile.Reply r = core.request("POST", path, body.getBytes(StandardCharsets.UTF_8));
        if (r.status() != 200) {
            throw new IOException(path + ": " + r.status() + " " + new String(r.body(), StandardCharsets.UTF_8));
        }
    }

    @Override
    public void close() {
        process.destroy();
    }
}
