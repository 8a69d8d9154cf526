package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertSame;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.content.Context;
import android.content.res.Configuration;
import android.content.res.Resources;
import android.view.View;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.FileNotFoundException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.readback.desk.Core;
import org.readback.desk.FakeCore;
import org.readback.desk.ModelStore;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.android.controller.ActivityController;
import org.robolectric.annotation.Config;

/** Beginnings, endings, languages. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class LifeTest {
    /** An app whose native code is missing, as in an APK built without an NDK. */
    public static class NoNativeApp extends ShellApp {
        @Override
        Core openCore(Core.Host host) {
            throw new UnsatisfiedLinkError("no gojni in java.library.path");
        }
    }

    /** An app whose folder cannot be used. */
    public static class BrokenApp extends ShellApp {
        @Override
        Core openCore(Core.Host host) throws Exception {
            throw new java.io.IOException("the disk is <full>");
        }
    }

    private static Context context() {
        return RuntimeEnvironment.getApplication();
    }

    @Test
    @Config(application = NoNativeApp.class)
    public void withoutNativeCodeTheFirstScreenSaysSo() throws Exception {
        ShellApp app = (ShellApp) context();
        MainActivity a = Robolectric.setupActivity(MainActivity.class);
        TestApp.idle(app);
        String page = app.core().request("GET", "/", null).string();
        assertTrue(page, page.contains("<h1>This copy cannot run a job</h1>"));
        assertTrue(page, page.contains("native code is missing"));
        assertTrue(page, page.contains("no gojni in java.library.path"));
        assertFalse("nothing to tap", page.contains("<button") || page.contains("<a "));
        PageClient c = (PageClient) shadowOf(a.page()).getWebViewClient();
        assertEquals(200, c.serve("GET", android.net.Uri.parse(PageClient.HOME)).getStatusCode());
        assertEquals(404, c.serve("GET", android.net.Uri.parse(PageClient.ORIGIN + "/app.js")).getStatusCode());
    }

    @Test
    @Config(application = BrokenApp.class)
    public void aCoreThatCannotOpenSaysWhy() throws Exception {
        ShellApp app = (ShellApp) context();
        TestApp.idle(app);
        String page = app.core().request("GET", "/", null).string();
        assertTrue(page, page.contains("The guide could not start: the disk is &lt;full&gt;"));
    }

    @Test
    public void turningThePhoneKeepsThePage() throws Exception {
        ActivityController<MainActivity> c = Robolectric.buildActivity(MainActivity.class).setup();
        View page = c.get().page();
        Configuration turned = new Configuration(context().getResources().getConfiguration());
        turned.orientation = Configuration.ORIENTATION_LANDSCAPE;
        c.configurationChange(turned);
        assertSame(page, c.get().page());
    }

    @Test
    public void aNewWindowFindsTheSameCore() throws Exception {
        TestApp app = (TestApp) context();
        ActivityController<MainActivity> c = Robolectric.buildActivity(MainActivity.class).setup();
        app.settle();
        app.host.keepAwake(true);
        app.settle();
        Core core = app.core();
        c.pause().stop().destroy();
        app.settle();
        assertFalse("a closed window ends no job", app.fake.closed);
        MainActivity again = Robolectric.setupActivity(MainActivity.class);
        assertSame(core, app.core());
        int flag = android.view.WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON;
        assertEquals("and knows that a job runs", flag, again.getWindow().getAttributes().flags & flag);
    }

    @Test
    public void backPutsTheAppBehindAndEndsNothing() {
        ActivityController<MainActivity> c = Robolectric.buildActivity(MainActivity.class).setup();
        c.get().onBackPressed();
        assertFalse(c.get().isFinishing());
    }

    @Test
    public void withoutAModelTheCoreIsToldWhy() throws Exception {
        TestApp app = (TestApp) context();
        app.settle();
        long end = System.nanoTime() + 5_000_000_000L;
        while (!app.saw("model ") && System.nanoTime() < end) {
            Thread.sleep(5);
        }
        assertTrue(app.saw("model  Speech is off: this build carries no recogniser."));
    }

    @Test
    public void theModelIsUnpackedWithProgressAndHandedOver() throws Exception {
        List<String> log = new ArrayList<>();
        File root = Files.createTempDirectory("model").toFile();
        byte[] big = new byte[500_000];
        StringBuilder hex = new StringBuilder();
        for (byte b : java.security.MessageDigest.getInstance("SHA-256").digest(big)) {
            hex.append(String.format("%02x", b));
        }
        StringBuilder list = new StringBuilder();
        for (int i = 0; i < 10; i++) {
            list.append(hex).append(" 500000 part").append(i).append('\n');
        }
        ModelStore store = new ModelStore(path -> {
            if (path.equals("model.list")) {
                return new ByteArrayInputStream(list.toString().getBytes());
            }
            if (!path.startsWith("part")) {
                throw new FileNotFoundException(path);
            }
            return new ByteArrayInputStream(big);
        }, root);
        new ModelLoader(store, new PhoneWords(context())).run(new FakeCore(log));
        assertTrue(log.toString(), log.contains("device speech-off 10.0 Speech is being made ready: 10 per cent. Touch works meanwhile."));
        assertEquals("nine steps and the folder", 10, log.size());
        assertTrue(log.get(9), log.get(9).startsWith("model " + root.getPath()));
    }

    @Test
    public void aDamagedModelIsSaidInWords() {
        List<String> log = new ArrayList<>();
        ModelStore store = new ModelStore(path -> new ByteArrayInputStream(path.equals("model.list")
                ? ("0".repeat(64) + " 3 am/final.mdl\n").getBytes() : new byte[3]), new File(context().getCacheDir(), "m"));
        new ModelLoader(store, new PhoneWords(context())).run(new FakeCore(log));
        assertEquals("model  Speech is off: a file of the recogniser is damaged (am/final.mdl); installing the app again mends it. Touch and keys do everything.",
                log.get(log.size() - 1));
    }

    private static Resources in(String tag) {
        Configuration c = new Configuration(context().getResources().getConfiguration());
        c.setLocale(Locale.forLanguageTag(tag));
        return context().createConfigurationContext(c).getResources();
    }

    @Test
    public void everySentenceIsAResource() throws Exception {
        Resources plain = in("en");
        Resources pseudo = in("en-XA");
        Resources right = in("ar-XB");
        int n = 0;
        for (Field f : R.string.class.getFields()) {
            int id = f.getInt(null);
            String s = plain.getString(id);
            assertFalse(f.getName() + " is not empty", s.trim().isEmpty());
            assertFalse(f.getName() + " has a second language", s.equals(pseudo.getString(id)));
            assertFalse(f.getName() + " has a language written from the right", s.equals(right.getString(id)));
            n++;
        }
        assertTrue(n > 30);
    }

    @Test
    public void placesForNumbersSurviveTranslation() {
        for (String tag : new String[] {"en", "en-XA", "ar-XB"}) {
            String s = in(tag).getString(R.string.speech_preparing, 40);
            assertTrue(tag + ": " + s, s.contains(String.format(Locale.forLanguageTag(tag), "%d", 40)));
        }
    }

    @Test
    @Config(qualifiers = "+ar-rXB-ldrtl")
    public void fromTheRightTheWindowStillOpens() throws Exception {
        MainActivity a = Robolectric.setupActivity(MainActivity.class);
        assertEquals(View.LAYOUT_DIRECTION_RTL, a.getResources().getConfiguration().getLayoutDirection());
        assertEquals(PageClient.HOME, shadowOf(a.page()).getLastLoadedUrl());
    }

    @Test
    @Config(qualifiers = "+night")
    public void inTheDarkTheWindowIsBlackBeforeThePageIsThere() {
        MainActivity a = Robolectric.setupActivity(MainActivity.class);
        assertEquals(0xFF000000, a.getColor(R.color.paper));
    }

    @Test
    public void largeTypeReachesThePage() {
        RuntimeEnvironment.setFontScale(2f);
        MainActivity a = Robolectric.setupActivity(MainActivity.class);
        assertEquals(200, a.page().getSettings().getTextZoom());
    }
}
