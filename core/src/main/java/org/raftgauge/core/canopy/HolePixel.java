// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** Told of each pixel of a board's holes what may tell whether it is leaf. */
public interface HolePixel {
  /**
   * Takes a pixel.
   *
   * @param i its index in the deck picture
   * @param terms what tells, {@link HoleNetwork#TERMS} numbers; overwritten by the next pixel's
   */
  void at(int i, float[] terms);
}
