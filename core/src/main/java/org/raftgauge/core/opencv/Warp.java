// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import org.raftgauge.core.pixels.LightLevels;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Redraws a picture by a map of source places, mixing pixels in linear light.
 *
 * <p>Source: OpenCV 4.9 {@code remap} (bilinear, source places to 1/32 px) and {@code resize}
 * ({@code INTER_AREA}: mean over the pixel).
 */
public final class Warp {

  /** Where each pixel of a new picture comes from; not a record: it owns arrays, handed over. */
  public static final class Sources {
    private final int width;
    private final int height;
    private final float[] xPx;
    private final float[] yPx;

    private Sources(int width, int height, float[] xPx, float[] yPx) {
      this.width = width;
      this.height = height;
      this.xPx = xPx;
      this.yPx = yPx;
    }

    /**
     * Wraps source places without copying them.
     *
     * @param width of the new picture, px
     * @param height of the new picture, px
     * @param xPx source columns, length {@code width * height}; outside the source gives black
     * @param yPx source rows, same length
     * @return the map
     */
    public static Sources of(int width, int height, float[] xPx, float[] yPx) {
      if (xPx.length != width * height || yPx.length != width * height) {
        throw new IllegalArgumentException(
            "map lengths must be " + width * height + ", got " + xPx.length + ", " + yPx.length);
      }
      return new Sources(width, height, xPx, yPx);
    }

    /** Returns the part of a picture that is read, at least one pixel. */
    private Part part(RgbImage image) {
      int[] columns = range(xPx, image.width());
      int[] rows = range(yPx, image.height());
      return new Part(columns[0], rows[0], columns[1] - columns[0], rows[1] - rows[0]);
    }

    /** Returns the first place along a side that is read and the one after the last. */
    private static int[] range(float[] places, int side) {
      float least = Float.MAX_VALUE;
      float most = -Float.MAX_VALUE;
      for (float place : places) {
        least = Math.min(least, place);
        most = Math.max(most, place);
      }
      int from = (int) Math.max(0, Math.min(side - 1.0, Math.floor(least) - 1));
      int to = (int) Math.max(from + 1.0, Math.min(side, Math.ceil(most) + 2));
      return new int[] {from, to};
    }

    /** Returns places counted from another; whole numbers are taken away without rounding. */
    private static float[] from(int first, float[] places) {
      float[] from = new float[places.length];
      for (int i = 0; i < from.length; i++) {
        from[i] = places[i] - first;
      }
      return from;
    }
  }

  /** A part of a picture, px. */
  private record Part(int left, int top, int width, int height) {

    /** Returns the light in it, three levels a pixel. */
    private short[] light(RgbImage image) {
      short[] levels = new short[3 * width * height];
      for (int y = 0; y < height; y++) {
        int first = 3 * ((top + y) * image.width() + left);
        LightLevels.ofCodes(image.rgb(), first, levels, 3 * y * width, 3 * width);
      }
      return levels;
    }
  }

  private Warp() {}

  /**
   * Redraws a picture, bilinear between source pixels.
   *
   * @param image the source
   * @param sources where each pixel comes from
   * @param shrink draws that many pixels a side per pixel of the result and averages them, 1 or
   *     more; must divide the map's width and height
   * @return the new picture, black outside the source
   */
  public static RgbImage remap(RgbImage image, Sources sources, int shrink) {
    try (MatScope scope = new MatScope()) {
      Part part = sources.part(image);
      Mat light = scope.ofThree(part.width, part.height, part.light(image));
      Mat drawn = scope.mat();
      Imgproc.remap(
          light,
          drawn,
          scope.of(sources.width, sources.height, Sources.from(part.left, sources.xPx)),
          scope.of(sources.width, sources.height, Sources.from(part.top, sources.yPx)),
          Imgproc.INTER_LINEAR,
          Core.BORDER_CONSTANT);
      int width = sources.width / shrink;
      int height = sources.height / shrink;
      if (shrink > 1) {
        Mat mean = scope.mat();
        Imgproc.resize(drawn, mean, new Size(width, height), 0, 0, Imgproc.INTER_AREA);
        drawn = mean;
      }
      return RgbImage.of(width, height, LightLevels.coded(MatScope.shorts(drawn)));
    }
  }
}
