package org.readback.jvm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.readback.mobile.Core;
import org.readback.mobile.Mobile;

/** A whole job by voice through the binding: synthesised speech, the real recogniser and model, the real session. */
class SpokenJobTest {
    private static final int BLOCK = 3200; // bytes: 100 ms
    private static final int STUCK = 25; // answers at one step after which the job goes nowhere
    private static final int TRIES = 4; // a person says it again, and again

    @TempDir Path dir;
    private final FakeHost host = new FakeHost();

    @Test
    void aJobIsLedByVoiceToItsEnd() throws Exception {
        Core core = Mobile.open(dir.resolve("jobs").toString(), "test", "en", host);
        host.core = core;
        List<Long> feeds = new ArrayList<>();
        Map<String, Integer> at = new HashMap<>();
        int answers = 0;
        int again = 0;
        int objected = 0;
        int tapped = 0;
        Person.Look look;
        try (Person person = new Person("igniter-open.txt", dir, "espeak-us")) {
            core.model(System.getProperty("readback.vosk"), System.getProperty("readback.model"), "");
            ready(core);
            Person.post(core, "/api/start", "{\"appliance\":\"furnace-hsi\",\"voice\":true}");
            for (look = settled(core, person, 0); !look.over() && answers < 300; ) {
                Person.Look a = person.speak(core);
                assertTrue(!a.file.isEmpty(), "the person has nothing to say at " + a.step);
                answers++;
                assertTrue(at.merge(a.step, 1, Integer::sum) <= STUCK, "the job goes nowhere at " + a.step + ": " + a.words + "; said: " + tail());
                Person.Look now = null;
                for (int i = 0; i < TRIES && now == null; i++) {
                    String file = a.file;
                    if (i > 0) {
                        again++;
                        Person.Look other = person.again(core);
                        System.out.println("at " + a.step + " not \"" + a.words + "\" but \"" + other.words + "\"");
                        file = other.file;
                    }
                    feed(core, Path.of(file), feeds);
                    now = moved(core, person);
                }
                if (now == null) {
                    tapped++;
                    Person.touch(core, a);
                    now = person.look(core);
                }
                look = settled(core, person, now.seq);
                if (!look.agrees) {
                    objected++;
                    System.out.println("taken wrongly at " + a.step + ": " + a.words);
                    Person.Look o = person.object(core);
                    feed(core, Path.of(o.file), feeds);
                    now = moved(core, person);
                    look = settled(core, person, now == null ? o.seq : now.seq);
                }
            }
        } finally {
            core.close();
        }
        boolean right = look.over() && look.outcome.equals("fixed");
        feeds.sort(null);
        double us = feeds.get(feeds.size() / 2) / 1e3;
        System.out.println(answers + " answers, " + again + " said again, " + objected + " taken back, " + tapped + " tapped, outcome " + look.outcome + ", feed " + us + " us");
        Files.writeString(Path.of(System.getProperty("readback.figures")),
                "spoken_right_pct " + (right ? 100 : 0) + " 1\nspoken_tapped_pct " + 100.0 * tapped / answers + " " + answers + "\nfeed_us " + us + " " + feeds.size() + "\n",
                StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING);
        assertEquals("fixed", look.outcome, "the last that was said: " + tail());
        assertTrue(host.calls.stream().anyMatch(c -> c.equals("awake true")) && host.saw("awake false", 5), "awake in the job only");
        assertTrue(tapped * 20 <= answers, tapped + " of " + answers + " had to be tapped in the end");
        assertTrue(again <= answers / 4, again + " of " + answers + " had to be said again");
    }

    /** What the guide said last. */
    private List<String> tail() {
        List<String> all = new ArrayList<>(host.said);
        return all.subList(Math.max(0, all.size() - 4), all.size());
    }

    static void ready(Core core) throws Exception {
        BindingTest.eventually(() -> {
            String s = new String(core.request("GET", "/api/state", null).body(), StandardCharsets.UTF_8);
            assertTrue(!s.contains("\"ear\":{\"state\":\"off\""), s);
            return s.contains("\"ear\":{\"state\":\"ready\"");
        });
    }

    /** Feeds a file as the microphone would, only faster; what the recogniser is too slow for is offered again. */
    private static void feed(Core core, Path file, List<Long> times) throws Exception {
        byte[] all = Files.readAllBytes(file);
        for (int at = 0; at < all.length; at += BLOCK) {
            byte[] block = Arrays.copyOfRange(all, at, Math.min(all.length, at + BLOCK));
            for (;;) {
                long t = System.nanoTime();
                try {
                    core.feed(block);
                    times.add(System.nanoTime() - t);
                    break;
                } catch (Exception e) {
                    if (!e.getMessage().contains("behind")) {
                        throw e;
                    }
                    Thread.sleep(20);
                }
            }
        }
    }

    /** The view after the answer was taken, or null when nothing came of it in time. */
    private static Person.Look moved(Core core, Person person) throws Exception {
        long end = System.nanoTime() + 8_000_000_000L;
        while (System.nanoTime() < end) {
            Person.Look l = person.look(core);
            if (l.moved) {
                return l;
            }
            Thread.sleep(20);
        }
        return null;
    }

    /** The view once everything has been said: nothing moves for a while. */
    private Person.Look settled(Core core, Person person, long seq) throws Exception {
        Person.Look last = person.look(core);
        for (int still = 0; still < 3; ) {
            Thread.sleep(20);
            Person.Look l = person.look(core);
            still = l.seq == last.seq && l.seq >= seq && host.speaking.get() == 0 ? still + 1 : 0;
            last = l;
        }
        return last;
    }
}
