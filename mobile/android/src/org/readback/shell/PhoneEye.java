package org.readback.shell;

import android.content.Context;
import android.graphics.ImageFormat;
import android.hardware.camera2.CameraAccessException;
import android.hardware.camera2.CameraCaptureSession;
import android.hardware.camera2.CameraCharacteristics;
import android.hardware.camera2.CameraDevice;
import android.hardware.camera2.CameraManager;
import android.hardware.camera2.CaptureRequest;
import android.hardware.camera2.CaptureResult;
import android.hardware.camera2.TotalCaptureResult;
import android.hardware.camera2.params.StreamConfigurationMap;
import android.media.Image;
import android.media.ImageReader;
import android.os.Handler;
import android.os.HandlerThread;
import android.util.Size;
import android.view.Surface;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Collections;
import org.readback.desk.Luma;
import org.readback.desk.Phone;
import org.readback.desk.Safely;

/**
 * The back camera: one upright JPEG picture, or a run of frames. Exposure settles by itself and is locked on
 * request, so that a blinking light is not chased by the camera. The camera is open only while it is used.
 */
final class PhoneEye implements Phone.Eye {
    static final int PHOTO_WIDTH = 1920;
    private static final long SETTLE = 700; // ms for focus and exposure

    private final CameraManager cameras;
    private final Safely safely;
    private final HandlerThread thread = new HandlerThread("eye");
    private Handler handler;

    PhoneEye(Context context, Safely safely) {
        this.cameras = context.getSystemService(CameraManager.class);
        this.safely = safely;
    }

    @Override
    public void take(Shot then) {
        run(ImageFormat.JPEG, PHOTO_WIDTH, new Use() {
            @Override
            public boolean image(Image image, int turn, long exposure) {
                ByteBuffer b = image.getPlanes()[0].getBuffer();
                byte[] jpeg = new byte[b.remaining()];
                b.get(jpeg);
                then.jpeg(Upright.turn(jpeg));
                return false;
            }

            @Override
            public void failed() {
                then.jpeg(null);
            }
        }, false);
    }

    @Override
    public void watch(int wide, boolean steady, Frames frames, Runnable failed) {
        run(ImageFormat.YUV_420_888, wide, new Use() {
            @Override
            public boolean image(Image image, int turn, long exposure) {
                Luma[] p = new Luma[steady ? 3 : 1];
                for (int i = 0; i < p.length; i++) {
                    Image.Plane plane = image.getPlanes()[i];
                    int by = i == 0 ? 1 : 2; // colour has half the size
                    p[i] = Luma.pack(plane.getBuffer(), (image.getWidth() + by - 1) / by, (image.getHeight() + by - 1) / by, plane.getRowStride(), plane.getPixelStride()).turned(turn);
                }
                return frames.frame(steady ? p[0].coloured(p[1], p[2]) : p[0], image.getTimestamp(), exposure);
            }

            @Override
            public void failed() {
                failed.run();
            }
        }, steady);
    }

    private interface Use {
        /** Takes a picture that stands upright when turned clockwise by so many degrees; false: that was the last one wanted. */
        boolean image(Image image, int turn, long exposure);

        void failed();
    }

    private synchronized Handler handler() {
        if (handler == null) {
            thread.start();
            handler = new Handler(thread.getLooper());
        }
        return handler;
    }

    private void run(int format, int width, Use use, boolean lock) {
        Handler h = handler();
        try {
            String id = back();
            if (id == null) {
                use.failed();
                return;
            }
            CameraCharacteristics about = cameras.getCameraCharacteristics(id);
            StreamConfigurationMap map = about.get(CameraCharacteristics.SCALER_STREAM_CONFIGURATION_MAP);
            Size[] sizes = map == null ? null : map.getOutputSizes(format);
            if (sizes == null || sizes.length == 0) {
                use.failed();
                return;
            }
            int[] size = Luma.choose(Arrays.stream(sizes).map(s -> new int[] {s.getWidth(), s.getHeight()}).toArray(int[][]::new), width);
            Integer turn = about.get(CameraCharacteristics.SENSOR_ORIENTATION);
            new Run(format, size, turn == null ? 0 : turn, lock, use, h).open(id);
        } catch (CameraAccessException | SecurityException | IllegalArgumentException e) {
            use.failed();
        }
    }

