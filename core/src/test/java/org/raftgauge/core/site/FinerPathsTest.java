// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Paths taken on from every second pixel against paths that walk all pixels. */
class FinerPathsTest {
  private static final int WIDTH = 161;
  private static final int HEIGHT = 121;
  private static final double[][] FEET = {{30, 30}, {90, 60}, {130, 30}, {50, 95}};

  @Test
  void ownersAreTheFullWalksButForAPixelAlongBorders() {
    int differ = 0;
    int all = 0;
    for (int seed = 0; seed < 30; seed++) {
      Random random = new Random(seed);
      boolean[] leaf = discs(random);
      double[] speeds = random.doubles(FEET.length, 0.7, 1.4).toArray();
      short[] full = started(leaf, WIDTH, speeds, 1).owners();
      short[] finer =
          new FinerPaths(started(coarse(leaf), WIDTH / 2, speeds, 2), leaf, WIDTH, speeds).owners();
      for (int i = 0; i < leaf.length; i++) {
        all += leaf[i] ? 1 : 0;
        differ += full[i] == finer[i] ? 0 : 1;
      }
    }
    // Of some 12000 pixels of leaf 200 are border, which may lie a pixel off on half of its length:
    // 0.8 %. A gap of one pixel may be none in the coarse picture, and more change hands there.
    assertTrue(differ < 0.01 * all, differ + " of " + all);
  }

  @Test
  void whatIsThinnerThanACoarsePixelIsWalkedAllTheSame() {
    boolean[] leaf = new boolean[WIDTH * HEIGHT];
    for (int y = 20; y <= 40; y++) {
      for (int x = 20; x <= 40; x++) {
        leaf[y * WIDTH + x] = true;
      }
    }
    // A stalk of one pixel in an even row, which the coarse picture does not see.
    for (int x = 41; x < 100; x++) {
      leaf[30 * WIDTH + x] = true;
    }
    double[] speeds = {1, 1, 1, 1};
    short[] owner =
        new FinerPaths(started(coarse(leaf), WIDTH / 2, speeds, 2), leaf, WIDTH, speeds).owners();
    assertEquals(0, owner[30 * WIDTH + 60]);
    assertEquals(AllotCanopy.NONE, owner[20 * WIDTH + 60]);
  }

  private static boolean[] discs(Random random) {
    double[] radii = random.doubles(FEET.length, 25, 45).toArray();
    boolean[] leaf = new boolean[WIDTH * HEIGHT];
    for (int i = 0; i < leaf.length; i++) {
      for (int s = 0; s < FEET.length; s++) {
        double dx = i % WIDTH - FEET[s][0];
        double dy = Math.floorDiv(i, WIDTH) - FEET[s][1];
        leaf[i] |= dx * dx + dy * dy < radii[s] * radii[s];
      }
    }
    return leaf;
  }

  private static boolean[] coarse(boolean[] leaf) {
    int across = WIDTH / 2;
    boolean[] coarse = new boolean[across * (HEIGHT / 2)];
    for (int i = 0; i < coarse.length; i++) {
      coarse[i] = leaf[(2 * Math.floorDiv(i, across) + 1) * WIDTH + 2 * (i % across) + 1];
    }
    return coarse;
  }

  private static CanopyPaths started(boolean[] leaf, int width, double[] speeds, int parts) {
    CanopyPaths paths = new CanopyPaths(leaf, width, leaf.length / width, speeds);
    for (short s = 0; s < FEET.length; s++) {
      paths.start((int) (FEET[s][0] / parts), (int) (FEET[s][1] / parts), 0, s);
    }
    paths.run();
    return paths;
  }
}
