// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

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

  /**
   * Says whether a model holds anywhere on a deck; a site's ground is wider than eight pixels.
   *
   * @param model the model
   * @param deck the deck picture
   * @return whether it holds at any of the places looked at
   */
  default boolean has(LeafModel model, DeckImage deck) {
    for (int y = 0; y < deck.image().height(); y += 8) {
      for (int x = 0; x < deck.image().width(); x += 8) {
        if (at(deck.toMm(new PointPx(x, y))) == model) {
          return true;
        }
      }
    }
    return false;
  }
}
