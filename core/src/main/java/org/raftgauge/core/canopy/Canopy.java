// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * The canopy of a deck picture: how much of each pixel is leaf, and the light it was judged in.
 * Owns its array; read only.
 */
public final class Canopy {
  private final int width;
  private final int height;
  private final byte[] coverage;
  private final EvenedLight light;
  private final double threshold;
  private final double doubtFraction;

  Canopy(int width, int height, byte[] coverage, EvenedLight light, double[] thresholdAndDoubt) {
    this.width = width;
    this.height = height;
    this.coverage = coverage;
    this.light = light;
    this.threshold = thresholdAndDoubt[0];
    this.doubtFraction = thresholdAndDoubt[1];
  }

  /** Returns the width in px. */
  public int width() {
    return width;
  }

  /** Returns the height in px. */
  public int height() {
    return height;
  }

  /** Returns the coverage of each pixel, 0..255 for 0..1; read only. */
  public byte[] coverage() {
    return coverage;
  }

  /** Returns the light it was judged in. */
  public EvenedLight light() {
    return light;
  }

  /** Returns the score past which a colour counted as leaf. */
  public double threshold() {
    return threshold;
  }

  /** Returns the share of the canopy whose colour lies near the threshold, 0..1. */
  public double doubtFraction() {
    return doubtFraction;
  }
}
