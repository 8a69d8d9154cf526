package org.readback.shell;

import android.content.Context;
import android.media.AudioAttributes;
import android.os.Bundle;
import android.speech.tts.TextToSpeech;
import android.speech.tts.UtteranceProgressListener;
import android.speech.tts.Voice;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.readback.desk.Mouth;
import org.readback.desk.Phrases;
import org.readback.desk.VoiceChoice;

/**
 * The phone's voice: an offline one of the wanted language. A saying that comes before the engine is ready waits for it. Several
 * phrases of a slow saying end together: only the last one's end is told.
 */
final class PhoneVoice implements Mouth.Voice {
    /** Receives what became of a saying, and the news that there is no voice. */
    interface Events {
        void ended(String id, boolean failed);

        void none();
    }

    private static final String REST = "#"; // marks the parts of a saying before the last

    private final Events events;
    private final Locale locale;
    private final TextToSpeech tts;
    private boolean ready;
    private boolean failed;
    private String waitingId;
    private String waitingText;
    private boolean waitingSlow;

    PhoneVoice(Context context, Locale locale, Events events) {
        this.events = events;
        this.locale = locale;
        this.tts = new TextToSpeech(context, this::started);
    }

    private void started(int status) {
        String id;
        String text;
        boolean slow;
        synchronized (this) {
            ready = status == TextToSpeech.SUCCESS && choose();
            failed = !ready;
            id = waitingId;
            text = waitingText;
            slow = waitingSlow;
            waitingId = null;
        }
        if (failed) {
            events.none();
            if (id != null) {
                events.ended(id, true);
            }
            return;
        }
        if (id != null && !speak(id, text, slow)) {
            events.ended(id, true);
        }
    }

    /** Sets the voice up; false when no offline voice speaks the language. */
    private boolean choose() {
        List<VoiceChoice.Info> infos = new ArrayList<>();
        Set<Voice> voices = tts.getVoices();
        if (voices != null) {
            for (Voice v : voices) {
                Set<String> features = v.getFeatures();
                infos.add(new VoiceChoice.Info(v.getName(), v.getLocale().getLanguage(), v.getLocale().getCountry(),
                        v.isNetworkConnectionRequired(),
                        features == null || !features.contains(TextToSpeech.Engine.KEY_FEATURE_NOT_INSTALLED), v.getQuality(), v.getLatency()));
            }
        }
        String best = VoiceChoice.best(infos, locale.getLanguage(), locale.getCountry());
        if (best == null) {
            return false;
        }
        for (Voice v : voices) {
            if (v.getName().equals(best)) {
                tts.setVoice(v);
            }
        }
        tts.setAudioAttributes(new AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ASSISTANCE_NAVIGATION_GUIDANCE)
                .setContentType(AudioAttributes.CONTENT_TYPE_SPEECH).build());
        tts.setOnUtteranceProgressListener(new UtteranceProgressListener() {
            @Override
            public void onStart(String id) {
            }

            @Override
            public void onDone(String id) {
                end(id, false);
            }

            @Override
            @Deprecated
            public void onError(String id) {
                end(id, true);
            }

            @Override
            public void onError(String id, int code) {
                end(id, true);
            }

            @Override
            public void onStop(String id, boolean interrupted) {
                end(id, true);
            }
        });
        return true;
    }

    private void end(String id, boolean failed) {
        if (id.startsWith(REST)) {
            if (failed) {
                events.ended(id.substring(REST.length()), true);
            }
            return;
        }
        events.ended(id, failed);
    }

    @Override
    public synchronized boolean speak(String id, String text, boolean slow) {
        if (failed) {
            return false;
        }
        if (!ready) {
            waitingId = id;
            waitingText = text;
            waitingSlow = slow;
            return true;
        }
        tts.setSpeechRate(slow ? Phrases.SLOW : Phrases.NORMAL);
        List<String> parts = slow ? Phrases.split(text) : Collections.singletonList(text);
        if (parts.isEmpty()) {
            return false;
        }
        int ok = TextToSpeech.SUCCESS;
        for (int i = 0; i < parts.size() && ok == TextToSpeech.SUCCESS; i++) {
            boolean last = i == parts.size() - 1;
            ok = tts.speak(parts.get(i), i == 0 ? TextToSpeech.QUEUE_FLUSH : TextToSpeech.QUEUE_ADD, new Bundle(), last ? id : REST + id);
            if (!last && ok == TextToSpeech.SUCCESS) {
                ok = tts.playSilentUtterance(Phrases.GAP, TextToSpeech.QUEUE_ADD, REST + id);
            }
        }
        return ok == TextToSpeech.SUCCESS;
    }

    @Override
    public synchronized void stop() {
        waitingId = null;
        if (ready) {
            tts.stop();
        }
    }

    void close() {
        tts.shutdown();
    }
}
