package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNotNull;
import static org.junit.Assert.assertTrue;

import android.content.Context;
import android.content.pm.ActivityInfo;
import android.content.pm.ApplicationInfo;
import android.content.pm.ComponentInfo;
import android.content.pm.PackageInfo;
import android.content.pm.PackageManager;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.annotation.Config;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** What a lint would find in the manifest, the resources and the sources. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class LintTest {
    private static final String ANDROID = "http://schemas.android.com/apk/res/android";
    private final Context context = RuntimeEnvironment.getApplication();
    private final Path here = Path.of(System.getProperty("readback.here"));

    private static Element xml(Path file) throws Exception {
        DocumentBuilderFactory f = DocumentBuilderFactory.newInstance();
        f.setNamespaceAware(true);
        return f.newDocumentBuilder().parse(file.toFile()).getDocumentElement();
    }

    private Element manifest() throws Exception {
        return xml(here.resolve("AndroidManifest.xml"));
    }

    private static List<Element> all(Element in, String tag) {
        NodeList n = in.getElementsByTagName(tag);
        List<Element> out = new ArrayList<>();
        for (int i = 0; i < n.getLength(); i++) {
            out.add((Element) n.item(i));
        }
        return out;
    }

    private static String at(Element e, String name) {
        return e.getAttributeNS(ANDROID, name);
    }

    private Map<String, String> strings(String file) throws Exception {
        Map<String, String> out = new HashMap<>();
        for (Element e : all(xml(here.resolve(file)), "string")) {
            assertEquals("named twice: " + e.getAttribute("name"), null, out.put(e.getAttribute("name"), e.getTextContent()));
        }
        return out;
    }

    private List<Path> sources() throws Exception {
        try (Stream<Path> s = Files.walk(here.resolve("src"))) {
            return s.filter(p -> p.toString().endsWith(".java")).toList();
        }
    }

    @Test
    public void everyComponentIsThereAndOnlyTheLauncherIsOpen() throws Exception {
        PackageInfo p = context.getPackageManager().getPackageInfo(context.getPackageName(),
                PackageManager.GET_ACTIVITIES | PackageManager.GET_SERVICES | PackageManager.GET_PROVIDERS | PackageManager.GET_RECEIVERS);
        List<ComponentInfo> all = new ArrayList<>(Arrays.asList(p.activities));
        all.addAll(Arrays.asList(p.services));
        all.addAll(Arrays.asList(p.providers));
        assertTrue("nothing listens to broadcasts of others", p.receivers == null || p.receivers.length == 0);
        for (ComponentInfo c : all) {
            assertNotNull(Class.forName(c.name));
            assertEquals(c.name, c.name.equals(MainActivity.class.getName()), c.exported);
        }
        assertEquals(4, all.size());
    }

    @Test
    public void whatIsOpenIsSaidInSoManyWords() throws Exception {
        for (String tag : new String[] {"activity", "service", "provider"}) {
            for (Element e : all(manifest(), tag)) {
                assertFalse(at(e, "name") + " says whether it is exported", at(e, "exported").isEmpty());
            }
        }
    }

    @Test
    public void theListOfPermissionsIsThatOfThePacking() throws Exception {
        TreeSet<String> has = new TreeSet<>();
        for (Element e : all(manifest(), "uses-permission")) {
            assertTrue(has.add(at(e, "name")));
        }
        assertEquals(new TreeSet<>(Files.readAllLines(here.resolve("permissions.txt"))), has);
        assertFalse(has.contains("android.permission.INTERNET"));
    }

    @Test
    public void everyTypeOfServiceHasItsPermission() throws Exception {
        for (Element s : all(manifest(), "service")) {
            for (String type : at(s, "foregroundServiceType").split("\\|")) {
                String want = "android.permission.FOREGROUND_SERVICE_" + type.toUpperCase();
                assertTrue(want, all(manifest(), "uses-permission").stream().anyMatch(e -> at(e, "name").equals(want)));
            }
        }
    }

    @Test
    public void everySenseIsOptional() throws Exception {
        List<Element> features = all(manifest(), "uses-feature");
        assertTrue(features.size() >= 5);
        for (Element f : features) {
            assertEquals(at(f, "name"), "false", at(f, "required"));
        }
    }

    @Test
    public void levelsAndSwitchesAreAsPromised() throws Exception {
        Element sdk = all(manifest(), "uses-sdk").get(0);
        assertEquals("26", at(sdk, "minSdkVersion"));
        assertEquals("35", at(sdk, "targetSdkVersion"));
        Element app = all(manifest(), "application").get(0);
        assertEquals("libraries are mapped out of the APK", "false", at(app, "extractNativeLibs"));
        ApplicationInfo info = context.getApplicationInfo();
        assertEquals("a job is not copied into a cloud", 0, info.flags & ApplicationInfo.FLAG_ALLOW_BACKUP);
        assertEquals(0, info.flags & ApplicationInfo.FLAG_DEBUGGABLE);
        assertEquals("false", at(app, "usesCleartextTraffic"));
    }

    @Test
    public void theWindowTakesItsOwnChangesOfShape() throws Exception {
        ActivityInfo a = context.getPackageManager().getActivityInfo(new android.content.ComponentName(context, MainActivity.class), 0);
        for (int change : new int[] {ActivityInfo.CONFIG_ORIENTATION, ActivityInfo.CONFIG_SCREEN_SIZE, ActivityInfo.CONFIG_KEYBOARD_HIDDEN,
                ActivityInfo.CONFIG_UI_MODE, ActivityInfo.CONFIG_FONT_SCALE, ActivityInfo.CONFIG_LOCALE, ActivityInfo.CONFIG_DENSITY}) {
            assertTrue(Integer.toHexString(change), (a.configChanges & change) != 0);
        }
    }

    @Test
    public void theShortcutLeadsToAClass() throws Exception {
        Element i = all(xml(here.resolve("res/xml/shortcuts.xml")), "intent").get(0);
        assertEquals(context.getPackageName(), at(i, "targetPackage"));
        assertNotNull(Class.forName(at(i, "targetClass")));
    }

    @Test
    public void everySentenceIsUsed() throws Exception {
        StringBuilder code = new StringBuilder(Files.readString(here.resolve("AndroidManifest.xml")));
        code.append(Files.readString(here.resolve("res/xml/shortcuts.xml")));
        for (Path p : sources()) {
            code.append(Files.readString(p));
        }
        for (String name : strings("res/values/strings.xml").keySet()) {
            assertTrue(name + " is used nowhere", Pattern.compile("(R\\.string\\.|@string/|\")" + name + "\\b").matcher(code).find());
        }
    }

    @Test
    public void theTrialReplacesWhatIsThereAndNothingElse() throws Exception {
        Map<String, String> plain = strings("res/values/strings.xml");
        Map<String, String> trial = strings("trial/res/values/strings.xml");
        assertEquals(new TreeSet<>(List.of("about_trial", "app_name")), new TreeSet<>(trial.keySet()));
        assertEquals("a release makes no such statement", "", plain.get("about_trial"));
        assertEquals("Readback", plain.get("app_name"));
        try (Stream<Path> s = Files.walk(here.resolve("trial/res"))) {
            for (Path p : s.filter(Files::isRegularFile).toList()) {
                assertTrue(p.toString(), Files.exists(here.resolve("res").resolve(here.resolve("trial/res").relativize(p))));
            }
        }
    }

    @Test
    public void placesInSentencesAreNumbered() throws Exception {
        for (Map.Entry<String, String> s : strings("res/values/strings.xml").entrySet()) {
            Matcher m = Pattern.compile("%(?!\\d+\\$[ds])").matcher(s.getValue());
            assertFalse(s.getKey() + ": " + s.getValue(), m.find());
        }
    }

    @Test
    public void noSentenceStandsInTheSources() throws Exception {
        // Two words with a space between them in a literal are a sentence, unless they go to the log, an exception, or a page of plain HTML.
        Pattern sentence = Pattern.compile("(setText|setTitle|setMessage|setContentTitle|setContentText|makeText)\\([^)]*\"[A-Z]");
        for (Path p : sources()) {
            assertFalse(p.toString(), sentence.matcher(Files.readString(p)).find());
        }
    }

    @Test
    public void noIntentOfOursCanBeChangedByOthers() throws Exception {
        int n = 0;
        for (Path p : sources()) {
            Matcher m = Pattern.compile("PendingIntent\\.get\\w+\\([^;]*;").matcher(Files.readString(p));
            while (m.find()) {
                assertTrue(p + ": " + m.group(), m.group().contains("FLAG_IMMUTABLE"));
                n++;
            }
        }
        assertTrue(n >= 2);
    }

    @Test
    public void nothingNewerThanTheLowestPhoneIsCalledUnasked() throws Exception {
        // Calls that came after API 26, each with the level that its file must ask for first.
        Map<String, String> newer = Map.of("addOnModeChangedListener", "31", "removeOnModeChangedListener", "31", "addThermalStatusListener", "29",
                "getOnBackInvokedDispatcher", "33", "AudioRecordingCallback", "29", "FOREGROUND_SERVICE_TYPE_MICROPHONE", "30", "WindowInsets.Type", "30");
        for (Path p : sources()) {
            String code = Files.readString(p);
            for (Map.Entry<String, String> e : newer.entrySet()) {
                if (code.contains(e.getKey())) {
                    assertTrue(p.getFileName() + " calls " + e.getKey(), code.contains("SDK_INT >= " + e.getValue()) || code.contains("SDK_INT < " + e.getValue()));
                }
            }
        }
    }

    @Test
    public void everyColourHasANight() throws Exception {
        TreeSet<String> day = new TreeSet<>();
        TreeSet<String> night = new TreeSet<>();
        all(xml(here.resolve("res/values/colors.xml")), "color").forEach(e -> day.add(e.getAttribute("name")));
        all(xml(here.resolve("res/values-night/colors.xml")), "color").forEach(e -> night.add(e.getAttribute("name")));
        assertTrue(day + " " + night, day.containsAll(night) && night.contains("paper"));
    }

    @Test
    public void whatIsPackedIsNamedInTheListOfParts() throws Exception {
        String parts = AboutActivity.parts(context);
        String mod = Files.readString(new File(here.toFile(), "../../go.mod").toPath());
        for (String m : new String[] {"github.com/ebitengine/purego", "github.com/hashicorp/hcl/v2", "github.com/zclconf/go-cty", "github.com/makiuchi-d/gozxing"}) {
            assertTrue(m, mod.contains(m) && parts.contains(m));
        }
    }
}
