// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Paths queued in bins against the plainest way: look for the cheapest pixel among all. */
class CanopyPathsTest {
  private static final int STARTS = 5;

  @Test
  void ownersAreThoseOfThePlainSearchOnRandomMasks() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      int width = 2 + random.nextInt(30);
      int height = 2 + random.nextInt(30);
      boolean[] leaf = new boolean[width * height];
      for (int i = 0; i < leaf.length; i++) {
        leaf[i] = random.nextDouble() < 0.7;
      }
      // The limits of plants' speeds; random ones, so that costs hardly ever tie.
      double[] speeds = random.doubles(STARTS, 0.35, 2).toArray();
      CanopyPaths paths = new CanopyPaths(leaf, width, height, speeds);
      Plain plain = new Plain(leaf, width, speeds);
      for (short s = 0; s < STARTS; s++) {
        int at = random.nextInt(leaf.length);
        float cost = 5 * random.nextFloat();
        paths.start(at % width, Math.floorDiv(at, width), cost, s);
        plain.reach(at, cost, s);
      }
      paths.run();
      assertArrayEquals(plain.run(), paths.owners(), "seed " + seed);
    }
  }

  /** Dijkstra's search without any queue. */
  private static final class Plain {
    private final boolean[] leaf;
    private final int width;
    private final double[] speeds;
    private final double[] cost;
    private final short[] by;

    Plain(boolean[] leaf, int width, double[] speeds) {
      this.leaf = leaf;
      this.width = width;
      this.speeds = speeds;
      this.cost = new double[leaf.length];
      this.by = new short[leaf.length];
      Arrays.fill(cost, Double.MAX_VALUE);
      Arrays.fill(by, AllotCanopy.NONE);
    }

    void reach(int at, double c, short site) {
      if (leaf[at] && c < cost[at]) {
        cost[at] = c;
        by[at] = site;
      }
    }

    short[] run() {
      boolean[] done = new boolean[leaf.length];
      for (int round = 0; round < leaf.length; round++) {
        int next = 0;
        for (int i = 0; i < leaf.length; i++) {
          next = !done[i] && (done[next] || cost[i] < cost[next]) ? i : next;
        }
        done[next] = true;
        for (int i = 0; i < leaf.length && cost[next] < Double.MAX_VALUE; i++) {
          int dx = Math.abs(i % width - next % width);
          int dy = Math.abs(Math.floorDiv(i, width) - Math.floorDiv(next, width));
          if (!done[i] && Math.max(dx, dy) == 1) {
            reach(i, cost[next] + Math.hypot(dx, dy) / speeds[by[next]], by[next]);
          }
        }
      }
      return by;
    }
  }
}
