package org.readback.shell;

import static org.junit.Assert.assertEquals;
import static org.junit.Assert.assertTrue;

import android.content.ComponentName;
import android.content.Context;
import android.content.pm.PackageInfo;
import android.content.pm.PackageManager;
import android.content.pm.ServiceInfo;
import java.util.Arrays;
import java.util.TreeSet;
import org.junit.Test;
import org.junit.runner.RunWith;
import org.robolectric.RuntimeEnvironment;
import org.robolectric.annotation.Config;

/** What the manifest says, read back through the framework. */
@RunWith(ShellRunner.class)
@Config(sdk = {34, 35}, application = TestApp.class)
public class PackingTest {
    private final Context context = RuntimeEnvironment.getApplication();
    private final PackageManager packages = context.getPackageManager();

    @Test
    public void theWholeListOfPermissionsAndNoNetwork() throws Exception {
        PackageInfo p = packages.getPackageInfo(context.getPackageName(), PackageManager.GET_PERMISSIONS);
        assertEquals(new TreeSet<>(Arrays.asList(
                "android.permission.RECORD_AUDIO", "android.permission.CAMERA", "android.permission.FOREGROUND_SERVICE",
                "android.permission.FOREGROUND_SERVICE_MICROPHONE", "android.permission.POST_NOTIFICATIONS",
                "android.permission.VIBRATE", "android.permission.WAKE_LOCK")), new TreeSet<>(Arrays.asList(p.requestedPermissions)));
    }

    @Test
    public void theServiceIsOfTypeMicrophoneAndPrivate() throws Exception {
        ServiceInfo s = packages.getServiceInfo(new ComponentName(context, ListenService.class), 0);
        assertEquals(ServiceInfo.FOREGROUND_SERVICE_TYPE_MICROPHONE, s.getForegroundServiceType());
        assertTrue(!s.exported);
    }
}
