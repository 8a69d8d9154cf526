package org.readback.jvm;

import java.nio.file.Path;
import org.readback.mobile.Core;
import org.readback.mobile.Mobile;

/** A process that is meant to die: leads a job by touch and ends in the middle of it, without closing anything. */
public final class Child {
    private Child() {
    }

    /** FOLDER ANSWERS: after so many answers prints "STEP POWER" and is gone. Or: check FOLDER, a short walk for -Xcheck:jni. */
    public static void main(String[] args) throws Exception {
        if (args[0].equals("check")) {
            check(args[1]);
            System.exit(0); // threads that Go attached would keep the machine alive
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
