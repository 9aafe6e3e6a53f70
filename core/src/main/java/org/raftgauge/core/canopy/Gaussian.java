// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** Smooths 8-bit colour with a Gaussian cut off at three standard deviations; edges mirror. */
final class Gaussian {
  private final float[] kernel;
  private final int reach;

  private Gaussian(double sigmaPx) {
    this.reach = (int) Math.ceil(3 * sigmaPx);
    this.kernel = new float[2 * reach + 1];
    double sum = 0;
    for (int i = -reach; i <= reach; i++) {
      sum += Math.exp(-0.5 * i * i / (sigmaPx * sigmaPx));
    }
    for (int i = -reach; i <= reach; i++) {
      kernel[i + reach] = (float) (Math.exp(-0.5 * i * i / (sigmaPx * sigmaPx)) / sum);
    }
  }

  /** Smooths interleaved code values; {@code sigmaPx} is above 0. */
  static byte[] blur(byte[] rgb, int width, int height, double sigmaPx) {
    Gaussian gaussian = new Gaussian(sigmaPx);
    byte[] out = new byte[rgb.length];
    float[] rows = new float[width * height];
    for (int channel = 0; channel < 3; channel++) {
      for (int y = 0; y < height; y++) {
        gaussian.row(rgb, channel, rows, y * width, width);
      }
      float[] sum = new float[width];
      for (int y = 0; y < height; y++) {
        gaussian.column(rows, y, sum, height);
        for (int x = 0; x < width; x++) {
          out[3 * (y * width + x) + channel] = (byte) Math.round(sum[x]);
        }
      }
    }
    return out;
  }

  private void row(byte[] rgb, int channel, float[] rows, int start, int width) {
    for (int x = 0; x < width; x++) {
      boolean inside = x >= reach && x + reach < width;
      float sum = 0;
      for (int i = -reach; i <= reach; i++) {
        int from = inside ? x + i : mirrored(x + i, width);
        sum += kernel[i + reach] * (rgb[3 * (start + from) + channel] & 0xff);
      }
      rows[start + x] = sum;
    }
  }

  private void column(float[] rows, int y, float[] sum, int height) {
    Arrays.fill(sum, 0);
    for (int i = -reach; i <= reach; i++) {
      int from = mirrored(y + i, height) * sum.length;
      float k = kernel[i + reach];
      for (int x = 0; x < sum.length; x++) {
        sum[x] += k * rows[from + x];
      }
    }
  }

  /** Returns the place that a place beyond the rim mirrors, the rim itself not doubled. */
  private static int mirrored(int i, int n) {
    if (n == 1) {
      return 0;
    }
    int turn = 2 * (n - 1);
    int at = Math.floorMod(i, turn);
    return at < n ? at : turn - at;
  }
}
