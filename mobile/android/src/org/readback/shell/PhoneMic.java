package org.readback.shell;

import android.content.Context;
import android.media.AudioDeviceCallback;
import android.media.AudioDeviceInfo;
import android.media.AudioFormat;
import android.media.AudioManager;
import android.media.AudioRecord;
import android.media.AudioRecordingConfiguration;
import android.media.MediaRecorder;
import android.media.audiofx.AcousticEchoCanceler;
import android.media.audiofx.AudioEffect;
import android.media.audiofx.AutomaticGainControl;
import android.media.audiofx.NoiseSuppressor;
import android.os.Build;
import android.os.Process;
import java.util.ArrayList;
import java.util.List;
import org.readback.desk.Phone;
import org.readback.desk.Route;
import org.readback.desk.Safely;

/**
 * The microphone: 16 kHz, mono, 16 bit, in blocks of 100 ms, from the source made for speech recognition. The phone's echo
 * canceller is switched on when it has one, so that the assistant's own voice is heard less; its noise suppressor and level control are
 * switched off, because the recogniser measures the noise itself and is trained on what they would change. The notice of the listening
 * service stands while it is open.
 */
final class PhoneMic implements Phone.Mic {
    static final int RATE = 16000;
    static final int BLOCK = RATE / 10 * 2; // bytes

    /** Puts the listening notice up and takes it down. */
    interface Notice {
        /** False: it may not be shown now. */
        boolean up();

        void down();
    }

    private final Context context;
    private final Notice notice;
    private final Safely safely;
    private AudioRecord record;
    private final List<AudioEffect> effects = new ArrayList<>();
    private AudioDeviceCallback devices;
    private AudioManager.AudioRecordingCallback watch;
    private Thread thread;

    PhoneMic(Context context, Notice notice, Safely safely) {
        this.context = context;
        this.notice = notice;
        this.safely = safely;
    }

    @Override
    public synchronized boolean start(Sink sink) {
        if (record != null) {
            return true;
        }
        int least = AudioRecord.getMinBufferSize(RATE, AudioFormat.CHANNEL_IN_MONO, AudioFormat.ENCODING_PCM_16BIT);
        AudioRecord r;
        try {
            r = new AudioRecord(MediaRecorder.AudioSource.VOICE_RECOGNITION, RATE, AudioFormat.CHANNEL_IN_MONO,
                    AudioFormat.ENCODING_PCM_16BIT, Math.max(least, 4 * BLOCK));
        } catch (IllegalArgumentException | SecurityException e) {
            return false;
        }
        // The service must be asked for before the sound starts, or the phone gives silence once the screen is off.
        if (r.getState() != AudioRecord.STATE_INITIALIZED || !notice.up()) {
            r.release();
            return false;
        }
        record = r;
        int session = r.getAudioSessionId();
        if (AcousticEchoCanceler.isAvailable()) {
            set(AcousticEchoCanceler.create(session), true);
        }
        if (NoiseSuppressor.isAvailable()) {
            set(NoiseSuppressor.create(session), false);
        }
        if (AutomaticGainControl.isAvailable()) {
            set(AutomaticGainControl.create(session), false);
        }
        watch(r, sink);
        follow(r);
        r.startRecording();
        thread = new Thread(() -> pump(r, sink), "mic");
        thread.start();
        return true;
    }

    /** Null: the phone has none after all. */
    private void set(AudioEffect e, boolean on) {
        if (e != null) {
            e.setEnabled(on);
            effects.add(e);
        }
    }

    /** Takes the microphone that is wanted, now and whenever one is plugged in or out. */
    private void follow(AudioRecord r) {
        devices = new AudioDeviceCallback() {
            @Override
            public void onAudioDevicesAdded(AudioDeviceInfo[] added) {
                safely.run(() -> prefer(r));
            }

            @Override
            public void onAudioDevicesRemoved(AudioDeviceInfo[] removed) {
                safely.run(() -> prefer(r));
            }
        };
        prefer(r);
        context.getSystemService(AudioManager.class).registerAudioDeviceCallback(devices, null);
    }

    private synchronized void prefer(AudioRecord r) {
        if (record != r) {
            return;
        }
        AudioDeviceInfo[] all = context.getSystemService(AudioManager.class).getDevices(AudioManager.GET_DEVICES_INPUTS);
        int[] types = new int[all.length];
        for (int i = 0; i < all.length; i++) {
            types[i] = all[i].getType();
        }
        int best = Route.pick(types);
        r.setPreferredDevice(best < 0 ? null : all[best]);
    }

    /** What is done to the sound before it comes here. */
    synchronized List<AudioEffect> effects() {
        return new ArrayList<>(effects);
    }

    /** Phones from Android 10 on say when another app has the microphone. */
    private void watch(AudioRecord r, Sink sink) {
        if (Build.VERSION.SDK_INT < 29) {
            return;
        }
        int session = r.getAudioSessionId();
        watch = new AudioManager.AudioRecordingCallback() {
            private boolean was;

            @Override
            public void onRecordingConfigChanged(List<AudioRecordingConfiguration> all) {
                for (AudioRecordingConfiguration c : all) {
                    if (c.getClientAudioSessionId() == session && c.isClientSilenced() != was) {
                        was = !was;
                        boolean on = was;
                        safely.run(() -> sink.silenced(on));
                    }
                }
            }
        };
        context.getSystemService(AudioManager.class).registerAudioRecordingCallback(watch, null);
    }

    private void pump(AudioRecord r, Sink sink) {
        safely.run(() -> Process.setThreadPriority(Process.THREAD_PRIORITY_URGENT_AUDIO));
        byte[] block = new byte[BLOCK];
        while (open(r)) {
            int n = r.read(block, 0, BLOCK);
            if (n < 0) {
                break; // the device went away; the silence is noticed by the core
            }
            if (n > 0 && open(r)) {
                safely.run(() -> sink.block(block, n));
            }
        }
    }

    private synchronized boolean open(AudioRecord r) {
        return record == r;
    }

    @Override
    public void stop() {
        AudioRecord r;
        Thread t;
        synchronized (this) {
            if (record == null) {
                return;
            }
            r = record;
            t = thread;
            record = null;
            thread = null;
            if (watch != null) {
                context.getSystemService(AudioManager.class).unregisterAudioRecordingCallback(watch);
                watch = null;
            }
            context.getSystemService(AudioManager.class).unregisterAudioDeviceCallback(devices);
            effects.forEach(AudioEffect::release);
            effects.clear();
        }
        safely.run(r::stop);
        try {
            t.join(1000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        r.release();
        notice.down();
    }
}
