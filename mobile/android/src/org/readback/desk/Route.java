package org.readback.desk;

/**
 * Which microphone is listened to. One at the mouth by wire is the best; else the phone's own. Bluetooth is left off by choice: a Bluetooth
 * microphone gives half of the band that the recogniser was made for, comes late, and wants a permission more.
 */
public final class Route {
    /** Values of android.media.AudioDeviceInfo. */
    public static final int BUILT_IN = 15;
    public static final int WIRED_HEADSET = 3;
    public static final int USB_DEVICE = 11;
    public static final int USB_HEADSET = 22;
    public static final int BLUETOOTH_SCO = 7;
    public static final int BLE_HEADSET = 26;

    private static final int[] ORDER = {WIRED_HEADSET, USB_HEADSET, USB_DEVICE, BUILT_IN};

    private Route() {
    }

    /** The place in the list of the microphone to take, or -1: none of them is wanted, the phone may choose. */
    public static int pick(int[] types) {
        for (int want : ORDER) {
            for (int i = 0; i < types.length; i++) {
                if (types[i] == want) {
                    return i;
                }
            }
        }
        return -1;
    }
}
