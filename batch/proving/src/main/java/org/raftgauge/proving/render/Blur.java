// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

/** Blurs and sharpens pictures of three interleaved channels. */
final class Blur {

  private Blur() {}

  /** Blurs linear light by a Gaussian; nothing happens under 0.2 px. */
  static void gaussian(Exposure view, double sigmaPx) {
    if (sigmaPx < 0.2) {
      return;
    }
    int half = (int) Math.ceil(3 * sigmaPx);
    float[] kernel = new float[2 * half + 1];
    for (int k = -half; k <= half; k++) {
      kernel[k + half] = (float) Math.exp(-k * k / (2 * sigmaPx * sigmaPx));
    }
    rows(view, kernel);
    columns(view, kernel);
  }

  /** Smears linear light along the rows; nothing happens under 1 px. */
  static void alongRows(Exposure view, double lengthPx) {
    if (lengthPx < 1) {
      return;
    }
    int half = (int) Math.ceil(lengthPx / 2);
    float[] kernel = new float[2 * half + 1];
    for (int k = -half; k <= half; k++) {
      kernel[k + half] = (float) Math.max(0, Math.min(1, lengthPx / 2 - Math.abs(k) + 0.5));
    }
    rows(view, kernel);
  }

  private static void rows(Exposure view, float[] kernel) {
    float[] line = new float[3 * view.width()];
    for (int y = 0; y < view.height(); y++) {
      int start = 3 * y * view.width();
      System.arraycopy(view.rgb(), start, line, 0, line.length);
      for (int i = 0; i < line.length; i++) {
        view.rgb()[start + i] = blurred(line, i, 3, kernel);
      }
    }
  }

  private static void columns(Exposure view, float[] kernel) {
    float[] line = new float[view.height()];
    int stride = 3 * view.width();
    for (int x = 0; x < stride; x++) {
      for (int y = 0; y < view.height(); y++) {
        line[y] = view.rgb()[y * stride + x];
      }
      for (int y = 0; y < view.height(); y++) {
        view.rgb()[y * stride + x] = blurred(line, y, 1, kernel);
      }
    }
  }

  private static float blurred(float[] line, int at, int stride, float[] kernel) {
    int half = kernel.length / 2;
    float sum = 0;
    float weight = 0;
    for (int k = -half; k <= half; k++) {
      int i = at + k * stride;
      if (i >= 0 && i < line.length) {
        sum += kernel[k + half] * line[i];
        weight += kernel[k + half];
      }
    }
    return sum / weight;
  }

  /** Adds what a picture differs from its 3 x 3 mean, channel by channel. */
  static void sharpen(byte[] rgb, int width, int height, double strength) {
    if (strength <= 0) {
      return;
    }
    byte[] old = rgb.clone();
    int stride = 3 * width;
    for (int y = 1; y + 1 < height; y++) {
      for (int i = y * stride + 3; i < (y + 1) * stride - 3; i++) {
        int sum = 0;
        for (int row = i - stride; row <= i + stride; row += stride) {
          sum += (old[row - 3] & 0xff) + (old[row] & 0xff) + (old[row + 3] & 0xff);
        }
        int value = old[i] & 0xff;
        double sharp = value + strength * (value - sum / 9.0);
        rgb[i] = (byte) Math.max(0, Math.min(255, Math.round(sharp)));
      }
    }
  }
}
