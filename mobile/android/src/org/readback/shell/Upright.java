package org.readback.shell;

import android.graphics.Bitmap;
import android.graphics.BitmapFactory;
import android.graphics.Matrix;
import android.media.ExifInterface;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;

/**
 * Turns a picture by its orientation mark. The core strips every mark from a picture, also this one, because the others tell
 * place and owner; so the pixels themselves must stand upright.
 */
final class Upright {
    private static final int QUALITY = 90;

    private Upright() {
    }

    /** The same picture upright; unchanged when it stands already or its mark cannot be read. */
    static byte[] turn(byte[] jpeg) {
        int degrees = degrees(jpeg);
        if (degrees == 0) {
            return jpeg;
        }
        Bitmap in = BitmapFactory.decodeByteArray(jpeg, 0, jpeg.length);
        if (in == null) {
            return jpeg;
        }
        Matrix m = new Matrix();
        m.postRotate(degrees);
        Bitmap out = Bitmap.createBitmap(in, 0, 0, in.getWidth(), in.getHeight(), m, true);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        out.compress(Bitmap.CompressFormat.JPEG, QUALITY, bytes);
        return bytes.toByteArray();
    }

    static int degrees(byte[] jpeg) {
        try {
            switch (new ExifInterface(new ByteArrayInputStream(jpeg)).getAttributeInt(ExifInterface.TAG_ORIENTATION, ExifInterface.ORIENTATION_NORMAL)) {
                case ExifInterface.ORIENTATION_ROTATE_90: return 90;
                case ExifInterface.ORIENTATION_ROTATE_180: return 180;
                case ExifInterface.ORIENTATION_ROTATE_270: return 270;
                default: return 0;
            }
        } catch (IOException e) {
            return 0;
        }
    }
}
