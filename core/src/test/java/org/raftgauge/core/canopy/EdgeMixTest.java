// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.Srgb;

/** Mixed edge pixels, and their share against a slow plain loop on seeded blobs. */
class EdgeMixTest {

  /**
   * The plain loop knows what the pictures are made of, so it needs no look at its surroundings:
   * leaf left of an upright edge, ground right of it, the edge's column mixed in a known share.
   */
  @Test
  void edgePixelsGetTheShareTheyWereMixedIn() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      int width = 40;
      int height = 24;
      int edge = 12 + random.nextInt(16);
      double[] leaf = {0.05 + 0.1 * random.nextDouble(), 0.2 + 0.2 * random.nextDouble(), 0.03};
      double white = seed % 2 == 0 ? 0.5 + 0.4 * random.nextDouble() : 0.01;
      float[][] rgb = new float[3][width * height];
      boolean[] mask = new boolean[width * height];
      double[] shares = new double[height];
      for (int y = 0; y < height; y++) {
        shares[y] = random.nextDouble();
        for (int x = 0; x < width; x++) {
          double share = x < edge ? 1 : x > edge ? 0 : shares[y];
          for (int c = 0; c < 3; c++) {
            rgb[c][y * width + x] = (float) (share * leaf[c] + (1 - share) * white);
          }
          mask[y * width + x] = share > 0.5;
        }
      }
      byte[] coverage = EdgeMix.coverage(width, height, rgb, mask);
      for (int y = 0; y < height; y++) {
        for (int x = 0; x < width; x++) {
          double share = x < edge ? 1 : x > edge ? 0 : shares[y];
          // Half a step of 255, and float rounding that may tip one; before bright ground the
          // second
          // look reads the leaf's colour from pixels that are mixed themselves, weighted by purity.
          double error = white > 0.5 ? 0.04 : 0.6 / 255;
          assertEquals(
              share, (coverage[y * width + x] & 0xff) / 255.0, error, "seed " + seed + " " + x);
        }
      }
    }
  }

  /** The whole of edge mixing once more, written as plainly as its Javadoc says it. */
  @Test
  void coverageIsThatOfThePlainLoopOnRandomBlobs() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(1000 + seed);
      int width = 30 + random.nextInt(20);
      int height = 30 + random.nextInt(20);
      boolean[] mask = blobs(width, height, random);
      float[][] rgb = coloured(mask, random);
      byte[] coverage = EdgeMix.coverage(width, height, rgb, mask);
      double[] first = new double[mask.length];
      for (int i = 0; i < mask.length; i++) {
        first[i] = Math.round(plainShare(rgb, mask, width, height, i));
      }
      int unlike = 0;
      for (int i = 0; i < mask.length; i++) {
        double plain = mask[i] ? gap(rgb, first, new int[] {width, height, i}, mask) : first[i];
        // Sums in floats against doubles may cross a limit of the method: none to two pixels.
        unlike += Math.abs(plain - (coverage[i] & 0xff)) > 1.01 ? 1 : 0;
      }
      assertEquals(0, unlike, 2, "seed " + seed);
    }
  }

  private static double plainShare(float[][] rgb, boolean[] leaf, int width, int height, int i) {
    boolean[] other = new boolean[leaf.length];
    for (int k = 0; k < leaf.length; k++) {
      other[k] = !leaf[k];
    }
    if (!PlainLoopsTest.near(leaf, width, height, i, 2)) {
      return 0;
    }
    if (!PlainLoopsTest.near(other, width, height, i, 2)) {
      return 255;
    }
    double[] l = sureMean(rgb, leaf, other, new int[] {width, height, i});
    double[] b = sureMean(rgb, other, leaf, new int[] {width, height, i});
    double hard = leaf[i] ? 255 : 0;
    if (b[3] < 2) {
      return hard;
    }
    double[] p = {rgb[0][i], rgb[1][i], rgb[2][i]};
    if (l[3] < 2) {
      double ground = Srgb.luminance(b[0], b[1], b[2]);
      double light = brighter(rgb, leaf, width, i);
      double mixed = (Srgb.luminance(p[0], p[1], p[2]) - ground) / (light - ground);
      return ground < 0.5 * light ? 255 * clamp(mixed) : hard;
    }
    return 255 * new Mixture(plainNoise(rgb, leaf)).share(p, l, b, leaf[i]).orElse(hard / 255);
  }

  /** The second look at what was taken for leaf, as its Javadoc says it. */
  private static double gap(float[][] rgb, double[] first, int[] at, boolean[] leaf) {
    boolean byGap = false;
    boolean byLeaf = false;
    double[] l = new double[4];
    double[] g = new double[4];
    for (int k = 0; k < first.length; k++) {
      int dx = k % at[0] - at[2] % at[0];
      int dy = Math.floorDiv(k, at[0]) - Math.floorDiv(at[2], at[0]);
      int far = Math.max(Math.abs(dx), Math.abs(dy));
      byGap |= far <= 3 && first[k] < 64;
      byLeaf |= far <= 2 && first[k] >= 192;
      if (far <= 5) {
        double near = Math.exp(-(dx * dx + dy * dy) / 4.5);
        add(l, near * Math.pow(first[k] / 255, 4), rgb, k);
        add(g, near * Math.pow(1 - first[k] / 255, 4), rgb, k);
      }
    }
    boolean dark =
        Srgb.luminance(g[0], g[1], g[2]) / g[3] < 0.5 * Srgb.luminance(l[0], l[1], l[2]) / l[3];
    if (!byGap || !byLeaf || l[3] < 0.5 || g[3] < 0.5 || dark) {
      return first[at[2]];
    }
    double[] p = {rgb[0][at[2]], rgb[1][at[2]], rgb[2][at[2]]};
    double[] light = {l[0] / l[3], l[1] / l[3], l[2] / l[3]};
    double[] ground = {g[0] / g[3], g[1] / g[3], g[2] / g[3]};
    Mixture mixture = new Mixture(plainNoise(rgb, leaf));
    return 255 * mixture.share(p, light, ground, true).orElse(first[at[2]] / 255);
  }

  private static void add(double[] sum, double weight, float[][] rgb, int k) {
    for (int c = 0; c < 3; c++) {
      sum[c] += weight * rgb[c][k];
    }
    sum[3] += weight;
  }

  /** Mean luminance of leaf within 5 px, each weighted by its square. */
  private static double brighter(float[][] rgb, boolean[] leaf, int width, int at) {
    double sum = 0;
    double weights = 0;
    for (int k = 0; k < leaf.length; k++) {
      int dx = k % width - at % width;
      int dy = Math.floorDiv(k, width) - Math.floorDiv(at, width);
      if (leaf[k] && Math.abs(dx) <= 5 && Math.abs(dy) <= 5) {
        double light = Srgb.luminance(rgb[0][k], rgb[1][k], rgb[2][k]);
        sum += Math.pow(light, 3);
        weights += light * light;
      }
    }
    return sum / weights;
  }

  @Test
  void aStalkWhoseColourBledOverADarkPlugKeepsItsWidth() {
    int width = 40;
    int height = 30;
    for (double stalkPx : new double[] {2, 3, 4}) {
      float[][] rgb = new float[3][width * height];
      boolean[] mask = new boolean[width * height];
      for (int i = 0; i < mask.length; i++) {
        double off = Math.abs(i % width - 19.7);
        // Its share of a pixel, blurred by half a pixel each way.
        double share = clamp((stalkPx / 2 + 1 - off) / 2);
        for (int c = 0; c < 3; c++) {
          double leaf = new double[] {0.08, 0.22, 0.03}[c];
          rgb[c][i] = (float) (share * leaf + (1 - share) * 0.02);
        }
        mask[i] = off < stalkPx / 2 + 1.5;
      }
      byte[] coverage = EdgeMix.coverage(width, height, rgb, mask);
      double sum = 0;
      for (byte b : coverage) {
        sum += (b & 0xff) / 255.0;
      }
      // Taken as it bled it would be 3 px too wide; the thinnest has no pixel that is all leaf.
      assertEquals(stalkPx, sum / height, 0.45, stalkPx + " px");
    }
  }

  /** Every 31st pixel of the ground, the channels in turn, against its neighbours in the row. */
  private static double plainNoise(float[][] rgb, boolean[] leaf) {
    java.util.List<Double> off = new java.util.ArrayList<>();
    for (int i = 1; i < leaf.length - 1 && off.size() < leaf.length / 31; i += 31) {
      if (!leaf[i - 1] && !leaf[i] && !leaf[i + 1] && rgb[1][i] > 0) {
        float[] plane = rgb[off.size() % 3];
        off.add(Math.abs(plane[i] - 0.5 * (plane[i - 1] + plane[i + 1])));
      }
    }
    off.sort(null);
    // 0.674 sigma is a normal spread's median distance; two neighbours' mean adds half a variance.
    return off.isEmpty()
        ? 0
        : off.get((int) Math.round(0.5 * (off.size() - 1))) / (0.674 * Math.sqrt(1.5));
  }

  private static double[] sureMean(float[][] rgb, boolean[] side, boolean[] other, int[] at) {
    int width = at[0];
    int height = at[1];
    double[] sum = new double[5];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int k = y * width + x;
        boolean close =
            Math.abs(x - at[2] % width) <= 5 && Math.abs(y - Math.floorDiv(at[2], width)) <= 5;
        if (close && side[k] && !PlainLoopsTest.near(other, width, height, k, 2)) {
          int dx = x - at[2] % width;
          int dy = y - Math.floorDiv(at[2], width);
          double weight = Math.exp(-(dx * dx + dy * dy) / 4.5); // two variances of 1.5 px
          sum[3]++;
          sum[4] += weight;
          for (int c = 0; c < 3; c++) {
            sum[c] += weight * rgb[c][k];
          }
        }
      }
    }
    return new double[] {sum[0] / sum[4], sum[1] / sum[4], sum[2] / sum[4], sum[3]};
  }

  private static boolean[] blobs(int width, int height, Random random) {
    boolean[] mask = new boolean[width * height];
    for (int n = 0; n < 3; n++) {
      double cx = random.nextDouble() * width;
      double cy = random.nextDouble() * height;
      double r = 4 + 8 * random.nextDouble();
      for (int i = 0; i < mask.length; i++) {
        mask[i] |= Math.hypot(i % width - cx, Math.floorDiv(i, width) - cy) < r;
      }
    }
    return mask;
  }

  private static float[][] coloured(boolean[] mask, Random random) {
    double white = random.nextDouble();
    double[] leaf = {0.1 * random.nextDouble(), 0.1 + 0.3 * random.nextDouble(), 0.04};
    float[][] rgb = new float[3][mask.length];
    for (int i = 0; i < mask.length; i++) {
      for (int c = 0; c < 3; c++) {
        double own = mask[i] ? leaf[c] : white;
        rgb[c][i] = (float) Math.max(0, own + 0.02 * random.nextGaussian());
      }
    }
    return rgb;
  }

  private static double clamp(double v) {
    return Math.max(0, Math.min(1, v));
  }
}
