// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;

/**
 * Shortest paths inside a canopy, from many starts at once: the cheapest path known to each pixel,
 * and whose it is. Dijkstra 1959, Numer. Math. 1:269-271.
 */
final class CanopyPaths {
  private static final double ROOT_2 = Math.sqrt(2);

  private final boolean[] leaf;
  private final int width;
  private final int height;
  private final short[] owner;
  private final float[] cost;
  private final short[] by;
  private final PathQueue queue = new PathQueue();

  CanopyPaths(boolean[] leaf, int width, int height) {
    this.leaf = leaf;
    this.width = width;
    this.height = height;
    this.owner = new short[leaf.length];
    this.cost = new float[leaf.length];
    this.by = new short[leaf.length];
    Arrays.fill(owner, AllotCanopy.NONE);
    Arrays.fill(cost, Float.MAX_VALUE);
  }

  /** Returns the site that each pixel belongs to once the paths have run. */
  short[] owner() {
    return owner;
  }

  void reach(int at, float c, short site) {
    if (c < cost[at]) {
      cost[at] = c;
      by[at] = site;
      queue.add(c, at);
    }
  }

  void run(double[] speeds) {
    while (!queue.isEmpty()) {
      long step = queue.poll();
      int at = PathQueue.at(step);
      float c = PathQueue.cost(step);
      if (owner[at] == AllotCanopy.NONE && c <= cost[at]) {
        owner[at] = by[at];
        walk(at, c, 1 / (by[at] == AllotCanopy.OUTSIDE ? 1 : speeds[by[at]]));
      }
    }
  }

  private void walk(int at, float c, double pace) {
    int x = at % width;
    int y = at / width;
    float straight = c + (float) pace;
    float diagonal = c + (float) (pace * ROOT_2);
    int right = Math.min(width - 1, x + 1);
    int bottom = Math.min(height - 1, y + 1);
    for (int ny = Math.max(0, y - 1); ny <= bottom; ny++) {
      for (int nx = Math.max(0, x - 1); nx <= right; nx++) {
        int i = ny * width + nx;
        if (leaf[i] && owner[i] == AllotCanopy.NONE) {
          reach(i, nx != x && ny != y ? diagonal : straight, by[at]);
        }
      }
    }
  }
}
