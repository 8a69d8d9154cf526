package org.readback.shell;

import android.media.AudioAttributes;
import android.media.AudioFormat;
import android.media.AudioTrack;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.readback.desk.Phone;
import org.readback.desk.Safely;

/** Plays cues through an AudioTrack, one after the other, on a thread of its own. */
final class PhoneTones implements Phone.Tones {
    private final ExecutorService thread = Executors.newSingleThreadExecutor(r -> new Thread(r, "tones"));
    private final Safely safely;

    PhoneTones(Safely safely) {
        this.safely = safely;
    }

    @Override
    public void play(short[] pcm, int rate) {
        thread.execute(() -> safely.run(() -> now(pcm, rate)));
    }

    private static void now(short[] pcm, int rate) throws InterruptedException {
        AudioTrack track = new AudioTrack.Builder()
                .setAudioAttributes(new AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ASSISTANCE_NAVIGATION_GUIDANCE)
                        .setContentType(AudioAttributes.CONTENT_TYPE_SONIFICATION).build())
                .setAudioFormat(new AudioFormat.Builder().setSampleRate(rate).setEncoding(AudioFormat.ENCODING_PCM_16BIT)
                        .setChannelMask(AudioFormat.CHANNEL_OUT_MONO).build())
                .setTransferMode(AudioTrack.MODE_STATIC)
                .setBufferSizeInBytes(2 * pcm.length)
                .build();
        try {
            track.write(pcm, 0, pcm.length);
            track.play();
            Thread.sleep(1000L * pcm.length / rate + 20);
        } finally {
            track.release();
        }
    }
}
