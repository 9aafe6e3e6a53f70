// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Tint;

/**
 * What lies around and under the boards.
 *
 * @param water the pond; outside is the bank
 * @param waterColour reflectance
 * @param bankColour reflectance
 * @param depthMm how far the water lies under the deck plane, mm
 * @param seed of ripples and dirt
 */
public record Pond(Box water, Tint waterColour, Tint bankColour, double depthMm, int seed) {
  private static final Tint DARK_WATER = Tint.srgb(0x1b2420);
  private static final Tint CONCRETE = Tint.srgb(0x8b877f);
  private static final double DEPTH_MM = 30;

  /**
   * Returns dark water as far as a camera sees.
   *
   * @param seed of its ripples
   * @return the pond, 30 mm under the deck
   */
  public static Pond allAround(int seed) {
    return new Pond(new Box(-5000, -5000, 9000, 9000), DARK_WATER, CONCRETE, DEPTH_MM, seed);
  }
}
