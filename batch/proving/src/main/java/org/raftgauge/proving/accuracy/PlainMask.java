// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

/** Thresholds and cleans the plain script's picture. */
final class PlainMask {
  /** Excess green runs from -510 to 510. */
  private static final int OFFSET = 510;

  private PlainMask() {}

  /** Returns what lies above the threshold that best parts the histogram (Otsu 1979). */
  static boolean[] aboveOtsu(int[] excess) {
    long[] histogram = new long[2 * OFFSET + 1];
    long sum = 0;
    for (int value : excess) {
      histogram[value + OFFSET]++;
      sum += value + OFFSET;
    }
    long below = 0;
    long sumBelow = 0;
    double best = -1;
    int threshold = 0;
    for (int t = 0; t < histogram.length; t++) {
      below += histogram[t];
      sumBelow += t * histogram[t];
      long above = excess.length - below;
      if (below > 0 && above > 0) {
        double apart = (double) sumBelow / below - (double) (sum - sumBelow) / above;
        double between = (double) below * above * apart * apart;
        if (between > best) {
          best = between;
          threshold = t;
        }
      }
    }
    boolean[] mask = new boolean[excess.length];
    for (int i = 0; i < mask.length; i++) {
      mask[i] = excess[i] + OFFSET > threshold;
    }
    return mask;
  }

  /** Opens, then closes, by a 3 x 3 square. */
  static boolean[] openAndClose(boolean[] mask, int width) {
    boolean[] opened = spread(spread(mask, width, false), width, true);
    return spread(spread(opened, width, true), width, false);
  }

  /** Grows a value by one pixel; outside the picture nothing grows in. */
  private static boolean[] spread(boolean[] mask, int width, boolean value) {
    boolean[] out = new boolean[mask.length];
    int height = mask.length / width;
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        out[y * width + x] = near(mask, width, new int[] {x, y}, value);
      }
    }
    return out;
  }

  /** Returns the value if any of the nine pixels has it, else its opposite. */
  private static boolean near(boolean[] mask, int width, int[] at, boolean value) {
    int height = mask.length / width;
    for (int y = Math.max(0, at[1] - 1); y <= Math.min(height - 1, at[1] + 1); y++) {
      for (int x = Math.max(0, at[0] - 1); x <= Math.min(width - 1, at[0] + 1); x++) {
        if (mask[y * width + x] == value) {
          return value;
        }
      }
    }
    return !value;
  }
}
