// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.book.PointMm;

/** Tells which colour model holds at each place of a deck: a board may carry several crops. */
@FunctionalInterface
public interface ModelMap {

  /**
   * Returns the colour model of a place.
   *
   * @param place a place on the deck, mm; it may lie beyond the board
   * @return the model
   */
  LeafModel at(PointMm place);
}
