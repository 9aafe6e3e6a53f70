// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Tells what of pixels that may be leaf as well is no rim of leaf: there leaf and its like fill
 * most of the square about a pixel.
 */
final class NoRim {
  /** Half side of the square about a pixel in which it is asked for company, px. */
  static final int ABOUT_PX = 3;

  /** Away from rims leaf and its like fill this share of the square. */
  private static final double INSIDE = 0.82;

  /** So many pixels of a whole square may be bare. */
  private static final int MOST_BARE =
      (int) ((1 - INSIDE) * (2 * ABOUT_PX + 1) * (2 * ABOUT_PX + 1));

  private NoRim() {}

  /**
   * Finds it.
   *
   * @param leaf the canopy
   * @param more what may be leaf as well
   * @param size width and height, px
   * @return where {@code more} is no rim; what lies beyond the picture is bare
   */
  static boolean[] of(boolean[] leaf, boolean[] more, int[] size) {
    boolean[] either = leaf.clone();
    for (int i = 0; i < either.length; i++) {
      either[i] |= more[i];
    }
    boolean[] inside = new boolean[leaf.length];
    for (int y = 0, i = 0; y < size[1]; y++) {
      for (int x = 0; x < size[0]; x++, i++) {
        inside[i] = more[i] && bareAbout(either, x, y, size) <= MOST_BARE;
      }
    }
    return inside;
  }

  /** Counts what is bare about a pixel, or lies beyond the picture; no further than too many. */
  private static int bareAbout(boolean[] either, int x, int y, int[] size) {
    int left = Math.max(0, x - ABOUT_PX);
    int right = Math.min(size[0] - 1, x + ABOUT_PX);
    int top = Math.max(0, y - ABOUT_PX);
    int bottom = Math.min(size[1] - 1, y + ABOUT_PX);
    int side = 2 * ABOUT_PX + 1;
    int n = side * side - (right - left + 1) * (bottom - top + 1);
    for (int v = top; v <= bottom && n <= MOST_BARE; v++) {
      for (int i = v * size[0] + left; i <= v * size[0] + right; i++) {
        n += either[i] ? 0 : 1;
      }
    }
    return n;
  }
}
