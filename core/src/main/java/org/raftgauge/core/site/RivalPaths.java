// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;

/**
 * The cheapest path to each pixel of a canopy that starts at another plant than the pixel's own:
 * whose the pixel would be next, and how much larger that plant had to be. Two labels a pixel:
 * Dijkstra 1959 run for the second-cheapest label.
 */
final class RivalPaths {
  private static final float ROOT_2 = (float) Math.sqrt(2);

  private final CanopyPaths best;
  private final int[] steps;
  private final float most;
  private final float[] cost;
  private final short[] by;
  private final PathQueue queue;

  /**
   * Finds rivals.
   *
   * @param best paths that have run
   * @param most paths more than this many times as dear as the cheapest are not followed
   */
  RivalPaths(CanopyPaths best, double most) {
    int across = best.width() + 2;
    this.best = best;
    this.steps =
        new int[] {-1, 1, -across, across, -across - 1, -across + 1, across - 1, across + 1};
    this.most = (float) most;
    this.cost = new float[across * (best.height() + 2)];
    this.by = new short[cost.length];
    Arrays.fill(by, AllotCanopy.NONE);
    Arrays.fill(cost, Float.MAX_VALUE);
    this.queue = new PathQueue(best.leastPace());
    run();
  }

  private void run() {
    for (int y = 0; y < best.height(); y++) {
      for (int x = 0, at = best.at(0, y); x < best.width(); x++, at++) {
        if (best.by(at) >= 0) {
          from(at, best.by(at), best.cost(at));
        }
      }
    }
    boolean[] done = new boolean[cost.length];
    while (!queue.isEmpty()) {
      int at = queue.poll();
      if (!done[at]) {
        done[at] = true;
        from(at, by[at], cost[at]);
      }
    }
  }

  /** Goes on with a plant's path to pixels that are another one's. */
  private void from(int at, short site, float c) {
    float pace = best.pace(site);
    for (int k = 0; k < steps.length; k++) {
      int to = at + steps[k];
      float reached = c + pace * (k < 4 ? 1 : ROOT_2);
      if (best.by(to) >= 0
          && best.by(to) != site
          && reached < cost[to]
          && reached <= most * best.cost(to)) {
        cost[to] = reached;
        by[to] = site;
        queue.add(reached, to);
      }
    }
  }

  /** Returns the plant that a pixel would be given next, or {@link AllotCanopy#NONE}. */
  short rival(int x, int y) {
    return by[best.at(x, y)];
  }

  /** Returns how many times as fast the rival had to be to take a pixel that has one, 1 or more. */
  double times(int x, int y) {
    int at = best.at(x, y);
    return Math.max(1, cost[at] / best.cost(at));
  }
}
