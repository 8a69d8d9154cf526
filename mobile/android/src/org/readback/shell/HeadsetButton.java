package org.readback.shell;

import android.content.Context;
import android.content.Intent;
import android.media.session.MediaSession;
import android.media.session.PlaybackState;
import android.os.Handler;
import android.view.KeyEvent;
import org.readback.desk.Desk;
import org.readback.desk.Keys;
import org.readback.desk.Safely;

/** The headset's button, through a media session that is active only while a job runs. */
final class HeadsetButton {
    private final MediaSession session;
    private final Keys keys = new Keys();
    private final Desk desk;
    private final Handler main;

    HeadsetButton(Context context, Desk desk, Handler main, Safely safely) {
        this.desk = desk;
        this.main = main;
        session = new MediaSession(context, "readback");
        session.setCallback(new MediaSession.Callback() {
            @Override
            public boolean onMediaButtonEvent(Intent intent) {
                KeyEvent e = intent.getParcelableExtra(Intent.EXTRA_KEY_EVENT);
                return e != null && safely.run(() -> key(e));
            }
        }, main);
        // The system sends the button to the session that plays; ours "plays" the dialogue.
        session.setPlaybackState(new PlaybackState.Builder().setActions(PlaybackState.ACTION_PLAY_PAUSE)
                .setState(PlaybackState.STATE_PLAYING, 0, 1).build());
    }

    void active(boolean on) {
        session.setActive(on);
    }

    boolean active() {
        return session.isActive();
    }

    /** One key event of the headset. Main thread. */
    void key(KeyEvent e) {
        String media = Keys.media(e.getKeyCode());
        if (media != null) {
            if (e.getAction() == KeyEvent.ACTION_UP) {
                desk.command(media);
            }
            return;
        }
        if (!Keys.headset(e.getKeyCode()) || e.getAction() != KeyEvent.ACTION_UP) {
            return;
        }
        boolean speaking = desk.mouth().speaking();
        long at = e.getEventTime();
        Keys.Press p = keys.up(at, at - e.getDownTime());
        if (p != Keys.Press.SINGLE_LATER) {
            desk.command(Keys.command(p, speaking));
            return;
        }
        main.postDelayed(() -> {
            if (keys.single(at)) {
                desk.command(Keys.command(p, speaking));
            }
        }, Keys.DOUBLE);
    }

    void close() {
        session.release();
    }
}
