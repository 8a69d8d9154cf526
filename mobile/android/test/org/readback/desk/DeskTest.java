package org.readback.desk;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import org.junit.Test;

/** The desk between a core and a phone that are both made of paper. */
public class DeskTest {
    private final List<String> phone = new ArrayList<>();
    private final List<String> core = new ArrayList<>();
    private final List<Throwable> caught = new ArrayList<>();
    private final ArrayDeque<Runnable> work = new ArrayDeque<>();
    private boolean micWorks = true;
    private boolean allowed = true;
    private byte[] picture = {1, 2, 3};
    private Phone.Mic.Sink sink;
    private Phone.Eye.Frames frames;
    private Runnable noCamera;
    private final Desk desk = desk();

    private Desk desk() {
        Desk.Parts p = new Desk.Parts();
        p.work = work::add;
        p.safely = new Safely(caught::add);
        p.words = (key, args) -> "<" + key + ">";
        p.notes = text -> phone.add("note " + text);
        p.tones = (pcm, rate) -> phone.add("tones " + pcm.length);
        p.buzzer = times -> phone.add("buzz " + times.length);
        p.awake = on -> phone.add("awake " + on);
        p.sharer = name -> phone.add("share " + name);
        p.eye = new Phone.Eye() {
            @Override
            public void take(Shot then) {
                then.jpeg(picture);
            }

            @Override
            public void watch(int wide, boolean lock, Frames f, Runnable failed) {
                phone.add("watch " + wide + " " + lock);
                frames = f;
                noCamera = failed;
            }
        };
        p.mic = new Phone.Mic() {
            @Override
            public boolean start(Sink s) {
                phone.add("mic on");
                sink = s;
                return micWorks;
            }

            @Override
            public void stop() {
                phone.add("mic off");
            }
        };
        p.voice = new Mouth.Voice() {
            @Override
            public boolean speak(String id, String text, boolean slow) {
                phone.add("speak " + text);
                return true;
            }

            @Override
            public void stop() {
                phone.add("stop");
            }
        };
        p.permits = new Permits(new Permits.Phone() {
            private boolean got;

            @Override
            public boolean has(Permits.Need need) {
                return got;
            }

            @Override
            public void explain(Permits.Need need, Permits.Result go) {
                phone.add("why " + need);
                go.granted(true);
            }

            @Override
            public void ask(Permits.Need need, Permits.Result answer) {
                got = allowed;
                answer.granted(allowed);
            }

            @Override
            public boolean willAsk(Permits.Need need) {
                return true;
            }

            @Override
            public void settings(Permits.Need need) {
            }
        });
        Desk d = new Desk(p);
        d.attach(new FakeCore(core));
        return d;
    }

    private void run() {
        while (!work.isEmpty()) {
            work.poll().run();
        }
    }

    @Test
    public void nothingHappensInsideTheCoresCall() {
        desk.keepAwake(true);
        desk.cue("heard");
        desk.vibrate("double");
        desk.share("a");
        assertEquals(List.of(), phone);
        run();
        assertEquals(List.of("awake true", "tones " + Cues.sound("heard").length, "buzz 4", "share a"), phone);
    }

    @Test
    public void theFirstWordOfAJobOpensTheMicrophone() {
        desk.keepAwake(true);
        desk.say("1", "hello", "info", false);
        desk.say("2", "again", "info", false);
        run();
        assertEquals(List.of("awake true", "why MICROPHONE", "mic on", "speak hello"), phone);
        assertEquals(List.of("device mic-on 0.0 "), core);
        assertTrue(desk.listening());
    }

    @Test
    public void aSampleOutsideAJobListensToNobody() {
        desk.say("1", "sample", "info", false);
        run();
        assertEquals(List.of("speak sample"), phone);
    }

    @Test
    public void aRefusedMicrophoneIsToldAndNotAskedAgain() {
        allowed = false;
        desk.keepAwake(true);
        desk.say("1", "hello", "info", false);
        run();
        desk.mouth().ended("1", false);
        desk.say("2", "next", "info", false);
        run();
        assertEquals(List.of("awake true", "why MICROPHONE", "speak hello", "speak next"), phone);
        assertTrue(core.contains("device mic-off 0.0 <mic_off>"));
    }

    @Test
    public void aMicrophoneThatFailsIsTold() {
        micWorks = false;
        desk.listen();
        run();
        assertEquals(List.of("device mic-off 0.0 <mic_failed>"), core);
        assertFalse(desk.listening());
    }

