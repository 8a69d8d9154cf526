package org.readback.shell;

import android.content.Context;
import android.hardware.camera2.CameraAccessException;
import android.hardware.camera2.CameraCharacteristics;
import android.hardware.camera2.CameraManager;

/** The phone's lamp, for dark cellars. Needs no permission. */
final class PhoneTorch {
    private final CameraManager cameras;
    private boolean on;

    PhoneTorch(Context context) {
        cameras = context.getSystemService(CameraManager.class);
    }

    /** Switches the lamp; false when there is none or the camera has it. */
    boolean light(boolean want) {
        try {
            for (String id : cameras.getCameraIdList()) {
                if (Boolean.TRUE.equals(cameras.getCameraCharacteristics(id).get(CameraCharacteristics.FLASH_INFO_AVAILABLE))) {
                    cameras.setTorchMode(id, want);
                    on = want;
                    return true;
                }
            }
        } catch (CameraAccessException | IllegalArgumentException e) {
            return false;
        }
        return false;
    }

    boolean on() {
        return on;
    }
}
