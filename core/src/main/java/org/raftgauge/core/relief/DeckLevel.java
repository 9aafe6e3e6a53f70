// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.Arrays;
import java.util.Locale;

/**
 * Holds a height map against the bare deck that it shows: the deck is at height 0. A small
 * difference is the pose's and the pair's together and is taken out; a large one says that the
 * second camera has moved.
 */
public final class DeckLevel {
  /** Less of the board than this says nothing of its level. */
  private static final double LEAST_SHARE = 0.05;

  /** A deck farther off than this, mm, is not mended. */
  private static final double MOST_MM = 25;

  private DeckLevel() {}

  /**
   * Levels a map.
   *
   * @param map the map
   * @param bare for each of its pixels whether it shows bare deck
   * @return the map with the deck at 0; the same where too little deck shows; or why it is not
   *     believed
   */
  public static Heights of(HeightMap map, boolean[] bare) {
    double[] decks = new double[bare.length];
    int n = 0;
    for (int i = 0; i < bare.length; i++) {
      if (bare[i] && map.seen(i)) {
        decks[n++] = map.mm(i);
      }
    }
    if (n < LEAST_SHARE * bare.length) {
      return map;
    }
    Arrays.sort(decks, 0, n);
    double off = decks[n / 2];
    return Math.abs(off) > MOST_MM
        ? new NoHeights(
            String.format(
                Locale.ROOT,
                "the second camera sees the bare deck %.0f mm %s than the first",
                Math.abs(off),
                off > 0 ? "higher" : "lower"),
            "see that both cameras sit firmly, then calibrate the pair again (station pair)",
            map.rowsPx())
        : map.loweredBy(off);
  }
}