    @Test
    public void soundGoesToTheCoreUnchangedAndSilenceIsNoticed() {
        desk.listen();
        run();
        core.clear();
        byte[] block = new byte[3200];
        block[3] = 7;
        sink.block(block, 3200);
        assertEquals(List.of("feed 3200 7"), core);
        core.clear();
        for (int i = 0; i < 30; i++) {
            sink.block(new byte[3200], 3200);
        }
        sink.block(block, 3200);
        run();
        assertTrue(core.contains("device silenced 0.0 <mic_silenced>"));
        assertTrue(core.contains("device mic-on 0.0 "));
    }

    @Test
    public void theEndOfAJobClosesTheMicrophone() {
        desk.keepAwake(true);
        desk.listen();
        run();
        desk.keepAwake(false);
        run();
        assertEquals("mic off", phone.get(phone.size() - 1));
        assertFalse(desk.job());
    }

    @Test
    public void listeningStopsByHand() {
        desk.listen();
        run();
        desk.deafen();
        run();
        assertTrue(phone.contains("mic off"));
        assertEquals("device mic-off 0.0 <mic_off>", core.get(core.size() - 1));
    }

    @Test
    public void aPictureGoesToTheCore() {
        desk.takePhoto("before");
        run();
        assertEquals(List.of("photo before 3"), core);
    }

    private static final Luma FRAME = Luma.pack(java.nio.ByteBuffer.wrap(new byte[6]), 3, 2, 3, 1);

    @Test
    public void framesOfTheMeterGoToTheCoreFiveTimesASecond() {
        desk.watch("meter");
        run();
        assertTrue(phone.contains("watch 960 false"));
        for (int i = 0; i < 30; i++) {
            assertTrue(frames.frame(FRAME, i * 33_000_000L, 10_000_000));
        }
        assertEquals(5, core.size());
        assertEquals("frame meter 3x2 0", core.get(0));
        desk.watch("");
        run();
        assertFalse("the camera is closed", frames.frame(FRAME, 2_000_000_000L, 0));
    }

    @Test
    public void everyFrameOfTheLightCounts() {
        desk.watch("lamp");
        desk.watch("lamp");
        run();
        assertEquals(1, phone.stream().filter(l -> l.equals("watch 640 true")).count());
        for (int i = 0; i < 30; i++) {
            assertTrue(frames.frame(FRAME, i * 33_000_000L, 10_000_000));
        }
        assertEquals(30, core.size());
        desk.keepAwake(false);
        run();
        assertFalse("with the job the camera ends", frames.frame(FRAME, 2_000_000_000L, 0));
    }

    @Test
    public void theBurnerIsWatchedSmallAndSteady() {
        desk.watch("fire");
        run();
        assertTrue(phone.contains("watch 320 true"));
        assertTrue(frames.frame(FRAME, 1, 0));
        assertTrue(frames.frame(FRAME, 2, 0));
        assertEquals(List.of("frame fire 3x2 1", "frame fire 3x2 2"), core);
    }

    @Test
    public void withoutACameraTheCoreIsTold() {
        desk.watch("meter");
        run();
        noCamera.run();
        run();
        assertEquals("device eye-off 0.0 <eye_without>", core.get(core.size() - 1));
        desk.watch("meter");
        run();
        assertEquals("it can be tried again", 2, phone.stream().filter(l -> l.startsWith("watch")).count());
        allowed = false;
        core.clear();
        desk().watch("lamp");
        run();
        assertEquals(List.of(), core.stream().filter(l -> l.startsWith("frame")).toList());
    }

    @Test
    public void withoutAPictureThereIsAWayOn() {
        picture = null;
        desk.takePhoto("before");
        run();
        assertEquals("note <camera_failed>", phone.get(phone.size() - 1));
        allowed = false;
        desk().takePhoto("before");
        run();
        assertEquals("note <camera_without>", phone.get(phone.size() - 1));
        assertEquals(List.of(), core);
    }

    @Test
    public void theEndOfASayingIsTold() {
        desk.say("7", "hello", "info", false);
        run();
        desk.mouth().ended("7", false);
        run();
        assertEquals(List.of("spoke 7 false"), core);
    }

