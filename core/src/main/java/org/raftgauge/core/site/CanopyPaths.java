// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;

/**
 * Shortest paths inside a canopy, from many starts at once: the cheapest path known to each pixel,
 * and whose it is. Dijkstra 1959, Numer. Math. 1:269-271.
 */
final class CanopyPaths {
  private static final float ROOT_2 = (float) Math.sqrt(2);

  private final int width;
  private final int height;
  private final int across;
  private final float[] pace;
  private final double leastPace;
  private final float[] cost;
  private final short[] by;
  private final PathQueue queue;

  /**
   * Sets up paths.
   *
   * @param leaf where they may run
   * @param width px
   * @param height px
   * @param speeds of each site, above 0; beyond the rim it is 1
   */
  CanopyPaths(boolean[] leaf, int width, int height, double[] speeds) {
    this.width = width;
    this.height = height;
    this.across = width + 2; // a rim of nobody's keeps paths from leaving the picture
    this.cost = new float[across * (height + 2)];
    this.by = new short[cost.length];
    Arrays.fill(by, AllotCanopy.NONE);
    Arrays.fill(cost, -1);
    for (int y = 0; y < height; y++) {
      for (int x = 0, i = y * width, at = at(0, y); x < width; x++, i++, at++) {
        cost[at] = leaf[i] ? Float.MAX_VALUE : -1;
      }
    }
    this.pace = new float[speeds.length];
    double least = 1;
    for (int s = 0; s < pace.length; s++) {
      pace[s] = (float) (1 / speeds[s]);
      least = Math.min(least, pace[s]);
    }
    this.leastPace = least;
    this.queue = new PathQueue(least);
  }

  /** Starts a path at a pixel, if that is leaf. */
  void start(int x, int y, float c, short site) {
    reach(at(x, y), c, site);
  }

  /** Returns the index of a pixel among the pixels with their rim. */
  int at(int x, int y) {
    return (y + 1) * across + x + 1;
  }

  /** Returns whose the cheapest path to a pixel, or to one of the rim, is. */
  short by(int at) {
    return by[at];
  }

  /** Returns what that path costs. */
  float cost(int at) {
    return cost[at];
  }

  /** Returns the cost of a straight step of a site. */
  float pace(short site) {
    return pace[site];
  }

  /** Returns the cost of the cheapest step of all. */
  double leastPace() {
    return leastPace;
  }

  private void reach(int at, float c, short site) {
    if (c < cost[at]) {
      cost[at] = c;
      by[at] = site;
      queue.add(c, at);
    }
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** Returns the cost of the cheapest path to a pixel of leaf that one reaches. */
  float cost(int x, int y) {
    return cost[at(x, y)];
  }

  /** Lets the paths run. */
  void run() {
    boolean[] done = new boolean[cost.length];
    while (!queue.isEmpty()) {
      int at = queue.poll();
      if (!done[at]) {
        done[at] = true;
        walk(at);
      }
    }
  }

  /** Returns the site that each pixel belongs to. */
  short[] owners() {
    short[] owner = new short[width * height];
    for (int y = 0; y < height; y++) {
      System.arraycopy(by, at(0, y), owner, y * width, width);
    }
    return owner;
  }

  private void walk(int at) {
    short site = by[at];
    float step = site == AllotCanopy.OUTSIDE ? 1 : pace[site];
    float straight = cost[at] + step;
    float diagonal = cost[at] + step * ROOT_2;
    reach(at - 1, straight, site);
    reach(at + 1, straight, site);
    reach(at - across, straight, site);
    reach(at + across, straight, site);
    reach(at - across - 1, diagonal, site);
    reach(at - across + 1, diagonal, site);
    reach(at + across - 1, diagonal, site);
    reach(at + across + 1, diagonal, site);
  }
}
