package org.readback.shell;

import android.content.Context;
import android.view.accessibility.AccessibilityManager;
import java.util.function.Consumer;

/** Watches whether a screen reader runs; then there is one voice, the reader's. */
final class ScreenReader {
    private final AccessibilityManager manager;
    private final AccessibilityManager.TouchExplorationStateChangeListener listener;

    ScreenReader(Context context, Consumer<Boolean> change) {
        manager = context.getSystemService(AccessibilityManager.class);
        listener = change::accept;
    }

    void start() {
        manager.addTouchExplorationStateChangeListener(listener);
        listener.onTouchExplorationStateChanged(on());
    }

    void stop() {
        manager.removeTouchExplorationStateChangeListener(listener);
    }

    boolean on() {
        return manager.isEnabled() && manager.isTouchExplorationEnabled();
    }
}
