// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

/**
 * What plant is wanted.
 *
 * @param habit how it holds its leaves
 * @param tone its colour
 * @param areaCm2 its projected area, reached within a few percent, above 0
 * @param seed of everything about it that varies
 */
public record PlantOrder(Habit habit, Tone tone, double areaCm2, long seed) {

  /** Checks that the area is above 0. */
  public PlantOrder {
    if (!(areaCm2 > 0)) {
      throw new IllegalArgumentException("areaCm2 must be > 0, got " + areaCm2);
    }
  }
}
