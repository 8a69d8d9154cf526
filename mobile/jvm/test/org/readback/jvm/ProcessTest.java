package org.readback.jvm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.readback.mobile.Core;
import org.readback.mobile.Mobile;

/** What must hold across processes: a job outlives its program, and the strict checks of the machine find nothing. */
class ProcessTest {
    @TempDir Path dir;

    private String child(int exit, List<String> options, String... args) throws Exception {
        List<String> cmd = new ArrayList<>(List.of(System.getProperty("java.home") + "/bin/java", "-Xmx256m"));
        cmd.addAll(options);
        for (String p : new String[] {"readback.root", "readback.person", "readback.vosk", "readback.model"}) {
            cmd.add("-D" + p + "=" + System.getProperty(p));
        }
        cmd.addAll(List.of("-Djava.library.path=" + System.getProperty("readback.native"), "-cp", System.getProperty("java.class.path"), Child.class.getName()));
        cmd.addAll(List.of(args));
        Process p = new ProcessBuilder(cmd).redirectErrorStream(true).start();
        String out = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(p.waitFor(60, TimeUnit.SECONDS), out);
        assertEquals(exit, p.exitValue(), out);
        return out.trim();
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 25, 45})
    void aKilledJobComesBackWithPowerUnknownAndGoesOn(int answers) throws Exception {
        goesOn(child(9, List.of(), dir.toString(), String.valueOf(answers)).split(" ")[0]);
    }

    /** The process dies while the person speaks: half of an answer is no answer, and the step is asked again. */
    @Test
    void aJobKilledInTheMiddleOfAWordTakesNothingOfIt() throws Exception {
        String[] before = child(9, List.of(), "midword", dir.toString()).split("\n");
        String[] last = before[before.length - 1].split(" ");
        assertTrue(Integer.parseInt(last[1]) > 0, "sound was heard: " + String.join("|", before));
        StringBuilder journal = new StringBuilder();
        try (Stream<Path> files = Files.walk(dir)) {
            for (Path p : files.filter(f -> f.getFileName().toString().startsWith("journal")).toList()) {
                journal.append(Files.readString(p));
            }
        }
        assertFalse(journal.toString().contains("\"source\":\"voice\""), "half of a word is in the record");
        goesOn(last[0]);
    }

    private void goesOn(String before) throws Exception {
        Core core = Mobile.open(dir.resolve("jobs").toString(), "test", "en", new FakeHost());
        try (Person person = new Person("igniter-open.txt", dir, "espeak-us")) {
            Matcher job = Pattern.compile("\"jobs\":\\[\\{\"id\":\"([^\"]+)\"")
                    .matcher(new String(core.request("GET", "/api/state", null).body(), StandardCharsets.UTF_8));
            assertTrue(job.find(), "the job is in the list");
            Person.post(core, "/api/jobs/" + job.group(1) + "/resume", "{}");
            Person.Look l = person.look(core);
            assertEquals("unknown", l.power);
            // Smell and alarm are asked about anew after an absence; then the work goes on where it was, and comes to its end.
            Set<String> asked = new LinkedHashSet<>();
            for (int i = 0; i < 300 && !l.over(); i++) {
                asked.add(l.step);
                Person.touch(core, person.answer(core));
                l = person.look(core);
            }
            assertTrue(asked.contains(before), before + " is not among " + asked);
            assertTrue(l.over(), "the job ends: " + asked);
        } finally {
            core.close();
        }
    }

    @Test
    void theStrictChecksOfTheMachineFindNothing() throws Exception {
        String out = child(0, List.of("-Xcheck:jni"), "check", dir.resolve("jobs").toString());
        assertTrue(out.contains("checked"), out);
        assertFalse(out.contains("FATAL ERROR"), out);
        // The generator's own glue does not look for exceptions after some calls; that is all that may be found.
        for (String line : out.split("\n")) {
            if (line.startsWith("WARNING")) {
                assertTrue(line.contains("JNI call made without checking exceptions") || line.contains("JNI local refs")
                        || line.contains("JNI local reference"), line);
            }
        }
    }
}
