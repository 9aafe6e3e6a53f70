// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Settings of the canopy decision.
 *
 * @param leastScore a score under this is never leaf, 0..2
 * @param mostThreshold the adaptive threshold never rises past this
 * @param shareOfLeaf the adaptive threshold as a share of the photo's usual leaf score, 0..1
 * @param starvedGreen ln by which green may be weaker than red or blue on the board before the
 *     light is refused
 */
public record CanopyRule(
    double leastScore, double mostThreshold, double shareOfLeaf, double starvedGreen) {

  /**
   * Returns the defaults. Leaf scores 1.2 to 3 and board, shade and dirt under 0.3, water-film
   * algae up to 0.7 (measured on rendered photos of several makers); half of the usual leaf score
   * is the middle between leaf and board. A green channel starved four times is common practice's
   * limit for white balance.
   */
  public static CanopyRule defaults() {
    return new CanopyRule(0.75, 1.1, 0.5, Math.log(4));
  }
}
