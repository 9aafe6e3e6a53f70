// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Tells leaves from stains: keeps those parts of a mask that rise over what is about them and have
 * a crisp edge. Moss, algae and stained soil rise little and fade out.
 */
final class CrispParts {
  /** Smaller parts are specks. */
  private static final int LEAST_PX = 12;

  /** Contrast by which a part stands out from what is about it: one threshold. */
  private static final double LEAST_RISE = 1.0;

  /** Usual step of a* along the part's rim, a pixel; blurred thin leaves have little more. */
  private static final double LEAST_EDGE = 1.3;

  /** What is about a part is looked at this far away: wider than a rim, smaller than a plant. */
  private static final int ABOUT_PX = 10;

  private final int width;
  private final int height;
  private final float[] contrast;
  private final double threshold;

  /**
   * Sets up the judgement of a picture.
   *
   * @param width px
   * @param height px
   * @param contrast of each pixel, -1..4
   * @param threshold a* of a contrast of 1
   */
  CrispParts(int width, int height, float[] contrast, double threshold) {
    this.width = width;
    this.height = height;
    this.contrast = contrast;
    this.threshold = threshold;
  }

  /** Returns the parts of {@code core} that are leaf. */
  boolean[] keep(boolean[] core) {
    Parts parts = Parts.alsoDiagonal(core, width, height);
    double[] top = top(parts);
    double[] about = sums(parts, about(core));
    double[] edge = edge(parts);
    boolean[] good = new boolean[parts.count()];
    for (int p = 0; p < good.length; p++) {
      good[p] =
          parts.size(p) >= LEAST_PX
              && top[p] - about[p] / parts.size(p) > LEAST_RISE
              && edge[p] > LEAST_EDGE;
    }
    boolean[] kept = new boolean[core.length];
    for (int i = 0; i < core.length; i++) {
      kept[i] = parts.label(i) >= 0 && good[parts.label(i)];
    }
    return kept;
  }

  private static double[] sums(Parts parts, float[] values) {
    double[] sums = new double[parts.count()];
    for (int i = 0; i < values.length; i++) {
      if (parts.label(i) >= 0) {
        sums[parts.label(i)] += values[i];
      }
    }
    return sums;
  }

  /** Mean contrast of each part's pixels above its own mean; the mean of a part that is flat. */
  private double[] top(Parts parts) {
    double[] mean = sums(parts, contrast);
    for (int p = 0; p < mean.length; p++) {
      mean[p] /= parts.size(p);
    }
    double[] top = new double[mean.length];
    int[] n = new int[mean.length];
    for (int i = 0; i < contrast.length; i++) {
      int part = parts.label(i);
      if (part >= 0 && contrast[i] > mean[part]) {
        top[part] += contrast[i];
        n[part]++;
      }
    }
    for (int p = 0; p < top.length; p++) {
      top[p] = n[p] == 0 ? mean[p] : top[p] / n[p];
    }
    return top;
  }

  /** Mean contrast of what lies about each pixel and is in no part. */
  private float[] about(boolean[] core) {
    float[] open = new float[core.length];
    float[] light = new float[core.length];
    for (int i = 0; i < core.length; i++) {
      open[i] = core[i] ? 0 : 1;
      light[i] = core[i] ? 0 : contrast[i];
    }
    float[] n = BoxMean.of(open, width, height, ABOUT_PX);
    float[] about = BoxMean.of(light, width, height, ABOUT_PX);
    for (int i = 0; i < about.length; i++) {
      about[i] /= n[i] + 0.05f;
    }
    return about;
  }

  /** Mean step of each part's rim, a* a pixel; a part that has none is the whole picture. */
  private double[] edge(Parts parts) {
    Slope slope = new Slope(width, height, contrast);
    double[] sum = new double[parts.count()];
    int[] n = new int[parts.count()];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int part = parts.label(y * width + x);
        if (part >= 0 && isRim(parts, x, y)) {
          sum[part] += slope.at(x, y);
          n[part]++;
        }
      }
    }
    for (int p = 0; p < sum.length; p++) {
      sum[p] = n[p] == 0 ? Double.MAX_VALUE : threshold * sum[p] / n[p];
    }
    return sum;
  }

  private boolean isRim(Parts parts, int x, int y) {
    for (int v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++) {
      for (int u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
        if (parts.label(v * width + u) < 0) {
          return true;
        }
      }
    }
    return false;
  }
}
