package org.readback.shell;

import android.webkit.GeolocationPermissions;
import android.webkit.PermissionRequest;
import android.webkit.WebChromeClient;

/** Refuses the page every sense: microphone and camera belong to the shell. */
final class PageChrome extends WebChromeClient {
    @Override
    public void onPermissionRequest(PermissionRequest request) {
        request.deny();
    }

    @Override
    public void onGeolocationPermissionsShowPrompt(String origin, GeolocationPermissions.Callback callback) {
        callback.invoke(origin, false, false);
    }
}
