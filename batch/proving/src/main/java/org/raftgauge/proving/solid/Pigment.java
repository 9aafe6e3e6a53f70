// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

/**
 * The colours of a patch, as linear reflectance.
 *
 * @param base of the blade
 * @param vein of the midrib and the veins
 * @param blush colour that spreads from the margin
 * @param blushShare how far the blush spreads, 0 none to 1 the whole blade
 * @param gloss strength of the surface reflection, 0 dull to 1 wet
 */
public record Pigment(Tint base, Tint vein, Tint blush, double blushShare, double gloss) {

  /**
   * Makes a plain pigment of one colour.
   *
   * @param colour the colour
   * @param gloss strength of the surface reflection, 0..1
   * @return the pigment
   */
  public static Pigment plain(Tint colour, double gloss) {
    return new Pigment(colour, colour, colour, 0, gloss);
  }
}
