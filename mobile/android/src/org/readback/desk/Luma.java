package org.readback.desk;

import java.nio.ByteBuffer;
import java.util.Arrays;

/** Brightness of a camera frame, packed: one byte a pixel, rows without padding; where it has colour, two planes of half the size follow. */
public final class Luma {
    public final int width;
    public final int height;
    public final byte[] pixels;

    private Luma(int width, int height, byte[] pixels) {
        this.width = width;
        this.height = height;
        this.pixels = pixels;
    }

    /**
     * Packs a plane as the camera gives it. The buffer's position is left alone. The last row may be shorter than the row
     * stride: cameras leave its padding out.
     */
    public static Luma pack(ByteBuffer plane, int width, int height, int rowStride, int pixelStride) {
        if (width <= 0 || height <= 0 || pixelStride <= 0 || rowStride < (width - 1) * pixelStride + 1) {
            throw new IllegalArgumentException("luma: " + width + "x" + height + " does not fit strides " + rowStride + ", " + pixelStride);
        }
        ByteBuffer in = plane.duplicate();
        int base = in.position();
        if (in.remaining() < (height - 1) * rowStride + (width - 1) * pixelStride + 1) {
            throw new IllegalArgumentException("luma: the plane has " + in.remaining() + " bytes, too few for " + width + "x" + height);
        }
        byte[] out = new byte[width * height];
        for (int y = 0; y < height; y++) {
            if (pixelStride == 1) {
                in.position(base + y * rowStride);
                in.get(out, y * width, width);
                continue;
            }
            for (int x = 0; x < width; x++) {
                out[y * width + x] = in.get(base + y * rowStride + x * pixelStride);
            }
        }
        return new Luma(width, height, out);
    }

    /** This brightness with its colour behind it: both planes are half as wide and high, rounded up. */
    public Luma coloured(Luma cb, Luma cr) {
        int size = ((width + 1) / 2) * ((height + 1) / 2);
        if (cb.pixels.length != size || cr.pixels.length != size) {
            throw new IllegalArgumentException("luma: colour of " + cb.pixels.length + " and " + cr.pixels.length + " bytes beside " + width + "x" + height);
        }
        byte[] all = Arrays.copyOf(pixels, pixels.length + 2 * size);
        System.arraycopy(cb.pixels, 0, all, pixels.length, size);
        System.arraycopy(cr.pixels, 0, all, pixels.length + size, size);
        return new Luma(width, height, all);
    }

    /** The same brightness turned clockwise by a multiple of 90 degrees: cameras lie across the phone. */
    public Luma turned(int degrees) {
        int quarter = Math.floorMod(degrees / 90, 4);
        if (quarter == 0) {
            return this;
        }
        int w = quarter == 2 ? width : height;
        int h = quarter == 2 ? height : width;
        byte[] out = new byte[pixels.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int to;
                switch (quarter) {
                    case 1:
                        to = x * w + (height - 1 - y);
                        break;
                    case 2:
                        to = (height - 1 - y) * w + (width - 1 - x);
                        break;
                    default:
                        to = (width - 1 - x) * w + y;
                }
                out[to] = pixels[y * width + x];
            }
        }
        return new Luma(w, h, out);
    }

    /** Chooses from the sizes a camera offers, as {width, height} pairs: the smallest that is at least so wide, else the widest. */
    public static int[] choose(int[][] sizes, int wide) {
        int[] best = null;
        for (int[] s : sizes) {
            if (best == null) {
                best = s;
                continue;
            }
            boolean enough = s[0] >= wide;
            boolean had = best[0] >= wide;
            boolean smaller = (long) s[0] * s[1] < (long) best[0] * best[1];
            if (enough != had ? enough : enough == smaller) {
                best = s;
            }
        }
        return best;
    }
}
