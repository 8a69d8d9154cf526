package org.readback.shell;

import android.app.Notification;
import android.app.NotificationChannel;
import android.app.NotificationManager;
import android.app.PendingIntent;
import android.app.Service;
import android.content.Intent;
import android.content.pm.ServiceInfo;
import android.os.Build;
import android.os.IBinder;

/**
 * Keeps the process and its microphone alive with the screen off, and says so by a notice that also stops it. It holds no
 * sound and no state. When the phone ends the process it is not started again: the person opens the app and the job
 * goes on from its record.
 */
public class ListenService extends Service {
    static final String CHANNEL = "listening";
    static final int NOTICE = 1;
    static final String STOP = "org.readback.shell.STOP";

    @Override
    public void onCreate() {
        super.onCreate();
        NotificationChannel c = new NotificationChannel(CHANNEL, getString(R.string.listen_channel), NotificationManager.IMPORTANCE_LOW);
        c.setSound(null, null);
        getSystemService(NotificationManager.class).createNotificationChannel(c);
    }

    @Override
    public int onStartCommand(Intent intent, int flags, int startId) {
        ShellApp app = (ShellApp) getApplication();
        try {
            foreground(notice());
        } catch (IllegalStateException | SecurityException e) {
            // The app went behind, or the permission away, while this was starting: the phone would give silence from now on.
            app.desk().deafen();
            stopSelf();
            return START_NOT_STICKY;
        }
        if (intent != null && STOP.equals(intent.getAction())) {
            app.desk().deafen();
        }
        if (!app.noticeStands()) {
            stopSelf(); // it was called off while it was starting
        }
        return START_NOT_STICKY;
    }

    /** Comes to the foreground with the one type that the manifest declares; from API 34 on the phone wants it said. */
    void foreground(Notification n) {
        if (Build.VERSION.SDK_INT >= 30) {
            startForeground(NOTICE, n, ServiceInfo.FOREGROUND_SERVICE_TYPE_MICROPHONE);
        } else {
            startForeground(NOTICE, n);
        }
    }

    /** The person swiped the app away: nobody is listened to any more. The job stands in its record. */
    @Override
    public void onTaskRemoved(Intent root) {
        ((ShellApp) getApplication()).desk().deafen();
        stopSelf();
    }

    @Override
    public void onDestroy() {
        ((ShellApp) getApplication()).noticeGone();
        super.onDestroy();
    }

    private Notification notice() {
        PendingIntent open = PendingIntent.getActivity(this, 0, new Intent(this, MainActivity.class), PendingIntent.FLAG_IMMUTABLE);
        PendingIntent stop = PendingIntent.getService(this, 1, new Intent(this, ListenService.class).setAction(STOP), PendingIntent.FLAG_IMMUTABLE);
        return new Notification.Builder(this, CHANNEL)
                .setSmallIcon(R.drawable.listening)
                .setContentTitle(getString(R.string.listen_title))
                .setContentText(getString(R.string.listen_text))
                .setContentIntent(open)
                .setOngoing(true)
                .setVisibility(Notification.VISIBILITY_PUBLIC)
                .addAction(new Notification.Action.Builder(null, getString(R.string.listen_stop), stop).build())
                .build();
    }

    @Override
    public IBinder onBind(Intent intent) {
        return null;
    }
}
