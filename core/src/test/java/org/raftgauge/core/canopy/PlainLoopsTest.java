// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Running sums, means and calming against slow plain loops on 100 seeded pictures. */
class PlainLoopsTest {

  @Test
  void boxSumsAreThoseOfThePlainLoop() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      int width = 1 + random.nextInt(30);
      int height = 1 + random.nextInt(30);
      int reach = random.nextInt(8);
      float[] values = plane(width * height, random);
      float[] sums = BoxFilter.sum(values, width, height, reach);
      for (int i = 0; i < sums.length; i++) {
        // Sums of up to 225 floats of up to 1, rows rounded to floats: 225 * 2^-24.
        assertEquals(
            boxSum(values, width, height, i, reach), sums[i], 2e-5, "seed " + seed + " at " + i);
      }
    }
  }

  @Test
  void anyIsThatOfThePlainLoop() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      int width = 1 + random.nextInt(30);
      int height = 1 + random.nextInt(30);
      int reach = seed % 2 == 0 ? random.nextInt(5) : 9 + random.nextInt(8);
      boolean[] mask = mask(width * height, 0.03, random);
      boolean[] any = BoxFilter.any(mask, width, height, reach);
      for (int i = 0; i < any.length; i++) {
        assertEquals(near(mask, width, height, i, reach), any[i], "seed " + seed + " at " + i);
      }
    }
  }

  @Test
  void noRimIsWhatHasLeafAboutIt() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      int width = 1 + random.nextInt(30);
      int height = 1 + random.nextInt(30);
      boolean[] leaf = mask(width * height, 0.5, random);
      boolean[] more = mask(width * height, 0.8, random);
      float[] either = new float[leaf.length];
      for (int i = 0; i < leaf.length; i++) {
        more[i] &= !leaf[i];
        either[i] = leaf[i] || more[i] ? 1 : 0;
      }
      boolean[] noRim = NoRim.of(leaf, more, new int[] {width, height});
      for (int i = 0; i < leaf.length; i++) {
        // 82 % of the 49 pixels of the square, counted in whole numbers.
        boolean inside = more[i] && boxSum(either, width, height, i, 3) > 0.82 * 49;
        assertEquals(inside, noRim[i], "seed " + seed + " at " + i);
      }
    }
  }

  @Test
  void changedRowsAreThoseOfTheCalmedPlane() {
    Random random = new Random(1);
    float[] values = plane(7 * 5, random);
    float[] calm = Binomial.blur(values, 7, 5);
    float[] doubled =
        Binomial.blur(
            values,
            7,
            5,
            (y, row) -> {
              for (int x = 0; x < row.length; x++) {
                row[x] *= 2;
              }
            });
    for (int i = 0; i < calm.length; i++) {
      assertEquals(2 * calm[i], doubled[i]);
    }
  }

  @Test
  void binomialIsTheNinePointKernelWithRepeatedEdges() {
    double[] kernel = {1, 2, 1};
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      int width = 1 + random.nextInt(20);
      int height = 1 + random.nextInt(20);
      float[] values = plane(width * height, random);
      float[] calm = Binomial.blur(values, width, height);
      for (int y = 0; y < height; y++) {
        for (int x = 0; x < width; x++) {
          double sum = 0;
          for (int dy = -1; dy <= 1; dy++) {
            for (int dx = -1; dx <= 1; dx++) {
              int px = Math.max(0, Math.min(width - 1, x + dx));
              int py = Math.max(0, Math.min(height - 1, y + dy));
              sum += kernel[dx + 1] * kernel[dy + 1] / 16 * values[py * width + px];
            }
          }
          // Two rounds of float arithmetic on values up to 1.
          assertEquals(sum, calm[y * width + x], 5e-7, "seed " + seed);
        }
      }
    }
  }

  @Test
  void maskedMeansAreThoseOfThePlainLoop() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      int width = 1 + random.nextInt(30);
      int height = 1 + random.nextInt(30);
      int reach = random.nextInt(8);
      float[] values = plane(width * height, random);
      boolean[] mask = mask(width * height, 0.2, random);
      float[] light = new float[values.length];
      float[] weight = new float[values.length];
      for (int i = 0; i < values.length; i++) {
        light[i] = mask[i] ? values[i] : 0;
        weight[i] = mask[i] ? 1 : 0;
      }
      float[] means = MaskMean.of(values, mask, new int[] {width, height}, reach);
      for (int i = 0; i < means.length; i++) {
        double n = boxSum(weight, width, height, i, reach);
        double sum = boxSum(light, width, height, i, reach);
        // As for sums, over at least one pixel.
        assertEquals(n == 0 ? 0 : sum / n, means[i], 2e-5, "seed " + seed + " at " + i);
      }
    }
  }

  @Test
  void theHistogramsMedianIsTheSortedOnesWithinABin() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      float[] values = plane(1 + random.nextInt(500), random);
      Histogram histogram = new Histogram(2);
      for (float value : values) {
        histogram.add(value);
      }
      Arrays.sort(values);
      // 2 over 16384 bins; the middle of the bin is at most half a bin off.
      assertEquals(values[values.length / 2], histogram.median(), 1.01 / 16384, "seed " + seed);
    }
  }

  @Test
  void cubeRootsAreTheLibrarys() {
    for (double t = 0.0085; t < 2; t *= 1.0007) {
      // Two of Halley's steps from 4 %: 0.04^9 is under the rounding of a double.
      assertEquals(Math.cbrt(t), Cielab.cbrt(t), 1e-14, "root of " + t);
    }
  }

  private static double boxSum(float[] values, int width, int height, int at, int reach) {
    double sum = 0;
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        boolean in = Math.abs(x - at % width) <= reach && Math.abs(y - at / width) <= reach;
        sum += in ? values[y * width + x] : 0;
      }
    }
    return sum;
  }

  static boolean near(boolean[] mask, int width, int height, int at, int reach) {
    for (int y = Math.max(0, at / width - reach);
        y <= Math.min(height - 1, at / width + reach);
        y++) {
      for (int x = Math.max(0, at % width - reach);
          x <= Math.min(width - 1, at % width + reach);
          x++) {
        if (mask[y * width + x]) {
          return true;
        }
      }
    }
    return false;
  }

  private static float[] plane(int n, Random random) {
    float[] plane = new float[n];
    for (int i = 0; i < n; i++) {
      plane[i] = random.nextFloat();
    }
    return plane;
  }

  private static boolean[] mask(int n, double share, Random random) {
    boolean[] mask = new boolean[n];
    for (int i = 0; i < n; i++) {
      mask[i] = random.nextDouble() < share;
    }
    return mask;
  }
}
