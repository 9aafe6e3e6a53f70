// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Connected parts against a plain flood fill, ranks against sorting, on seeded input. */
class PartsRankTest {

  @Test
  void partsAreThoseOfAFloodFillInTheOrderOfTheirFirstPixels() {
    for (int seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      int width = 1 + random.nextInt(24);
      int height = 1 + random.nextInt(24);
      boolean[] mask = new boolean[width * height];
      double share = random.nextDouble();
      for (int i = 0; i < mask.length; i++) {
        mask[i] = random.nextDouble() < share;
      }
      assertParts(new Flood(mask, width, height, false), Parts.of(mask, width, height), seed);
      assertParts(
          new Flood(mask, width, height, true), Parts.alsoDiagonal(mask, width, height), seed);
      Parts outside = Parts.outside(mask, width, height);
      for (int i = 0; i < mask.length; i++) {
        mask[i] = !mask[i];
      }
      assertParts(new Flood(mask, width, height, false), outside, seed);
    }
  }

  private static void assertParts(Flood flood, Parts parts, int seed) {
    assertEquals(flood.count, parts.count(), "seed " + seed);
    for (int i = 0; i < flood.labels.length; i++) {
      assertEquals(flood.labels[i], parts.label(i), "seed " + seed + " at " + i);
    }
    for (int p = 0; p < flood.count; p++) {
      assertEquals(flood.sizes[p], parts.size(p), "seed " + seed);
      assertEquals(flood.rim[p], parts.touchesRim(p), "seed " + seed);
    }
  }

  /** The plain way. */
  private static final class Flood {
    private final int[] labels;
    private final int[] sizes;
    private final boolean[] rim;
    private int count;

    Flood(boolean[] mask, int width, int height, boolean diagonal) {
      labels = new int[mask.length];
      sizes = new int[mask.length];
      rim = new boolean[mask.length];
      Arrays.fill(labels, -1);
      for (int start = 0; start < mask.length; start++) {
        if (!mask[start] || labels[start] >= 0) {
          continue;
        }
        Deque<Integer> open = new ArrayDeque<>();
        open.add(start);
        labels[start] = count;
        while (!open.isEmpty()) {
          int at = open.poll();
          int x = at % width;
          int y = at / width;
          sizes[count]++;
          rim[count] |= x == 0 || y == 0 || x == width - 1 || y == height - 1;
          for (int k = 0; k < 9; k++) {
            int nx = x + k % 3 - 1;
            int ny = y + k / 3 - 1;
            boolean side = nx == x || ny == y;
            if ((diagonal || side) && nx >= 0 && ny >= 0 && nx < width && ny < height) {
              int i = ny * width + nx;
              if (mask[i] && labels[i] < 0) {
                labels[i] = count;
                open.add(i);
              }
            }
          }
        }
        count++;
      }
    }
  }

  @Test
  void ranksAreThoseOfTheSortedValues() {
    for (int seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      int n = 1 + random.nextInt(60);
      double[] values = new double[n + 3];
      float[] floats = new float[n + 3];
      for (int i = 0; i < values.length; i++) {
        // Many equal ones.
        values[i] = random.nextInt(1 + random.nextInt(40)) - 3.5;
        floats[i] = (float) values[i];
      }
      double[] sorted = Arrays.copyOf(values, n);
      Arrays.sort(sorted);
      int rank = random.nextInt(n);
      assertEquals(sorted[rank], Rank.of(values, n, rank), "seed " + seed);
      assertEquals((float) sorted[rank], Rank.of(floats, n, rank), "seed " + seed);
    }
  }
}
