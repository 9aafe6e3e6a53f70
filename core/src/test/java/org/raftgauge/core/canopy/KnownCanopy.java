// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;
import java.util.List;

/** Makes canopies whose every pixel is known, for tests of what comes after. */
public final class KnownCanopy {

  private KnownCanopy() {}

  /** Returns the canopy of a picture of text: {@code #} is leaf, anything else is not. */
  public static Canopy ofText(String picture) {
    List<String> lines = picture.strip().lines().toList();
    int width = lines.get(0).length();
    byte[] coverage = new byte[lines.size() * width];
    for (int i = 0; i < coverage.length; i++) {
      coverage[i] = lines.get(Math.floorDiv(i, width)).charAt(i % width) == '#' ? (byte) 255 : 0;
    }
    return of(width, lines.size(), coverage);
  }

  /** Returns the canopy of a coverage, 0..255 a pixel, under neutral light. */
  public static Canopy of(int width, int height, byte[] coverage) {
    return doubtful(width, height, coverage, 0);
  }

  /** Returns the same with a share of its colours near the threshold. */
  public static Canopy doubtful(int width, int height, byte[] coverage, double near) {
    double[][] flat = {Surface.flat(0), Surface.flat(0), Surface.flat(0)};
    EvenedLight light = new EvenedLight(LightSource.BOARD, flat, 1, true);
    return new Canopy(width, height, coverage, light, new Canopy.Doubts(1, near));
  }

  /** Returns the same with pixels whose colour is near the threshold. */
  public static Canopy weak(int width, byte[] coverage, BitSet near) {
    double[][] flat = {Surface.flat(0), Surface.flat(0), Surface.flat(0)};
    EvenedLight light = new EvenedLight(LightSource.BOARD, flat, 1, true);
    int height = Math.floorDiv(coverage.length, width);
    Canopy.Doubts doubts = new Canopy.Doubts(1, 0, near, new BitSet(), new BitSet());
    return new Canopy(width, height, coverage, light, doubts);
  }

  /** Returns the coverage of discs (x, y, radius in px), each pixel from 8 x 8 places. */
  public static byte[] discs(int width, int height, double[]... discs) {
    byte[] coverage = new byte[width * height];
    for (int i = 0; i < coverage.length; i++) {
      int hits = 0;
      for (int k = 0; k < 64; k++) {
        double x = i % width + (k % 8 - 3.5) / 8;
        double y = Math.floorDiv(i, width) + (Math.floorDiv(k, 8) - 3.5) / 8;
        boolean in = false;
        for (double[] d : discs) {
          in |= Math.hypot(x - d[0], y - d[1]) < d[2];
        }
        hits += in ? 1 : 0;
      }
      coverage[i] = (byte) Math.round(hits * 255 / 64.0);
    }
    return coverage;
  }
}