    @Test
    public void hushDoesNotWait() {
        desk.say("7", "hello", "info", false);
        run();
        desk.hush();
        assertTrue("before the work queue ran", phone.contains("stop"));
        run();
        assertEquals(List.of("spoke 7 true"), core);
    }

    @Test
    public void aKeyIsACommand() {
        desk.command("ready");
        desk.command(null);
        run();
        assertEquals(1, core.size());
        assertTrue(core.get(0), core.get(0).startsWith("POST /api/event") && core.get(0).contains("\"id\":\"ready\""));
    }

    @Test
    public void aServiceThatThrowsHarmsNobody() {
        Desk.Parts bad = new Desk.Parts();
        bad.work = Runnable::run;
        bad.safely = new Safely(caught::add);
        bad.tones = (pcm, rate) -> { throw new IllegalStateException("no sound device"); };
        bad.voice = new Mouth.Voice() {
            @Override
            public boolean speak(String id, String text, boolean slow) {
                throw new IllegalStateException("no voice");
            }

            @Override
            public void stop() {
                throw new IllegalStateException("no voice");
            }
        };
        Desk d = new Desk(bad);
        d.cue("heard");
        d.say("1", "x", "info", false);
        d.hush();
        assertEquals("the tones and the stop; a voice that throws counts as none", 2, caught.size());
        assertFalse(d.mouth().speaking());
    }

    @Test
    public void aCallIsNotHeard() {
        desk.listen();
        run();
        core.clear();
        byte[] block = new byte[3200];
        block[3] = 7;
        desk.inCall(true);
        for (int i = 0; i < 40; i++) {
            sink.block(block, 3200);
        }
        run();
        assertEquals("neither heard nor taken for silence", List.of(), core);
        desk.inCall(false);
        sink.block(block, 3200);
        assertEquals(List.of("feed 3200 7"), core);
    }

    @Test
    public void whatWasRefusedAndThenAllowedIsHeard() {
        allowed = false;
        desk.keepAwake(true);
        desk.say("1", "hello", "info", false);
        run();
        assertFalse(desk.listening());
        desk.returned();
        run();
        assertFalse("still refused", desk.listening());
        allowed = true;
        desk.listen();
        run();
        assertTrue(desk.listening());
    }

    @Test
    public void comingBackOutsideAJobListensToNobody() {
        desk.returned();
        run();
        assertEquals(List.of(), phone);
    }

    @Test
    public void aHotPhoneRestsTheSecondEngineAndSaysSo() {
        desk.keepAwake(true);
        run();
        phone.clear();
        desk.strain().heat(Strain.MODERATE);
        run();
        assertEquals(List.of("spare true"), core);
        assertEquals(List.of("note <less_heat>"), phone);
        assertEquals("less_heat", desk.spared());
        desk.strain().heat(Strain.COOL);
        run();
        assertEquals(List.of("spare true", "spare false"), core);
        assertEquals("", desk.spared());
    }

    @Test
    public void outsideAJobNobodyIsToldOfTheHeat() {
        desk.strain().heat(Strain.MODERATE);
        run();
        assertEquals(List.of("spare true"), core);
        assertEquals(List.of(), phone);
    }

    @Test
    public void aCoreThatOpensInTheHeatRestsFromTheStart() {
        desk.strain().memory(true);
        run();
        core.clear();
        desk.attach(new FakeCore(core));
        assertEquals(List.of("spare true"), core);
    }

    @Test
    public void greatHeatPutsTheCameraAwayAndGoesOnListening() {
        desk.listen();
        desk.watch("meter");
        run();
        assertTrue(frames.frame(FRAME, 0, 0));
        desk.strain().heat(Strain.SEVERE);
        run();
        assertFalse(frames.frame(FRAME, 1_000_000_000L, 0));
        assertTrue(desk.listening());
    }

    @Test
    public void theCameraAndTheMicrophoneServeTheSameJob() {
        desk.keepAwake(true);
        desk.say("1", "Show the meter to the camera", "info", false);
        desk.watch("meter");
        run();
        core.clear();
        byte[] block = new byte[3200];
        block[3] = 7;
        sink.block(block, 3200);
        frames.frame(FRAME, 0, 0);
        sink.block(block, 3200);
        assertEquals(List.of("feed 3200 7", "frame meter 3x2 0", "feed 3200 7"), core);
        desk.watch("");
        run();
        assertTrue("the end of looking is not the end of listening", desk.listening());
    }
}
