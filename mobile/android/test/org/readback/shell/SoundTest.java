package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNotNull;
import static org.junit.Assert.assertNull;
import static org.junit.Assert.assertThrows;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.Manifest;
import android.app.AlertDialog;
import android.app.Notification;
import android.app.Service;
import android.content.Intent;
import android.media.AudioAttributes;
import android.media.AudioDeviceInfo;
import android.media.AudioFocusRequest;
import android.media.AudioManager;
import android.media.MediaRecorder;
import android.media.AudioRecord;
import android.media.audiofx.AcousticEchoCanceler;
import android.media.audiofx.AudioEffect;
import android.media.audiofx.AutomaticGainControl;
import android.media.audiofx.NoiseSuppressor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.json.JSONObject;
import org.junit.After;
import org.junit.Before;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.readback.desk.Phone;
import org.readback.desk.Safely;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.android.controller.ActivityController;
import org.robolectric.android.controller.ServiceController;
import org.robolectric.annotation.Config;
import org.robolectric.shadows.AudioDeviceInfoBuilder;
import org.robolectric.shadows.ShadowAlertDialog;
import org.robolectric.shadows.ShadowAudioEffect;
import org.robolectric.shadows.ShadowAudioRecord;
import org.robolectric.util.ReflectionHelpers;

