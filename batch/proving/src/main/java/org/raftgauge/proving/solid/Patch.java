// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

/**
 * A connected piece of surface: one leaf blade, one petiole, one hose.
 *
 * @param owner label of the site that owns it, 1 and up; {@link #FOREIGN} a plant of no measured
 *     site; 0 no plant
 * @param material what it is made of
 * @param pigment its colours
 * @param seed of its texture
 * @param aspect length over half width of the blade: veins run at the same angle on any leaf
 */
public record Patch(int owner, Material material, Pigment pigment, int seed, double aspect) {
  /** Owner of plant tissue that no measured site owns, such as a neighbouring board's plants. */
  public static final int FOREIGN = 65_535;

  /**
   * Returns the same patch with another owner.
   *
   * @param label the new owner
   * @return the patch
   */
  public Patch withOwner(int label) {
    return new Patch(label, material, pigment, seed, aspect);
  }
}
