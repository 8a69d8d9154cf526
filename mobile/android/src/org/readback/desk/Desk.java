package org.readback.desk;

import java.nio.charset.StandardCharsets;

/**
 * Where everything of the shell meets: what the core asks of the phone goes out here, what the phone has to tell comes in
 * here. The core calls from its own threads; each call returns at once and the work is done in order on the app's
 * thread, so no two services are ever asked at the same time.
 */
public final class Desk implements Core.Host {
    /** The services a desk works with. All are required. */
    public static final class Parts {
        public Phone.Work work;
        public Mouth.Voice voice;
        public Phone.Tones tones;
        public Phone.Buzzer buzzer;
        public Phone.Awake awake;
        public Phone.Mic mic;
        public Phone.Eye eye;
        public Phone.Sharer sharer;
        public Phone.Words words;
        public Phone.Notes notes;
        public Permits permits;
        public Safely safely;
    }

    private static final String METER = "meter";
    private static final String LAMP = "lamp";
    private static final String FIRE = "fire";
    private static final long METER_EVERY = 190_000_000; // ns

    private final Parts phone;
    private final Mouth mouth;
    private final Silence silence = new Silence(16000);
    private volatile Core core;
    private volatile boolean job;
    private volatile boolean listening;
    private volatile String watched = "";
    private volatile boolean away; // in a call: nothing that is said is ours
    private boolean refused; // the microphone was wanted in this job and not given
    private volatile String spared = "";
    private final Strain strain = new Strain(new Strain.Out() {
        @Override
        public void spare(boolean on, String why) {
            later(() -> {
                spared = on ? why : "";
                if (core != null) {
                    core.spare(on);
                }
                if (job) {
                    phone.notes.show(phone.words.of(why));
                }
            });
        }

        @Override
        public void noCamera() {
            watch("");
        }
    });

    public Desk(Parts parts) {
        this.phone = parts;
        this.mouth = new Mouth(parts.voice, this::spoke);
    }

    /** Gives the core, once it is open. */
    public void attach(Core c) {
        core = c;
        if (strain.spared()) {
            c.spare(true);
        }
    }

    /** Where the phone tells its heat and its memory. */
    public Strain strain() {
        return strain;
    }

    /** Why second opinions rest, or "". */
    public String spared() {
        return spared;
    }

    public Mouth mouth() {
        return mouth;
    }

    /** Whether a job runs; the keys are ours only then. */
    public boolean job() {
        return job;
    }

    /** Whether the microphone is open. */
    public boolean listening() {
        return listening;
    }

    // What the core asks.

    @Override
    public void say(String id, String text, String level, boolean slow) {
        later(() -> {
            // The core speaks only in a job by voice: this is the moment when listening is first needed.
            if (job && !listening) {
                phone.permits.want(Permits.Need.MICROPHONE, this::microphone);
            }
            mouth.say(id, text, level, slow);
        });
    }

    @Override
    public void hush() {
        // Stopping must not wait behind anything.
        phone.safely.run(mouth::hush);
    }

    @Override
    public void cue(String name) {
        later(() -> phone.tones.play(Cues.sound(name), Cues.RATE));
    }

    @Override
    public void takePhoto(String id) {
        later(() -> phone.permits.want(Permits.Need.CAMERA, yes -> {
            if (!yes) {
                phone.notes.show(phone.words.of("camera_without"));
                return;
            }
            phone.eye.take(jpeg -> later(() -> {
                if (jpeg == null || jpeg.length == 0) {
                    phone.notes.show(phone.words.of("camera_failed"));
                    return;
                }
                core.photo(id, jpeg);
            }));
        }));
    }

    @Override
    public void keepAwake(boolean on) {
        later(() -> {
            job = on;
            phone.awake.keep(on);
            if (!on) {
                stopListening();
                watched = "";
                refused = false;
            }
        });
    }