/** Focus, route, effects, calls, and the service that keeps the microphone: what the framework has to say about sound. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class SoundTest {
    /** A service that the phone does not let come to the foreground. */
    public static class RefusedService extends ListenService {
        static RuntimeException with;

        @Override
        void foreground(Notification n) {
            throw with;
        }
    }

    private final TestApp app = (TestApp) RuntimeEnvironment.getApplication();
    private final AudioManager audio = app.getSystemService(AudioManager.class);
    private final AtomicReference<AudioRecord> record = new AtomicReference<>();
    private ActivityController<MainActivity> controller;

    @Before
    public void open() throws Exception {
        ShadowAudioRecord.setSourceProvider(r -> {
            record.set(r);
            return new ShadowAudioRecord.AudioRecordSource() {
                @Override
                public int readInByteArray(byte[] to, int at, int n, boolean blocking) {
                    try {
                        Thread.sleep(10);
                    } catch (InterruptedException e) {
                        return -1;
                    }
                    Arrays.fill(to, at, at + n, (byte) 1);
                    return n;
                }
            };
        });
        controller = Robolectric.buildActivity(MainActivity.class).setup();
        app.settle();
    }

    @After
    public void quiet() throws Exception {
        app.desk().deafen();
        app.settle();
    }

    private void job() throws Exception {
        app.host.keepAwake(true);
        app.host.say("s1", "Is it safe to stay here?", "info", false);
        app.settle();
    }

    private void listen() throws Exception {
        shadowOf(app).grantPermissions(Manifest.permission.RECORD_AUDIO);
        job();
        assertTrue(app.desk().listening());
    }

    /** A device that sound comes from: the builder makes only those that sound goes to, and the framework takes none of them for a microphone. */
    private static AudioDeviceInfo device(int type) {
        AudioDeviceInfo d = AudioDeviceInfoBuilder.newBuilder().setType(type).build();
        Object port = ReflectionHelpers.getField(d, "mPort");
        ReflectionHelpers.setField(port, "mRole", 1); // AudioPort.ROLE_SOURCE
        if (type == AudioDeviceInfo.TYPE_BUILTIN_MIC) {
            ReflectionHelpers.setField(port, "mType", 0x80000004); // AudioSystem.DEVICE_IN_BUILTIN_MIC
        }
        assertEquals(type, d.getType());
        return d;
    }

    private int preferred() {
        AudioDeviceInfo d = record.get().getPreferredDevice();
        return d == null ? -1 : d.getType();
    }

    private void eventually(String prefix) throws Exception {
        long end = System.nanoTime() + 5_000_000_000L;
        while (!app.saw(prefix)) {
            assertTrue(prefix, System.nanoTime() < end);
            Thread.sleep(5);
        }
    }

    // Focus.

    @Test
    public void focusIsAskedForWhileAJobRunsAndGivenBack() throws Exception {
        assertNull(shadowOf(audio).getLastAudioFocusRequest());
        app.host.keepAwake(true);
        app.settle();
        AudioFocusRequest r = shadowOf(audio).getLastAudioFocusRequest().audioFocusRequest;
        assertEquals(AudioManager.AUDIOFOCUS_GAIN_TRANSIENT_MAY_DUCK, r.getFocusGain());
        assertEquals(AudioAttributes.USAGE_ASSISTANCE_NAVIGATION_GUIDANCE, r.getAudioAttributes().getUsage());
        assertEquals(AudioAttributes.CONTENT_TYPE_SPEECH, r.getAudioAttributes().getContentType());
        assertNull(shadowOf(audio).getLastAbandonedAudioFocusRequest());
        app.host.keepAwake(false);
        app.settle();
        assertNotNull(shadowOf(audio).getLastAbandonedAudioFocusRequest());
    }

    private void focus(int change) throws Exception {
        shadowOf(audio).getLastAudioFocusRequest().listener.onAudioFocusChange(change);
        app.settle();
    }

    @Test
    public void focusLostForGoodIsAskedForAgainWhenThePersonComesBack() throws Exception {
        listen();
        focus(AudioManager.AUDIOFOCUS_LOSS);
        assertTrue(app.saw("device call"));
        assertFalse(app.saw("device back"));
        controller.pause().stop().start().resume();
        app.settle();
        assertTrue(app.saw("device back"));
    }

    @Test
    public void anotherAppMaySpeakOverUsForAMoment() throws Exception {
        listen();
        focus(AudioManager.AUDIOFOCUS_LOSS_TRANSIENT_CAN_DUCK);
        assertFalse(app.saw("device call"));
    }

    @Test
    public void othersSoundDoesNotStopTheEars() throws Exception {
        listen();
        focus(AudioManager.AUDIOFOCUS_LOSS_TRANSIENT);
        app.log.clear();
        eventually("feed");
    }

    // Calls, in and out.

    private void mode(int mode) throws Exception {
        audio.setMode(mode);
        app.settle();
    }

    private void notHeardIn(int mode) throws Exception {
        listen();
        mode(mode);
        assertTrue(app.saw("device call"));
        Thread.sleep(30); // a block that was under way
        app.log.clear();
        Thread.sleep(60);
        assertFalse("a call is heard", app.saw("feed"));
        mode(AudioManager.MODE_NORMAL);
        assertTrue(app.saw("device back"));
        eventually("feed");
    }

    @Test
    public void aCallThatComesInIsNotHeard() throws Exception {
        notHeardIn(AudioManager.MODE_RINGTONE);
    }

    @Test
    public void aCallThatGoesOutIsNotHeard() throws Exception {
        notHeardIn(AudioManager.MODE_IN_CALL);
    }

    @Test
    public void aCallOverTheNetworkIsNotHeard() throws Exception {
        notHeardIn(AudioManager.MODE_IN_COMMUNICATION);
    }

    @Test
    public void theMicrophonesServiceStandsThroughACall() throws Exception {
        listen();
        Robolectric.buildService(ListenService.class).create().startCommand(0, 1);
        mode(AudioManager.MODE_IN_CALL);
        assertTrue("it could not be started again from behind", app.desk().listening());
        assertNull(shadowOf(app).getNextStoppedService());
    }

    // Route.

    @Test
    public void thePhonesOwnMicrophoneIsTakenAndBluetoothLeft() throws Exception {
        shadowOf(audio).setInputDevices(List.of(device(AudioDeviceInfo.TYPE_BLUETOOTH_SCO), device(AudioDeviceInfo.TYPE_BUILTIN_MIC)));
        listen();
        assertEquals(AudioDeviceInfo.TYPE_BUILTIN_MIC, preferred());
    }

    @Test
    public void aHeadsetByWireIsTaken() throws Exception {
        shadowOf(audio).setInputDevices(List.of(device(AudioDeviceInfo.TYPE_BUILTIN_MIC), device(AudioDeviceInfo.TYPE_WIRED_HEADSET)));
        listen();
        assertEquals(AudioDeviceInfo.TYPE_WIRED_HEADSET, preferred());
    }

    @Test
    public void pluggingInAndOutIsFollowed() throws Exception {
        AudioDeviceInfo usb = device(AudioDeviceInfo.TYPE_USB_HEADSET);
        shadowOf(audio).setInputDevices(List.of(device(AudioDeviceInfo.TYPE_BUILTIN_MIC)));
        listen();
        assertEquals(AudioDeviceInfo.TYPE_BUILTIN_MIC, preferred());
        shadowOf(audio).addInputDevice(usb, true);
        app.settle();
        assertEquals(AudioDeviceInfo.TYPE_USB_HEADSET, preferred());
        shadowOf(audio).removeInputDevice(usb, true);
        app.settle();
        assertEquals(AudioDeviceInfo.TYPE_BUILTIN_MIC, preferred());
    }

    @Test
    public void theRecognisersOwnSourceIsAsked() throws Exception {
        listen();
        assertEquals(MediaRecorder.AudioSource.VOICE_RECOGNITION, record.get().getAudioSource());
        assertEquals(16000, record.get().getSampleRate());
        assertEquals(1, record.get().getChannelCount());
    }

    // Effects.

    private static void offer(UUID type) {
        AudioEffect.Descriptor d = new AudioEffect.Descriptor(type.toString(), UUID.randomUUID().toString(), "Insert", "of this phone", "nobody");
        ShadowAudioEffect.addEffect(d);
    }

    @Test
    public void echoIsCancelledAndNothingElseIsChanged() {
        offer(AudioEffect.EFFECT_TYPE_AEC);
        offer(AudioEffect.EFFECT_TYPE_NS);
        offer(AudioEffect.EFFECT_TYPE_AGC);
        List<String> notice = new ArrayList<>();
        PhoneMic mic = new PhoneMic(app, new PhoneMic.Notice() {
            @Override
            public boolean up() {
                return notice.add("up");
            }

            @Override
            public void down() {
                notice.add("down");
            }
        }, new Safely(t -> {
            throw new AssertionError(t);
        }));
        assertTrue(mic.start(new Phone.Mic.Sink() {
            @Override
            public void block(byte[] pcm, int length) {
            }

            @Override
            public void silenced(boolean on) {
            }
        }));
        List<AudioEffect> all = mic.effects();
        Map<Class<?>, Boolean> on = new HashMap<>();
        all.forEach(e -> on.put(e.getClass(), e.getEnabled()));
        assertEquals(Map.of(AcousticEchoCanceler.class, true, NoiseSuppressor.class, false, AutomaticGainControl.class, false), on);
        mic.stop();
        assertEquals("given back", 0, mic.effects().size());
        assertThrows("released", IllegalStateException.class, () -> all.get(0).getEnabled());
        assertEquals(List.of("up", "down"), notice);
    }

    @Test
    public void aPhoneWithoutEffectsIsHeard() throws Exception {
        listen();
        eventually("feed");
    }

    // The microphone refused, and later given.

    private void answer(int button) throws Exception {
        ShadowAlertDialog.getLatestAlertDialog().getButton(button).performClick();
        app.settle();
    }

    private void awayAndBack() throws Exception {
        controller.pause().stop().start().resume();
        app.settle();
    }

    @Test
    public void refusedThenAllowedInTheSettingsIsHeardAtTheReturn() throws Exception {
        job();
        answer(AlertDialog.BUTTON_NEGATIVE);
        assertFalse(app.desk().listening());
        shadowOf(app).grantPermissions(Manifest.permission.RECORD_AUDIO);
        awayAndBack();
        assertTrue(app.desk().listening());
        assertTrue(app.saw("device mic-on"));
    }

    @Test
    public void refusedAndLeftSoIsNotAskedAtTheReturn() throws Exception {
        job();
        answer(AlertDialog.BUTTON_NEGATIVE);
        ShadowAlertDialog.reset();
        awayAndBack();
        assertFalse(app.desk().listening());
        assertNull(ShadowAlertDialog.getLatestAlertDialog());
    }

    @Test
    public void aJobByTouchDoesNotBeginToListenAtTheReturn() throws Exception {
        shadowOf(app).grantPermissions(Manifest.permission.RECORD_AUDIO);
        app.host.keepAwake(true);
        app.settle();
        awayAndBack();
        assertFalse(app.desk().listening());
    }

    @Test
    public void whoStoppedListeningIsNotListenedToAtTheReturn() throws Exception {
        listen();
        app.desk().deafen();
        app.settle();
        awayAndBack();
        assertFalse(app.desk().listening());
    }

    // The service.

    private void refusedBy(RuntimeException e) throws Exception {
        listen();
        RefusedService.with = e;
        ServiceController<RefusedService> s = Robolectric.buildService(RefusedService.class).create().startCommand(0, 1);
        app.settle();
        assertTrue(shadowOf(s.get()).isStoppedBySelf());
        assertFalse("silence is not taken for listening", app.desk().listening());
        assertTrue(app.saw("device mic-off"));
    }

    @Test
    public void aServiceWithoutItsPermissionSaysThatItIsDeaf() throws Exception {
        refusedBy(new SecurityException("Starting FGS with type microphone requires permissions"));
    }

    @Test
    public void aServiceStartedFromBehindSaysThatItIsDeaf() throws Exception {
        refusedBy(new IllegalStateException("startForeground() not allowed due to mAllowStartForeground false"));
    }

    @Test
    public void swipingTheAppAwayEndsTheListening() throws Exception {
        listen();
        ServiceController<ListenService> s = Robolectric.buildService(ListenService.class).create().startCommand(0, 1);
        s.get().onTaskRemoved(new Intent());
        app.settle();
        assertFalse(app.desk().listening());
        assertTrue(shadowOf(s.get()).isStoppedBySelf());
        assertFalse("the job itself stands in its record", app.fake.closed);
    }

    @Test
    public void aKilledServiceIsNotStartedAgainByThePhone() {
        ListenService s = Robolectric.buildService(ListenService.class).create().get();
        assertEquals(Service.START_NOT_STICKY, s.onStartCommand(new Intent(), 0, 1));
        assertEquals(Service.START_NOT_STICKY, s.onStartCommand(null, 0, 2));
    }

    @Test
    public void lookingWithTheCameraGoesOnListening() throws Exception {
        shadowOf(app).grantPermissions(Manifest.permission.CAMERA);
        listen();
        controller.get().call("eye", new JSONObject().put("kind", "meter"));
        app.settle();
        assertTrue(app.desk().listening());
        app.log.clear();
        eventually("feed");
    }
}
