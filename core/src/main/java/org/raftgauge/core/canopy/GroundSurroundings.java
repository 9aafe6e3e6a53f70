// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import org.raftgauge.core.book.TaughtGround;
import org.raftgauge.core.pixels.Srgb;

/**
 * What a taught network weighs at a pixel of open ground: the {@link GroundEvidence}, and how
 * lightness, greenness and contrast go on about it, in the picture's full sharpness: detail at five
 * scales, spread at three, and ridges and valleys at two, by which thin leaves are told from rims.
 *
 * <p>Works through the picture in bands of rows, so that its planes never stand in memory whole.
 */
final class GroundSurroundings {
  /** Half sides of the squares that detail is read from, px; each less the next larger. */
  private static final int[] DETAIL_PX = {1, 2, 4, 8, 16};

  /** Half sides of the squares that mean contrast and spreads are read from, px. */
  private static final int[] SPREAD_PX = {2, 5, 10};

  /** Half sides of the squares, and steps between them, that ridges are read from, px. */
  private static final int[] RIDGE_PX = {1, 2};

  /** Rows of a band. */
  private static final int BAND = 96;

  /** Rows about a band that its terms depend on: the largest square's. */
  private static final int MARGIN = 16;

  private final int width;
  private final int height;
  private final GroundEvidence evidence;
  private final float[] odds;
  private final float[] light;
  private final float[] green;
  private final float meanLight;
  private final float spreadLight;

  /** Does something with the terms of a pixel; they are written over at the next one. */
  @FunctionalInterface
  interface EachPixel {
    void see(int i, float[] terms);
  }

  /**
   * Sets up.
   *
   * @param box the picture
   * @param evidence of its pixels
   * @param odds log odds of leaf that a taught model gives each pixel's colour
   */
  GroundSurroundings(SeenBox box, GroundEvidence evidence, float[] odds) {
    this.width = box.width();
    this.height = box.height();
    this.evidence = evidence;
    this.odds = odds;
    this.light = new float[odds.length];
    this.green = new float[odds.length];
    byte[] rgb = box.rgb();
    for (int i = 0; i < light.length; i++) {
      Cielab lab =
          Cielab.ofLinear(
              Srgb.linear(rgb[3 * i]), Srgb.linear(rgb[3 * i + 1]), Srgb.linear(rgb[3 * i + 2]));
      light[i] = (float) lab.l();
      green[i] = (float) -lab.a();
    }
    double[] moments = groundLight(box.seen());
    this.meanLight = (float) moments[0];
    this.spreadLight = (float) moments[1];
  }

  /** Mean and standard deviation of the ground's lightness; 0 and 1 where none is seen. */
  private double[] groundLight(boolean[] seen) {
    double weights = 0;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < light.length; i++) {
      double weight = seen[i] ? evidence.ground(i) : 0;
      weights += weight;
      sum += weight * light[i];
      squares += weight * light[i] * light[i];
    }
    if (weights < 1) {
      return new double[] {0, 1};
    }
    double mean = sum / weights;
    return new double[] {mean, Math.sqrt(Math.max(1, squares / weights - mean * mean))};
  }

  /** Visits the wanted pixels, row by row. */
  void each(boolean[] wanted, EachPixel then) {
    float[] terms = new float[TaughtGround.TERMS];
    for (int top = 0; top < height; top += BAND) {
      int bottom = Math.min(height, top + BAND);
      int from = Math.max(0, top - MARGIN);
      if (!any(wanted, top * width, bottom * width)) {
        continue;
      }
      float[][] planes = new Band(from, Math.min(height, bottom + MARGIN)).planes();
      for (int i = top * width; i < bottom * width; i++) {
        if (wanted[i]) {
          int at = evidence.plainAt(i, terms);
          terms[at++] = (light[i] - meanLight) / spreadLight;
          for (float[] plane : planes) {
            terms[at++] = plane[i - from * width];
          }
          terms[at] = odds[i];
          then.see(i, terms);
        }
      }
    }
  }

  private static boolean any(boolean[] wanted, int from, int to) {
    for (int i = from; i < to; i++) {
      if (wanted[i]) {
        return true;
      }
    }
    return false;
  }

  /** Some rows of the picture, as a picture of their own. */
  private final class Band {
    private final int rows;
    private final float[] bandLight;
    private final float[] bandGreen;
    private final float[] bandContrast;

    Band(int from, int to) {
      this.rows = to - from;
      this.bandLight = Arrays.copyOfRange(light, from * width, to * width);
      this.bandGreen = Arrays.copyOfRange(green, from * width, to * width);
      this.bandContrast = Arrays.copyOfRange(evidence.contrast(), from * width, to * width);
    }

    /** Returns its planes of terms, in their order. */
    float[][] planes() {
      float[][] planes = new float[TaughtGround.TERMS][];
      int n = detail(bandLight, planes, 0);
      n = detail(bandGreen, planes, n);
      for (int reach : SPREAD_PX) {
        planes[n++] = mean(bandContrast, reach);
      }
      for (int reach : SPREAD_PX) {
        planes[n++] = spread(bandLight, reach);
        planes[n++] = spread(bandGreen, reach);
      }
      n = ridges(bandLight, planes, n);
      n = ridges(bandGreen, planes, n);
      return Arrays.copyOf(planes, n);
    }

    private float[] mean(float[] values, int reach) {
      return BoxMean.of(values, width, rows, reach);
    }

    /** Writes a plane's detail from fine to coarse, and last its coarsest mean. */
    private int detail(float[] values, float[][] planes, int at) {
      int n = at;
      float[] finer = values;
      for (int reach : DETAIL_PX) {
        float[] coarser = mean(values, reach);
        float[] detail = new float[values.length];
        for (int i = 0; i < detail.length; i++) {
          detail[i] = finer[i] - coarser[i];
        }
        planes[n++] = detail;
        finer = coarser;
      }
      planes[n++] = finer;
      return n;
    }

    private float[] spread(float[] values, int reach) {
      float[] squares = new float[values.length];
      for (int i = 0; i < squares.length; i++) {
        squares[i] = values[i] * values[i];
      }
      float[] spread = mean(squares, reach);
      float[] mean = mean(values, reach);
      for (int i = 0; i < spread.length; i++) {
        spread[i] = (float) Math.sqrt(Math.max(0, spread[i] - mean[i] * mean[i]));
      }
      return spread;
    }

    /** Writes least and most curvature of a plane at each scale. */
    private int ridges(float[] values, float[][] planes, int at) {
      int n = at;
      for (int step : RIDGE_PX) {
        Curvature curvature = new Curvature(mean(values, step), width, step);
        planes[n++] = curvature.least();
        planes[n++] = curvature.most();
      }
      return n;
    }
  }
}
