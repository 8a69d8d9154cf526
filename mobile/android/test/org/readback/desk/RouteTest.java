package org.readback.desk;

import static org.junit.Assert.assertEquals;

import org.junit.Test;

/** Which microphone is listened to. */
public class RouteTest {
    private static int pick(int... types) {
        return Route.pick(types);
    }

    @Test
    public void aWireBeatsThePhonesOwn() {
        assertEquals(1, pick(Route.BUILT_IN, Route.WIRED_HEADSET));
        assertEquals(0, pick(Route.USB_HEADSET, Route.BUILT_IN));
        assertEquals(1, pick(Route.BUILT_IN, Route.USB_DEVICE));
        assertEquals(2, pick(Route.USB_DEVICE, Route.BUILT_IN, Route.WIRED_HEADSET));
    }

    @Test
    public void bluetoothIsLeftOffByChoice() {
        assertEquals(2, pick(Route.BLUETOOTH_SCO, Route.BLE_HEADSET, Route.BUILT_IN));
        assertEquals(-1, pick(Route.BLUETOOTH_SCO, Route.BLE_HEADSET));
    }

    @Test
    public void theFirstOfItsKindIsTaken() {
        assertEquals(0, pick(Route.BUILT_IN, Route.BUILT_IN));
    }

    @Test
    public void withoutAnyThePhoneChooses() {
        assertEquals(-1, pick());
        assertEquals(-1, pick(18, 25)); // telephony, remote submix
    }
}
