// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

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
    for (int y = 0, i = 0; y < height; y++) {
      for (int x = 0; x < width; x++, i++) {
        short o = owner[i];
        if (o >= 0) {
          borders.areas[o]++;
        }
        if (x == 0) {
          borders.side(AllotCanopy.NONE, o);
        }
        if (y == 0) {
          borders.side(AllotCanopy.NONE, o);
        }
        short right = x + 1 < width ? owner[i + 1] : AllotCanopy.NONE;
        short below = y + 1 < height ? owner[i + width] : AllotCanopy.NONE;
        if (o != right) {
          borders.side(o, right);
        }
        if (o != below) {
          borders.side(o, below);
        }
      }
    }
    return borders;
  }

  private void side(short a, short b) {
    if (a == b) {
      return;
    }
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
