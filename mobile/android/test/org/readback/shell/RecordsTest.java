package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertFalse;
import static org.junit.Assert.assertNull;
import static org.junit.Assert.assertThrows;
import static org.junit.Assert.assertTrue;
import static org.robolectric.Shadows.shadowOf;

import android.app.Activity;
import android.content.Intent;
import android.database.Cursor;
import android.net.Uri;
import android.os.Bundle;
import android.os.ParcelFileDescriptor;
import android.provider.OpenableColumns;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.FileInputStream;
import java.io.FileNotFoundException;
import java.nio.file.Files;
import org.junit.Before;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.Robolectric;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.android.controller.ActivityController;
import org.robolectric.annotation.Config;
import org.robolectric.shadows.ShadowToast;

/** Records leave the app by the person's hand only: shared, saved, printed. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class RecordsTest {
    private final TestApp app = (TestApp) RuntimeEnvironment.getApplication();
    private ActivityController<MainActivity> controller;
    private MainActivity activity;

    @Before
    public void open() throws Exception {
        controller = Robolectric.buildActivity(MainActivity.class).setup();
        activity = controller.get();
        app.settle();
    }

    private ShareProvider provider() {
        return Robolectric.setupContentProvider(ShareProvider.class, ShareProvider.AUTHORITY);
    }

    @Test
    public void sharingOffersOneFileThroughOurProvider() throws Exception {
        File job = new File(app.jobs(), "jobs/j1");
        assertTrue(job.mkdirs());
        Files.writeString(new File(job, "record.html").toPath(), "<p>record");
        app.host.share("jobs/j1/record.html");
        app.settle();
        Intent chooser = shadowOf(app).getNextStartedActivity();
        assertEquals(Intent.ACTION_CHOOSER, chooser.getAction());
        Intent send = chooser.getParcelableExtra(Intent.EXTRA_INTENT, Intent.class);
        assertEquals("text/html", send.getType());
        assertTrue((send.getFlags() & Intent.FLAG_GRANT_READ_URI_PERMISSION) != 0);
        Uri uri = send.getParcelableExtra(Intent.EXTRA_STREAM, Uri.class);
        assertEquals("content://org.readback.shell.share/record.html", uri.toString());
        try (ParcelFileDescriptor fd = provider().openFile(uri, "r"); FileInputStream in = new FileInputStream(fd.getFileDescriptor())) {
            assertEquals("<p>record", new String(in.readAllBytes()));
        }
    }

    @Test
    public void nothingOutsideTheJobsFolderIsShared() throws Exception {
        Files.writeString(new File(app.getFilesDir(), "secret").toPath(), "x");
        app.host.share("../secret");
        app.host.share("/etc/hosts");
        app.settle();
        assertNull(shadowOf(app).getNextStartedActivity());
        assertTrue(ShadowToast.getTextOfLatestToast().startsWith("Not saved"));
    }

    @Test
    public void theProviderLendsNothingElse() throws Exception {
        ShareProvider p = provider();
        File dir = ShareProvider.folder(app);
        assertTrue(dir.mkdirs());
        Files.writeString(new File(dir, "a.zip").toPath(), "PK");
        Files.writeString(new File(app.getCacheDir(), "other").toPath(), "x");
        for (String path : new String[] {"/../other", "/..%2Fother", "/", "/a.zip/", "/none", "/x/a.zip"}) {
            Uri u = Uri.parse("content://" + ShareProvider.AUTHORITY + path);
            if (!path.equals("/a.zip/")) {
                assertThrows(path, FileNotFoundException.class, () -> p.openFile(u, "r"));
            }
        }
        assertThrows(FileNotFoundException.class, () -> p.openFile(ShareProvider.uri("a.zip"), "rw"));
        assertThrows(UnsupportedOperationException.class, () -> p.delete(ShareProvider.uri("a.zip"), null, null));
        assertThrows(UnsupportedOperationException.class, () -> p.insert(ShareProvider.uri("a.zip"), null));
        assertThrows(UnsupportedOperationException.class, () -> p.update(ShareProvider.uri("a.zip"), null, null, null));
        assertEquals("application/zip", p.getType(ShareProvider.uri("a.zip")));
        try (Cursor c = p.query(ShareProvider.uri("a.zip"), null, null, null, null)) {
            assertTrue(c.moveToFirst());
            assertEquals("a.zip", c.getString(c.getColumnIndex(OpenableColumns.DISPLAY_NAME)));
            assertEquals(2, c.getLong(c.getColumnIndex(OpenableColumns.SIZE)));
        }
        try (Cursor c = p.query(ShareProvider.uri("none"), null, null, null, null)) {
            assertEquals(0, c.getCount());
        }
    }

    @Test
    public void savingAsksWhereAndWritesThere() throws Exception {
        activity.record("/api/jobs/j1/export.zip");
        Intent ask = shadowOf(activity).getNextStartedActivity();
        assertEquals(Intent.ACTION_CREATE_DOCUMENT, ask.getAction());
        assertEquals("readback-j1-export.zip", ask.getStringExtra(Intent.EXTRA_TITLE));
        assertEquals("application/zip", ask.getType());
        Uri place = Uri.parse("content://documents/1");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        shadowOf(app.getContentResolver()).registerOutputStream(place, out);
        shadowOf(activity).receiveResult(ask, Activity.RESULT_OK, new Intent().setData(place));
        app.settle();
        assertEquals("PK", out.toString().substring(0, 2));
        assertEquals("Saved.", ShadowToast.getTextOfLatestToast());
    }

    @Test
    public void thinkingBetterOfSavingWritesNothing() throws Exception {
        activity.record("/api/jobs/j1/export.zip");
        app.log.clear();
        shadowOf(activity).receiveResult(shadowOf(activity).getNextStartedActivity(), Activity.RESULT_CANCELED, null);
        app.settle();
        assertFalse(app.saw("GET /api/jobs"));
    }

    @Test
    public void savingSurvivesTheEndOfTheProcess() throws Exception {
        activity.record("/api/jobs/j1/export.zip");
        Bundle state = new Bundle();
        controller.saveInstanceState(state).pause().stop().destroy();
        MainActivity again = Robolectric.buildActivity(MainActivity.class).setup(state).get();
        Uri place = Uri.parse("content://documents/2");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        shadowOf(app.getContentResolver()).registerOutputStream(place, out);
        again.onActivityResult(Saver.CODE, Activity.RESULT_OK, new Intent().setData(place));
        app.settle();
        assertEquals("PK", out.toString().substring(0, 2));
    }

    @Test
    public void aRecordThatIsNotThereIsSaid() throws Exception {
        activity.record("/api/jobs/gone/export.zip");
        Uri place = Uri.parse("content://documents/3");
        shadowOf(app.getContentResolver()).registerOutputStream(place, new ByteArrayOutputStream());
        shadowOf(activity).receiveResult(shadowOf(activity).getNextStartedActivity(), Activity.RESULT_OK, new Intent().setData(place));
        app.settle();
        assertTrue(ShadowToast.getTextOfLatestToast().startsWith("Not saved"));
    }

    @Test
    public void namesAreMadeFromTheRecordsPath() {
        assertEquals("readback-j1-export.zip", Saver.name("/api/jobs/j1/export.zip"));
        assertEquals("readback-j1-transcript.html", Saver.name("/api/jobs/j1/transcript"));
        assertEquals("readback-j1-journal.jsonl", Saver.name("/api/jobs/j1/journal"));
    }
}