    private String back() throws CameraAccessException {
        for (String id : cameras.getCameraIdList()) {
            Integer facing = cameras.getCameraCharacteristics(id).get(CameraCharacteristics.LENS_FACING);
            if (facing != null && facing == CameraCharacteristics.LENS_FACING_BACK) {
                return id;
            }
        }
        return null;
    }

    /** One use of the camera, from opening to closing. Everything happens on the camera's thread. */
    private final class Run extends CameraDevice.StateCallback {
        private final int format;
        private final int turn;
        private final boolean lock;
        private final Use use;
        private final Handler h;
        private final ImageReader reader;
        private CameraDevice device;
        private boolean over;
        private long exposure; // of the newest picture, ns, 0 when not known
        private long settled = Long.MAX_VALUE; // System.nanoTime from which pictures count

        Run(int format, int[] size, int turn, boolean lock, Use use, Handler h) {
            this.format = format;
            this.turn = turn;
            this.lock = lock;
            this.use = use;
            this.h = h;
            reader = ImageReader.newInstance(size[0], size[1], format, 3);
            reader.setOnImageAvailableListener(r -> safely.run(() -> image(r)), h);
        }

        void open(String id) throws CameraAccessException {
            cameras.openCamera(id, this, h);
        }

        @Override
        public void onOpened(CameraDevice d) {
            device = d;
            Surface out = reader.getSurface();
            try {
                d.createCaptureSession(Collections.singletonList(out), new CameraCaptureSession.StateCallback() {
                    @Override
                    public void onConfigured(CameraCaptureSession s) {
                        if (!safely.run(() -> begin(s, out))) {
                            end(true);
                        }
                    }

                    @Override
                    public void onConfigureFailed(CameraCaptureSession s) {
                        end(true);
                    }
                }, h);
            } catch (CameraAccessException | IllegalStateException e) {
                end(true);
            }
        }

        private void begin(CameraCaptureSession s, Surface out) throws CameraAccessException {
            boolean photo = format == ImageFormat.JPEG;
            // A picture is taken as a running capture too, so that focus and exposure have settled by the time one is kept.
            CaptureRequest.Builder b = device.createCaptureRequest(photo ? CameraDevice.TEMPLATE_STILL_CAPTURE : CameraDevice.TEMPLATE_PREVIEW);
            b.addTarget(out);
            b.set(CaptureRequest.CONTROL_AF_MODE, CaptureRequest.CONTROL_AF_MODE_CONTINUOUS_PICTURE);
            if (photo) {
                b.set(CaptureRequest.JPEG_ORIENTATION, turn);
            }
            s.setRepeatingRequest(b.build(), exposed, h);
            settled = System.nanoTime() + SETTLE * 1_000_000;
            if (lock) {
                h.postDelayed(() -> safely.run(() -> {
                    if (!over) {
                        b.set(CaptureRequest.CONTROL_AE_LOCK, true);
                        b.set(CaptureRequest.CONTROL_AWB_LOCK, true);
                        s.setRepeatingRequest(b.build(), exposed, h);
                    }
                }), SETTLE);
            }
        }

        private final CameraCaptureSession.CaptureCallback exposed = new CameraCaptureSession.CaptureCallback() {
            @Override
            public void onCaptureCompleted(CameraCaptureSession s, CaptureRequest asked, TotalCaptureResult result) {
                Long ns = result.get(CaptureResult.SENSOR_EXPOSURE_TIME);
                exposure = ns == null ? 0 : ns;
            }
        };

        private void image(ImageReader r) {
            Image image = r.acquireLatestImage();
            if (image == null) {
                return;
            }
            boolean more = true;
            try {
                if (!over && System.nanoTime() >= settled) {
                    more = use.image(image, turn, exposure);
                }
            } finally {
                image.close();
            }
            if (!more) {
                end(false);
            }
        }

        @Override
        public void onDisconnected(CameraDevice d) {
            device = d;
            end(true);
        }

        @Override
        public void onError(CameraDevice d, int error) {
            device = d;
            end(true);
        }

        private void end(boolean failed) {
            if (over) {
                return;
            }
            over = true;
            if (device != null) {
                device.close();
            }
            reader.close();
            if (failed) {
                safely.run(use::failed);
            }
        }
    }
}
