// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;
import org.raftgauge.core.pixels.PointPx;

/** Canopy that no path reaches, as a leaf behind a shadow. */
final class Islands {
  private final boolean[] leaf;
  private final int width;
  private final int height;
  private final PointPx[] feet;

  Islands(boolean[] leaf, int width, PointPx[] feet) {
    this.leaf = leaf;
    this.width = width;
    this.height = leaf.length / width;
    this.feet = feet;
  }

  /**
   * Gives islands to the nearest plant.
   *
   * @param owner whose each pixel is; changed in place
   * @param reachPx islands whose middle lies farther from every plant's foot stay nobody's
   */
  void give(short[] owner, double reachPx) {
    boolean[] done = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      if (leaf[i] && owner[i] == AllotCanopy.NONE && !done[i]) {
        int[] island = island(i, owner, done);
        short to = nearest(island, reachPx);
        if (to != AllotCanopy.NONE) {
          for (int p : island) {
            owner[p] = to;
          }
        }
      }
    }
  }

  private int[] island(int start, short[] owner, boolean[] done) {
    int[] found = new int[64];
    found[0] = start;
    done[start] = true;
    int n = 1;
    for (int open = 0; open < n; open++) {
      int at = found[open];
      int x = at % width;
      int y = at / width;
      for (int k = 0; k < 9; k++) {
        int nx = x + k % 3 - 1;
        int ny = y + Math.floorDiv(k, 3) - 1;
        int i = ny * width + nx;
        if (nx >= 0
            && ny >= 0
            && nx < width
            && ny < height
            && leaf[i]
            && !done[i]
            && owner[i] == AllotCanopy.NONE) {
          done[i] = true;
          found = n == found.length ? Arrays.copyOf(found, 2 * n) : found;
          found[n++] = i;
        }
      }
    }
    return Arrays.copyOf(found, n);
  }

  private short nearest(int[] island, double reachPx) {
    double cx = 0;
    double cy = 0;
    for (int p : island) {
      cx += p % width;
      cy += Math.floorDiv(p, width);
    }
    PointPx centre = new PointPx(cx / island.length, cy / island.length);
    short best = AllotCanopy.NONE;
    double bestPx = reachPx;
    for (short s = 0; s < feet.length; s++) {
      double d = feet[s].distancePx(centre);
      if (d < bestPx) {
        bestPx = d;
        best = s;
      }
    }
    return best;
  }
}
