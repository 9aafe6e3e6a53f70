// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

/** Smooth seeded noise over the plane: hashed lattice values, smoothly interpolated. */
public final class Noise {

  private Noise() {}

  /**
   * Scrambles a lattice point and a seed.
   *
   * @param x lattice column
   * @param y lattice row
   * @param seed of the field
   * @return 32 scrambled bits
   */
  public static int hash(int x, int y, int seed) {
    int h = x * 0x27d4eb2d ^ y * 0x165667b1 ^ seed * 0x9e3779b1;
    h = (h ^ (h >>> 15)) * 0x85ebca6b;
    h = (h ^ (h >>> 13)) * 0xc2b2ae35;
    return h ^ (h >>> 16);
  }

  private static double lattice(int x, int y, int seed) {
    return (hash(x, y, seed) >>> 8) * (1.0 / (1 << 24));
  }

  /**
   * Returns one octave of noise with a lattice step of 1.
   *
   * @param x place
   * @param y place
   * @param seed of the field
   * @return 0..1
   */
  public static double at(double x, double y, int seed) {
    int ix = (int) Math.floor(x);
    int iy = (int) Math.floor(y);
    double fx = x - ix;
    double fy = y - iy;
    fx = fx * fx * (3 - 2 * fx);
    fy = fy * fy * (3 - 2 * fy);
    double top = lattice(ix, iy, seed) * (1 - fx) + lattice(ix + 1, iy, seed) * fx;
    double low = lattice(ix, iy + 1, seed) * (1 - fx) + lattice(ix + 1, iy + 1, seed) * fx;
    return top * (1 - fy) + low * fy;
  }

  /**
   * Returns several octaves, each of half the amplitude and twice the frequency of the last.
   *
   * @param x place, in steps of the coarsest lattice
   * @param y place
   * @param octaves 1 or more
   * @param seed of the field
   * @return 0..1, mean near 0.5
   */
  public static double octaves(double x, double y, int octaves, int seed) {
    double sum = 0;
    double weight = 0;
    double amplitude = 1;
    double scale = 1;
    for (int k = 0; k < octaves; k++) {
      sum += amplitude * at(x * scale + 17.3 * k, y * scale - 9.1 * k, seed + 101 * k);
      weight += amplitude;
      amplitude /= 2;
      scale *= 2.03;
    }
    return sum / weight;
  }

  /**
   * Rises smoothly from 0 to 1 between two edges.
   *
   * @param low where it leaves 0
   * @param high where it reaches 1, above {@code low}
   * @param x place
   * @return 0..1
   */
  public static double step(double low, double high, double x) {
    double t = Math.max(0, Math.min(1, (x - low) / (high - low)));
    return t * t * (3 - 2 * t);
  }
}
