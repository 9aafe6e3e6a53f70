// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import org.raftgauge.proving.solid.Tint;

/**
 * What fills the planting holes of a board about its plants.
 *
 * @param core reflectance of what the roots stand in
 * @param collar reflectance of the ring about the core
 * @param coreShare radius of the core over that of the hole; 1 where there is no collar
 * @param moss what has overgrown the core
 */
public record Medium(Tint core, Tint collar, double coreShare, Moss moss) {

  /**
   * Moss on plugs, in patches.
   *
   * @param colour its reflectance
   * @param share of the plugs' surface that it covers, 0..1
   */
  public record Moss(Tint colour, double share) {}

  /** Returns holes that are filled with one thing alone. */
  public static Medium of(Tint plug) {
    return new Medium(plug, plug, 1, new Moss(plug, 0));
  }
}
