package org.readback.shell;

import static org.junit.Assert.assertArrayEquals;
import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNotNull;
import static org.junit.Assert.assertNull;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.Manifest;
import android.app.AlertDialog;
import android.app.Notification;
import android.app.NotificationManager;
import android.content.Intent;
import android.content.pm.PackageManager;
import android.content.pm.ServiceInfo;
import android.media.AudioManager;
import android.os.BatteryManager;
import android.os.Looper;
import android.os.Vibrator;
import android.speech.tts.TextToSpeech;
import android.speech.tts.Voice;
import android.view.KeyEvent;
import android.view.WindowManager;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.After;
import org.junit.Before;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.android.controller.ActivityController;
import org.robolectric.android.controller.ServiceController;
import org.robolectric.annotation.Config;
import org.robolectric.shadows.ShadowAlertDialog;
import org.robolectric.shadows.ShadowAudioRecord;
import org.robolectric.shadows.ShadowPowerManager;
import org.robolectric.shadows.ShadowTextToSpeech;
import org.robolectric.shadows.ShadowToast;

/** Microphone, voice, keys, battery, calls: the phone's services behind the desk. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class SensesTest {
    private final TestApp app = (TestApp) RuntimeEnvironment.getApplication();
    private ActivityController<MainActivity> controller;
    private MainActivity activity;

    @Before
    public void open() throws Exception {
        ShadowAudioRecord.setSourceProvider(r -> new ShadowAudioRecord.AudioRecordSource() {
            @Override
            public int readInByteArray(byte[] to, int at, int n, boolean blocking) {
                try {
                    Thread.sleep(20); // a quiet room, a little faster than life
                } catch (InterruptedException e) {
                    return -1;
                }
                Arrays.fill(to, at, at + n, (byte) 1);
                return n;
            }
        });
        controller = Robolectric.buildActivity(MainActivity.class).setup();
        activity = controller.get();
        app.settle();
    }

    @After
    public void quiet() throws Exception {
        app.desk().deafen();
        app.settle();
    }

    private void allow(String... names) {
        shadowOf(app).grantPermissions(names);
    }

    private void job() throws Exception {
        app.host.keepAwake(true);
        app.host.say("s1", "Is it safe to stay here?", "info", false);
        app.settle();
    }

    private void answer(int button) throws Exception {
        AlertDialog d = ShadowAlertDialog.getLatestAlertDialog();
        assertNotNull("a sentence of why", d);
        d.getButton(button).performClick();
        app.settle();
    }

    @Test
    public void atTheStartNothingIsAskedFor() {
        assertNull(ShadowAlertDialog.getLatestAlertDialog());
        assertNull(shadowOf(app).getNextStartedService());
        assertNull(shadowOf(activity).getLastRequestedPermission());
    }

    @Test
    public void theMicrophoneIsAskedForAtTheFirstWordWithAReason() throws Exception {
        job();
        AlertDialog d = ShadowAlertDialog.getLatestAlertDialog();
        String why = String.valueOf(shadowOf(d).getMessage());
        assertTrue(why, why.contains("never leaves this phone"));
        assertTrue("and the way on by touch", why.contains("by touch"));
        assertNull("the phone's question comes after ours", shadowOf(activity).getLastRequestedPermission());
        answer(AlertDialog.BUTTON_POSITIVE);
        assertArrayEquals(new String[] {Manifest.permission.RECORD_AUDIO}, shadowOf(activity).getLastRequestedPermission().requestedPermissions);
    }

    @Test
    public void aGrantStartsTheServiceThenTheSound() throws Exception {
        job();
        answer(AlertDialog.BUTTON_POSITIVE);
        allow(Manifest.permission.RECORD_AUDIO);
        activity.onRequestPermissionsResult(shadowOf(activity).getLastRequestedPermission().requestCode,
                new String[] {Manifest.permission.RECORD_AUDIO}, new int[] {PackageManager.PERMISSION_GRANTED});
        app.settle();
        assertEquals(ListenService.class.getName(), shadowOf(app).getNextStartedService().getComponent().getClassName());
        assertTrue(app.saw("device mic-on"));
        assertTrue(app.desk().listening());
    }

    @Test
    public void aRefusalIsToldToTheCoreAndTheJobGoesOn() throws Exception {
        job();
        answer(AlertDialog.BUTTON_NEGATIVE);
        assertTrue(app.saw("device mic-off 0.0 The microphone is off. Touch and keys do everything."));
        assertNull(shadowOf(app).getNextStartedService());
        ShadowAlertDialog.reset();
        app.host.say("s2", "Next", "info", false);
        app.settle();
        assertNull("nobody is asked twice", ShadowAlertDialog.getLatestAlertDialog());
    }

    @Test
    public void aQuestionBrokenOffByLeavingIsANo() throws Exception {
        job();
        answer(AlertDialog.BUTTON_POSITIVE);
        controller.pause().stop().destroy();
        app.settle();
        assertTrue(app.saw("device mic-off"));
    }

    @Test
    public void soundArrivesWholeAndInOrder() throws Exception {
        allow(Manifest.permission.RECORD_AUDIO);
        AtomicInteger sent = new AtomicInteger();
        ShadowAudioRecord.setSourceProvider(r -> new ShadowAudioRecord.AudioRecordSource() {
            @Override
            public int readInByteArray(byte[] to, int at, int n, boolean blocking) {
                int k = sent.incrementAndGet();
                if (k > 20) {
                    return -1;
                }
                Arrays.fill(to, at, at + n, (byte) k);
                return n;
            }
        });
        job();
        long end = System.nanoTime() + 5_000_000_000L;
        while (!app.saw("feed 3200 20") && System.nanoTime() < end) {
            Thread.sleep(5);
        }
        List<String> want = new ArrayList<>();
        for (int i = 1; i <= 20; i++) {
            want.add("feed 3200 " + i);
        }
        List<String> got;
        synchronized (app.log) {
            got = new ArrayList<>(app.log);
        }
        got.removeIf(l -> !l.startsWith("feed"));
        assertEquals(want, got);
    }

    @Test
    public void theEndOfTheJobClosesTheMicrophoneAndTheNotice() throws Exception {
        allow(Manifest.permission.RECORD_AUDIO);
        job();
        assertTrue(app.desk().listening());
        Robolectric.buildService(ListenService.class).create().startCommand(0, 1);
        app.host.keepAwake(false);
        app.settle();
        assertFalse(app.desk().listening());
        assertEquals(ListenService.class.getName(), shadowOf(app).getNextStoppedService().getComponent().getClassName());
    }

    @Test
    public void aNoticeCalledOffWhileItStartsStopsItself() throws Exception {
        allow(Manifest.permission.RECORD_AUDIO);
        job();
        app.host.keepAwake(false);
        app.settle();
        assertNull("not stopped before it stands: the phone would end the app", shadowOf(app).getNextStoppedService());
        ServiceController<ListenService> s = Robolectric.buildService(ListenService.class).create().startCommand(0, 1);
        assertNotNull("it came to the foreground first", shadowOf(s.get()).getLastForegroundNotification());
        assertTrue(shadowOf(s.get()).isStoppedBySelf());
    }

    @Test
    public void theNoticeSaysThatItListensAndStopsIt() throws Exception {
        ServiceController<ListenService> s = Robolectric.buildService(ListenService.class).create().startCommand(0, 1);
        Notification n = shadowOf(s.get()).getLastForegroundNotification();
        assertEquals("Readback is listening", n.extras.getString(Notification.EXTRA_TITLE));
        assertEquals(ServiceInfo.FOREGROUND_SERVICE_TYPE_MICROPHONE, s.get().getForegroundServiceType());
        assertEquals(1, n.actions.length);
        assertTrue((n.flags & Notification.FLAG_ONGOING_EVENT) != 0);
        assertEquals(NotificationManager.IMPORTANCE_LOW, app.getSystemService(NotificationManager.class).getNotificationChannel(ListenService.CHANNEL).getImportance());
        allow(Manifest.permission.RECORD_AUDIO);
        job();
        s.withIntent(new Intent().setAction(ListenService.STOP)).startCommand(0, 2);
        app.settle();
        assertFalse(app.desk().listening());
        assertTrue(app.saw("device mic-off"));
    }

    private ShadowTextToSpeech voice(boolean network) throws Exception {
        TextToSpeech tts = ShadowTextToSpeech.getLastTextToSpeechInstance();
        ShadowTextToSpeech.addVoice(new Voice("v", Locale.US, 300, 200, network, Collections.emptySet()));
        shadowOf(tts).getOnInitListener().onInit(TextToSpeech.SUCCESS);
        app.settle();
        return shadowOf(tts);
    }

    @Test
    public void theVoiceSpeaksTheCoresWordsAndTellsTheirEnd() throws Exception {
        ShadowTextToSpeech v = voice(false);
        job();
        assertEquals("Is it safe to stay here?", v.getLastSpokenText());
        assertEquals("v", v.getCurrentVoice().getName());
        app.settle();
        assertTrue(app.saw("spoke s1 false"));
    }

    @Test
    public void aVoiceThatNeedsANetworkIsNone() throws Exception {
        ShadowTextToSpeech v = voice(true);
        job();
        assertNull(v.getLastSpokenText());
        assertTrue(app.saw("device sound-off 0.0 There is no offline voice"));
        assertTrue("and nobody waits for the voice", app.saw("spoke s1 true"));
    }

    @Test
    public void wordsBeforeTheVoiceIsReadyAreNotLost() throws Exception {
        job();
        ShadowTextToSpeech v = voice(false);
        assertEquals("Is it safe to stay here?", v.getLastSpokenText());
    }

    @Test
    public void hushStopsTheVoice() throws Exception {
        ShadowTextToSpeech v = voice(false);
        job();
        app.host.hush();
        assertTrue(v.isStopped());
    }

    @Test
    public void volumeKeysAnswerInAJobOnly() throws Exception {
        KeyEvent up = new KeyEvent(KeyEvent.ACTION_UP, KeyEvent.KEYCODE_VOLUME_UP);
        assertFalse(activity.onKeyUp(KeyEvent.KEYCODE_VOLUME_UP, up));
        allow(Manifest.permission.RECORD_AUDIO);
        job();
        assertTrue(activity.onKeyDown(KeyEvent.KEYCODE_VOLUME_UP, new KeyEvent(KeyEvent.ACTION_DOWN, KeyEvent.KEYCODE_VOLUME_UP)));
        assertTrue(activity.onKeyUp(KeyEvent.KEYCODE_VOLUME_UP, up));
        app.settle();
        assertTrue(app.commanded("ready"));
        assertTrue(activity.onKeyUp(KeyEvent.KEYCODE_VOLUME_DOWN, new KeyEvent(KeyEvent.ACTION_UP, KeyEvent.KEYCODE_VOLUME_DOWN)));
        app.settle();
        assertTrue(app.commanded("repeat"));
    }

    @Test
    public void theHeadsetButtonAnswers() throws Exception {
        allow(Manifest.permission.RECORD_AUDIO);
        voice(false);
        job();
        app.desk().hush();
        app.settle();
        assertTrue(app.headset().active());
        app.headset().key(new KeyEvent(1000, 1080, KeyEvent.ACTION_UP, KeyEvent.KEYCODE_HEADSETHOOK, 0));
        shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(400));
        app.settle();
        assertTrue(app.commanded("ready"));
        app.headset().key(new KeyEvent(5000, 6000, KeyEvent.ACTION_UP, KeyEvent.KEYCODE_HEADSETHOOK, 0));
        app.settle();
        assertTrue(app.commanded("hold"));
    }

    @Test
    public void awakeOnlyInAJob() throws Exception {
        int flag = WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON;
        assertEquals(0, activity.getWindow().getAttributes().flags & flag);
        app.host.keepAwake(true);
        app.settle();
        assertTrue(ShadowPowerManager.getLatestWakeLock().isHeld());
        assertEquals(flag, activity.getWindow().getAttributes().flags & flag);
        app.host.keepAwake(false);
        app.settle();
        assertFalse(ShadowPowerManager.getLatestWakeLock().isHeld());
        assertEquals(0, activity.getWindow().getAttributes().flags & flag);
    }

    @Test
    public void theBatteryIsToldInAJob() throws Exception {
        app.sendStickyBroadcast(new Intent(Intent.ACTION_BATTERY_CHANGED).putExtra(BatteryManager.EXTRA_LEVEL, 19).putExtra(BatteryManager.EXTRA_SCALE, 100));
        app.settle();
        assertFalse(app.saw("device battery"));
        app.host.keepAwake(true);
        app.settle();
        assertTrue(app.saw("device battery 19.0"));
    }

    @Test
    public void aCallInterruptsAndComesBack() throws Exception {
        app.host.keepAwake(true);
        app.settle();
        AudioManager audio = app.getSystemService(AudioManager.class);
        assertNotNull("focus was asked for", shadowOf(audio).getLastAudioFocusRequest());
        audio.setMode(AudioManager.MODE_IN_CALL);
        app.settle();
        assertTrue(app.saw("device call"));
        audio.setMode(AudioManager.MODE_NORMAL);
        app.settle();
        assertTrue(app.saw("device back"));
    }

    @Test
    public void cuesAndBuzzesAreMade() throws Exception {
        app.host.vibrate("double");
        app.host.cue("heard");
        app.settle();
        assertTrue(shadowOf(app.getSystemService(Vibrator.class)).isVibrating());
    }

    @Test
    public void withoutACameraThereIsAWayOn() throws Exception {
        allow(Manifest.permission.CAMERA);
        app.host.takePhoto("before");
        app.settle();
        assertEquals("The camera gives no picture.", ShadowToast.getTextOfLatestToast());
        assertFalse(app.saw("photo"));
    }

    @Test
    public void lookingWithoutACameraIsToldToTheCore() throws Exception {
        allow(Manifest.permission.CAMERA);
        activity.call("eye", new org.json.JSONObject().put("kind", "meter"));
        app.settle();
        assertTrue(app.saw("device eye-off 0.0 There is no camera. Say or tap what you see."));
        assertFalse(app.saw("frame"));
    }

    @Test
    public void theCameraIsAskedForWithItsReason() throws Exception {
        app.host.takePhoto("before");
        app.settle();
        assertTrue(String.valueOf(shadowOf(ShadowAlertDialog.getLatestAlertDialog()).getMessage()).contains("stays on this phone"));
        answer(AlertDialog.BUTTON_NEGATIVE);
        assertTrue(ShadowToast.getTextOfLatestToast().contains("without pictures"));
    }
}