    /**
     * Looks at the meter, the light or the burner with the camera, because the person asked for it; an empty kind ends it. What the core
     * makes of the frames comes to the page on its stream.
     */
    public void watch(String kind) {
        later(() -> {
            if (!kind.equals(METER) && !kind.equals(LAMP) && !kind.equals(FIRE)) {
                watched = "";
                return;
            }
            if (kind.equals(watched)) {
                return;
            }
            phone.permits.byHand(Permits.Need.CAMERA, yes -> {
                if (!yes) {
                    tell("eye-off", 0, phone.words.of("eye_without"));
                    return;
                }
                watched = kind;
                boolean meter = kind.equals(METER);
                phone.eye.watch(meter ? 960 : kind.equals(LAMP) ? 640 : 320, !meter, new Phone.Eye.Frames() {
                    private long last = Long.MIN_VALUE;

                    @Override
                    public boolean frame(Luma luma, long at, long exposure) {
                        Core c = core;
                        if (c == null || !kind.equals(watched)) {
                            return false;
                        }
                        // The meter's number is read five times a second; of a light and a burner every frame counts.
                        if (!meter || last == Long.MIN_VALUE || at - last >= METER_EVERY) {
                            last = at;
                            c.frame(kind, luma, at, exposure);
                        }
                        return true;
                    }
                }, () -> {
                    if (kind.equals(watched)) {
                        watched = "";
                    }
                    tell("eye-off", 0, phone.words.of("eye_without"));
                });
            });
        });
    }

    @Override
    public void vibrate(String pattern) {
        later(() -> phone.buzzer.buzz(Buzz.times(pattern)));
    }

    @Override
    public void share(String name) {
        later(() -> phone.sharer.share(name));
    }

    // What the person asks of the phone by hand.

    /** Opens the microphone because the person asked for it. */
    public void listen() {
        later(() -> phone.permits.byHand(Permits.Need.MICROPHONE, this::microphone));
    }

    /** Closes the microphone because the person asked for it, on the page or on the notice. */
    public void deafen() {
        later(() -> {
            stopListening();
            tell("mic-off", 0, phone.words.of("mic_off"));
        });
    }

    /** A command given by a key. */
    public void command(String id) {
        if (id == null) {
            return;
        }
        later(() -> {
            if (core != null) {
                core.request("POST", "/api/event", Said.command(id).getBytes(StandardCharsets.UTF_8));
            }
        });
    }

    /** The person is back at the app: what was refused before may have been allowed in the phone's settings. */
    public void returned() {
        later(() -> {
            if (job && refused && !listening && phone.permits.has(Permits.Need.MICROPHONE)) {
                microphone(true);
            }
        });
    }

    // News of the phone.

    /** A call began or ended. What is said meanwhile is not for us: it is neither heard nor kept. */
    public void inCall(boolean on) {
        away = on;
    }

    /** Tells the core. While there is none nobody needs the news: a core that opens later is told the state anew. */
    public void tell(String kind, double level, String text) {
        later(() -> {
            if (core != null) {
                core.device(kind, level, text);
            }
        });
    }

    private void microphone(boolean granted) {
        refused = !granted;
        if (!granted) {
            tell("mic-off", 0, phone.words.of("mic_off"));
            return;
        }
        if (listening) {
            return;
        }
        boolean open = phone.mic.start(new Phone.Mic.Sink() {
            @Override
            public void block(byte[] pcm, int length) {
                Core c = core;
                if (away) {
                    return;
                }
                int change = silence.block(pcm, length);
                if (change != 0) {
                    silenced(change > 0);
                }
                if (c != null) {
                    c.feed(pcm, length);
                }
            }

            @Override
            public void silenced(boolean on) {
                tell(on ? "silenced" : "mic-on", 0, on ? phone.words.of("mic_silenced") : "");
            }
        });
        listening = open;
        if (open) {
            phone.permits.want(Permits.Need.NOTICE, yes -> { }); // listening works without; the notice only lets it be seen
        }
        tell(open ? "mic-on" : "mic-off", 0, open ? "" : phone.words.of("mic_failed"));
    }

    private void stopListening() {
        if (listening) {
            listening = false;
            phone.mic.stop();
        }
    }

    private void spoke(String id, boolean cut) {
        later(() -> {
            if (core != null) {
                core.spoke(id, cut);
            }
        });
    }

    private void later(Safely.Body body) {
        phone.safely.run(() -> phone.work.post(() -> phone.safely.run(body)));
    }
}
