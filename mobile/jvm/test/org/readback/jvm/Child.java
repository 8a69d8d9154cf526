package org.readback.jvm;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.readback.mobile.Core;
import org.readback.mobile.Mobile;

/** A process that is meant to die: leads a job by touch and ends in the middle of it, without closing anything. */
public final class Child {
    private Child() {
    }

    /**
     * FOLDER ANSWERS: after so many answers prints "STEP POWER" and is gone. Or: check FOLDER, a short walk for -Xcheck:jni. Or: midword FOLDER,
     * gone in the middle of a spoken answer, after "STEP BLOCKS", the blocks of sound that were taken.
     */
    public static void main(String[] args) throws Exception {
        if (args[0].equals("check")) {
            check(args[1]);
            System.exit(0); // threads that Go attached would keep the machine alive
        }
        if (args[0].equals("midword")) {
            midWord(Path.of(args[1]));
        }
        Path dir = Path.of(args[0]);
        Core core = Mobile.open(dir.resolve("jobs").toString(), "test", "en", new FakeHost());
        core.model("", "", "by touch only");
        Person.post(core, "/api/start", "{\"appliance\":\"furnace-hsi\",\"voice\":false}");
        try (Person person = new Person("igniter-open.txt", dir, "espeak-us")) {
            for (int i = 0; i < Integer.parseInt(args[1]); i++) {
                Person.touch(core, person.answer(core));
            }
            Person.Look l = person.look(core);
            System.out.println(l.step + " " + l.power);
            System.out.flush();
        }
        Runtime.getRuntime().halt(9);
    }

    private static void midWord(Path dir) throws Exception {
        FakeHost host = new FakeHost();
        Core core = Mobile.open(dir.resolve("jobs").toString(), "test", "en", host);
        host.core = core;
        core.model(System.getProperty("readback.vosk"), System.getProperty("readback.model"), "");
        SpokenJobTest.ready(core);
        Person.post(core, "/api/start", "{\"appliance\":\"furnace-hsi\",\"voice\":true}");
        try (Person person = new Person("igniter-open.txt", dir, "espeak-us")) {
            for (int i = 0; i < 6; i++) {
                Person.touch(core, person.answer(core));
            }
            Person.Look a = person.speak(core);
            byte[] all = Files.readAllBytes(Path.of(a.file));
            // The clip has 0.8 s of room before the words: a quarter of a second of them is heard, and no more.
            int taken = 0;
            for (int at = 0; at + 3200 <= Math.min(all.length, 2 * 16000 * 105 / 100); at += 3200) {
                core.feed(Arrays.copyOfRange(all, at, at + 3200));
                taken++;
                Thread.sleep(100); // as a microphone does
            }
            System.out.println(a.step + " " + taken);
            System.out.flush();
        }
        Runtime.getRuntime().halt(9);
    }

    private static void check(String dir) throws Exception {
        FakeHost host = new FakeHost() {
            @Override
            public void cue(String name) throws Exception {
                throw new IllegalStateException("a host in trouble");
            }
        };
        Core core = Mobile.open(dir, "test", "en", host);
        host.core = core;
        core.model("", "", "a check");
        core.subscribe(json -> { });
        core.subscribe(json -> {
            throw new IllegalStateException("a listener in trouble");
        });
        Person.post(core, "/api/start", "{\"appliance\":\"furnace-hsi\",\"voice\":true}");
        for (int i = 0; i < 50; i++) {
            core.request("GET", "/api/state", null);
            core.spoke("none", false);
            try {
                core.feed(new byte[3200]);
            } catch (Exception e) {
                if (!Mobile.code(e.getMessage()).equals("deaf")) {
                    throw e;
                }
            }
        }
        if (!host.saw("say", 20)) {
            throw new AssertionError("nothing was said");
        }
        core.close();
        System.out.println("checked");
    }
}
