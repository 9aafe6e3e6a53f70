// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;

/**
 * Takes paths that were walked on every second pixel each way to all pixels: what lies deep inside
 * one plant's canopy is that plant's, and from its rim paths go on over the rest.
 *
 * <p>What is left open are borders between plants with some pixels on either side, canopy that the
 * coarse paths did not reach, and what is too thin for them.
 */
final class FinerPaths {
  /** How many pixels, each way, a coarse one stands for. */
  private static final int PARTS = 2;

  /** Borders are walked anew this many coarse pixels to either side. */
  private static final int BAND = 2;

  private static final float ROOT_2 = (float) Math.sqrt(2);

  private final CanopyPaths coarse;
  private final short[] coarseOwner;
  private final int coarseWidth;
  private final boolean[] leaf;
  private final int width;
  private final int height;
  private final double[] speeds;

  /**
   * Sets up the paths.
   *
   * @param coarse paths that have run on every second pixel
   * @param leaf the canopy on all pixels
   * @param width of the picture of all pixels
   * @param speeds of each site, above 0
   */
  FinerPaths(CanopyPaths coarse, boolean[] leaf, int width, double[] speeds) {
    this.coarse = coarse;
    this.coarseOwner = coarse.owners();
    this.coarseWidth = coarse.width();
    this.leaf = leaf;
    this.width = width;
    this.height = leaf.length / width;
    this.speeds = speeds;
  }

  /** Returns the site that each pixel belongs to. */
  short[] owners() {
    boolean[] open = openCells();
    short[] owner = new short[leaf.length];
    boolean[] left = new boolean[leaf.length];
    for (int y = 0; y < height; y++) {
      int row = Math.min(y / PARTS, coarse.height() - 1) * coarseWidth;
      for (int x = 0, i = y * width; x < width; x++, i++) {
        int cell = row + Math.min(x / PARTS, coarseWidth - 1);
        owner[i] = leaf[i] ? coarseOwner[cell] : AllotCanopy.NONE;
        if (leaf[i] && (open[cell] || owner[i] == AllotCanopy.NONE)) {
          owner[i] = AllotCanopy.NONE;
          left[i] = true;
        }
      }
    }
    walk(left, owner);
    return owner;
  }

  /** Says which coarse pixels lie near those of another plant. */
  private boolean[] openCells() {
    boolean[] open = new boolean[coarseOwner.length];
    for (int y = 0, i = 0; y < coarse.height(); y++) {
      for (int x = 0; x < coarseWidth; x++, i++) {
        if (coarseOwner[i] == AllotCanopy.NONE) {
          continue;
        }
        boolean right = x + 1 < coarseWidth && parted(i, i + 1);
        if (right || (y + 1 < coarse.height() && parted(i, i + coarseWidth))) {
          about(x, y, open);
        }
      }
    }
    return open;
  }

  private boolean parted(int a, int b) {
    return coarseOwner[b] != AllotCanopy.NONE && coarseOwner[a] != coarseOwner[b];
  }

  private void about(int x, int y, boolean[] open) {
    int left = Math.max(0, x - BAND);
    int right = Math.min(coarseWidth - 1, x + 1 + BAND);
    int bottom = Math.min(coarse.height() - 1, y + 1 + BAND);
    for (int v = Math.max(0, y - BAND); v <= bottom; v++) {
      Arrays.fill(open, v * coarseWidth + left, v * coarseWidth + right + 1, true);
    }
  }

  /** Walks on over what is left, from the pixels beside it whose owner is settled. */
  private void walk(boolean[] left, short[] owner) {
    CanopyPaths paths = new CanopyPaths(left, width, height, speeds);
    for (int y = 0, i = 0; y < height; y++) {
      for (int x = 0; x < width; x++, i++) {
        if (left[i]) {
          start(x, y, owner, paths);
        }
      }
    }
    paths.run();
    short[] walked = paths.owners();
    for (int i = 0; i < owner.length; i++) {
      owner[i] = left[i] ? walked[i] : owner[i];
    }
  }

  private void start(int x, int y, short[] owner, CanopyPaths paths) {
    for (int v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++) {
      for (int u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
        short by = owner[v * width + u];
        if (by != AllotCanopy.NONE) {
          double step = by == AllotCanopy.OUTSIDE ? 1 : 1 / speeds[by];
          paths.start(x, y, cost(u, v) + (float) step * (u == x || v == y ? 1 : ROOT_2), by);
        }
      }
    }
  }

  private float cost(int x, int y) {
    return PARTS
        * coarse.cost(
            Math.min(x / PARTS, coarseWidth - 1), Math.min(y / PARTS, coarse.height() - 1));
  }
}
