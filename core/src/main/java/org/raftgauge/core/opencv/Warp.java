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
 * <p>Source: OpenCV 4.9 {@code LUT} to levels of light, {@code remap} (bilinear, source places to
 * 1/32 px) and {@code resize} ({@code INTER_AREA}: mean over the pixel).
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

    /** Returns the first row that is read and the row after the last, within a picture. */
    private int[] rows(int height) {
      float least = Float.MAX_VALUE;
      float most = -Float.MAX_VALUE;
      for (float y : yPx) {
        least = Math.min(least, y);
        most = Math.max(most, y);
      }
      int from = (int) Math.max(0, Math.min(height - 1.0, Math.floor(least) - 1));
      int to = (int) Math.max(from + 1.0, Math.min(height, Math.ceil(most) + 2));
      return new int[] {from, to};
    }

    /** Returns the rows counted from another; whole numbers are taken away without rounding. */
    private float[] yBelow(int row) {
      if (row == 0) {
        return yPx;
      }
      float[] below = new float[yPx.length];
      for (int i = 0; i < below.length; i++) {
        below[i] = yPx[i] - row;
      }
      return below;
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
      int[] rows = sources.rows(image.height());
      Mat light = scope.mat();
      Core.LUT(
          scope.ofRows(image, rows[0], rows[1]), scope.of(256, 1, LightLevels.ofCodes()), light);
      Mat drawn = scope.mat();
      Imgproc.remap(
          light,
          drawn,
          scope.of(sources.width, sources.height, sources.xPx),
          scope.of(sources.width, sources.height, sources.yBelow(rows[0])),
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
