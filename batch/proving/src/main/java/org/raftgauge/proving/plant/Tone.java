// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

import java.util.Random;
import org.raftgauge.proving.solid.Pigment;
import org.raftgauge.proving.solid.Tint;

/** The colour of a plant; the numbers are sRGB, chosen by eye. */
public enum Tone {
  /** Plain leaf green. */
  GREEN(0x6f9433, 0xb4c47a, 0x7da03a, 0),
  /** Yellowish green, as of butter lettuces. */
  LIGHT_GREEN(0x93b245, 0xccd594, 0x86a53a, 0),
  /** Deep green, as of basil and rocket. */
  DARK_GREEN(0x47752c, 0x86a35c, 0x4a6f2a, 0),
  /** Wine red over green: red lettuces. */
  RED(0x7c8a3a, 0xb08a72, 0x5e2a2e, 0.75),
  /** Purple all through: red basil. */
  PURPLE(0x4d2a3e, 0x7d4a5c, 0x3a1c30, 1),
  /** Short of chlorophyll. */
  PALE(0xa9b552, 0xc9cf8e, 0xc2bd62, 0.4),
  /** Dry and brown. */
  DEAD(0x8a6a3c, 0xa08356, 0x6d4f2c, 0.6);

  private final int base;
  private final int vein;
  private final int blush;
  private final double blushShare;

  Tone(int base, int vein, int blush, double blushShare) {
    this.base = base;
    this.vein = vein;
    this.blush = blush;
    this.blushShare = blushShare;
  }

  /**
   * Mixes the pigment of one leaf.
   *
   * @param youth 0 for an old leaf to 1 for the heart
   * @param gloss strength of the surface reflection, 0..1
   * @param random source of the leaf's own deviation
   * @return the pigment
   */
  Pigment leaf(double youth, double gloss, Random random) {
    double light = (1 + 0.22 * youth) * (1 + 0.07 * random.nextGaussian());
    Tint warm = new Tint(1 + 0.05 * random.nextGaussian(), 1, 1 + 0.05 * random.nextGaussian());
    Tint own = Tint.srgb(base).times(warm).times(light);
    double share = blushShare * (1 - 0.45 * youth) * (1 + 0.12 * random.nextGaussian());
    return new Pigment(
        own,
        Tint.srgb(vein),
        Tint.srgb(blush).times(light),
        Math.max(0, Math.min(1, share)),
        gloss);
  }
}
