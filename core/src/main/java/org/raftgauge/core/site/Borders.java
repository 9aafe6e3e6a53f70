// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;

/** Counts each site's pixels and the pixel sides of its outline, by what lies beyond them. */
final class Borders {
  private final int[] areas;
  private final int[] outline;
  private final int[][] shared;

  private Borders(int sites) {
    this.areas = new int[sites];
    this.outline = new int[sites];
    this.shared = new int[sites][sites];
  }

  static Borders of(int width, int height, short[] owner, int sites) {
    Borders borders = new Borders(sites);
    short[] above = new short[width];
    short[] row = new short[width];
    Arrays.fill(above, AllotCanopy.NONE);
    for (int y = 0; y < height; y++) {
      System.arraycopy(owner, y * width, row, 0, width);
      borders.along(row);
      borders.between(above, row);
      short[] spare = above;
      above = row;
      row = spare;
    }
    Arrays.fill(row, AllotCanopy.NONE);
    borders.between(above, row);
    return borders;
  }

  /** Counts a row's pixels, stretch by stretch, and the sides between and before stretches. */
  private void along(short[] row) {
    short before = AllotCanopy.NONE;
    for (int x = 0; x < row.length; ) {
      int first = x;
      short own = row[x];
      while (x < row.length && row[x] == own) {
        x++;
      }
      if (own >= 0) {
        areas[own] += x - first;
      }
      if (own != before) {
        side(before, own);
      }
      before = own;
    }
    if (before >= 0) {
      side(before, AllotCanopy.NONE);
    }
  }

  private void between(short[] above, short[] below) {
    for (int x = 0; x < below.length; x++) {
      if (above[x] != below[x]) {
        side(above[x], below[x]);
      }
    }
  }

  private void side(short a, short b) {
    if (a >= 0) {
      outline[a]++;
    }
    if (b >= 0) {
      outline[b]++;
    }
    if (a >= 0 && b >= 0) {
      shared[a][b]++;
      shared[b][a]++;
    }
  }

  int areaPx(int site) {
    return areas[site];
  }

  /** Share of a site's outline that touches others, 0..1. */
  double sharedFraction(int site) {
    int sum = 0;
    for (int n : shared[site]) {
      sum += n;
    }
    return outline[site] == 0 ? 0 : (double) sum / outline[site];
  }

  /** The neighbour with the longest common border, or none. */
  short chiefNeighbour(int site) {
    short best = AllotCanopy.NONE;
    for (short s = 0; s < areas.length; s++) {
      if (shared[site][s] > 0
          && (best == AllotCanopy.NONE || shared[site][s] > shared[site][best])) {
        best = s;
      }
    }
    return best;
  }
}
