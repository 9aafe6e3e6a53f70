// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Smooths a plane but keeps the edges of another one.
 *
 * <p>Source: He, Sun and Tang (2013), Guided image filtering, IEEE TPAMI 35(6):1397-1409.
 */
final class GuidedFilter {
  private final int width;
  private final int height;
  private final int reach;
  private final float strength;

  /**
   * Sets up a filter.
   *
   * @param width px
   * @param height px
   * @param reach half side of its squares, px
   * @param strength variance of the guide under which a square is flat, in the guide's units
   *     squared
   */
  GuidedFilter(int width, int height, int reach, float strength) {
    this.width = width;
    this.height = height;
    this.reach = reach;
    this.strength = strength;
  }

  float[] smooth(float[] guide, float[] plane) {
    float[] guideMean = mean(guide);
    float[] planeMean = mean(plane);
    float[] slope = mean(product(guide, plane));
    float[] offset = mean(product(guide, guide));
    for (int i = 0; i < slope.length; i++) {
      float variance = offset[i] - guideMean[i] * guideMean[i];
      slope[i] = (slope[i] - guideMean[i] * planeMean[i]) / (variance + strength);
      offset[i] = planeMean[i] - slope[i] * guideMean[i];
    }
    float[] slopes = mean(slope);
    float[] smooth = mean(offset);
    for (int i = 0; i < smooth.length; i++) {
      smooth[i] += slopes[i] * guide[i];
    }
    return smooth;
  }

  private float[] mean(float[] values) {
    return BoxMean.of(values, width, height, reach);
  }

  private static float[] product(float[] a, float[] b) {
    float[] product = new float[a.length];
    for (int i = 0; i < a.length; i++) {
      product[i] = a[i] * b[i];
    }
    return product;
  }
}
