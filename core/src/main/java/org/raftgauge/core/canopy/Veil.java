// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.plane.DeckImage;

/**
 * Lifts a veil: haze, a fogged lens or stray light adds the same light to every pixel and drains
 * the colour of what is dark.
 *
 * <p>Something on or about a board is always near black: a hole, a marker, water, deep shade. What
 * its darkest pixels still show is the veil. Source: dark-object subtraction (Chavez 1988, Remote
 * Sensing of Environment 24:459-479; from memory).
 */
final class Veil {
  /** The darkest share of the pixels: some noise and a few dead pixels lie under it. */
  private static final double DARKEST = 0.003;

  /** Black objects reflect this much of white: less than that above zero is no veil. */
  private static final double BLACK = 0.03;

  private Veil() {}

  /** Subtracts the veil from three planes of linear light, in place. */
  static void lift(float[][] rgb, DeckImage deck) {
    float veil = Float.MAX_VALUE;
    for (float[] plane : rgb) {
      veil = Math.min(veil, darkest(plane, deck) - (float) BLACK);
    }
    for (int c = 0; c < 3 && veil > 0; c++) {
      for (int i = 0; i < rgb[c].length; i++) {
        rgb[c][i] = Math.max(0, rgb[c][i] - veil);
      }
    }
  }

  private static float darkest(float[] plane, DeckImage deck) {
    int width = deck.image().width();
    float[] seen = new float[plane.length];
    int n = 0;
    for (int i = 0; i < plane.length; i += 3) {
      if (deck.seen(i % width, i / width)) {
        seen[n++] = plane[i];
      }
    }
    return n == 0 ? 0 : Rank.of(seen, n, (int) (DARKEST * n));
  }
}
