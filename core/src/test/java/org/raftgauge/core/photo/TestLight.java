// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Random;
import java.util.function.IntUnaryOperator;
import org.raftgauge.core.pixels.RgbImage;

/** Changes a picture as light, lens and sensor would, by slow plain loops. */
final class TestLight {

  private TestLight() {}

  /** Applies a rule to every level. */
  static RgbImage change(RgbImage image, IntUnaryOperator rule) {
    byte[] rgb = image.rgb().clone();
    for (int i = 0; i < rgb.length; i++) {
      rgb[i] = (byte) Math.max(0, Math.min(255, rule.applyAsInt(rgb[i] & 0xff)));
    }
    return RgbImage.of(image.width(), image.height(), rgb);
  }

  /** Multiplies the linear light, by the sRGB curve of IEC 61966-2-1. */
  static RgbImage expose(RgbImage image, double factor) {
    int[] changed = new int[256];
    for (int i = 0; i < 256; i++) {
      double v = i / 255.0;
      double light = factor * (v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4));
      double level = light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
      changed[i] = (int) Math.round(255 * level);
    }
    return change(image, level -> changed[level]);
  }

  /** Adds Gaussian noise of a standard deviation in levels. */
  static RgbImage addNoise(RgbImage image, double levels, long seed) {
    Random random = new Random(seed);
    return change(image, level -> (int) Math.round(level + levels * random.nextGaussian()));
  }

  /** Blurs with a Gaussian along both directions. */
  static RgbImage blur(RgbImage image, double sigmaPx) {
    return blurLines(blurAlongX(image, sigmaPx), sigmaPx, 3 * image.width(), image.height());
  }

  /** Blurs with a Gaussian along x. */
  static RgbImage blurAlongX(RgbImage image, double sigmaPx) {
    return blurLines(image, sigmaPx, 3, image.width());
  }

  private static RgbImage blurLines(RgbImage image, double sigmaPx, int step, int length) {
    int reach = (int) Math.ceil(4 * sigmaPx);
    double[] kernel = new double[reach + 1];
    double sum = 0;
    for (int k = 0; k <= reach; k++) {
      kernel[k] = Math.exp(-k * k / (2 * sigmaPx * sigmaPx));
      sum += k == 0 ? kernel[k] : 2 * kernel[k];
    }
    byte[] from = image.rgb();
    byte[] rgb = new byte[from.length];
    for (int i = 0; i < rgb.length; i++) {
      int place = i / step % length;
      double blurred = 0;
      for (int k = -reach; k <= reach; k++) {
        int inside = Math.max(0, Math.min(length - 1, place + k));
        blurred += kernel[Math.abs(k)] * (from[i + (inside - place) * step] & 0xff);
      }
      rgb[i] = (byte) Math.round(blurred / sum);
    }
    return RgbImage.of(image.width(), image.height(), rgb);
  }

  /** Cuts out the middle, of a side at most as long as given. */
  static RgbImage middle(RgbImage image, int sidePx) {
    int width = Math.min(sidePx, image.width());
    int height = Math.min(sidePx, image.height());
    int left = (image.width() - width) / 2;
    int top = (image.height() - height) / 2;
    byte[] rgb = new byte[3 * width * height];
    for (int y = 0; y < height; y++) {
      int from = 3 * ((top + y) * image.width() + left);
      System.arraycopy(image.rgb(), from, rgb, 3 * y * width, 3 * width);
    }
    return RgbImage.of(width, height, rgb);
  }

  /** Repeats each pixel 2 x 2. */
  static RgbImage doubled(RgbImage image) {
    int width = 2 * image.width();
    byte[] rgb = new byte[4 * image.rgb().length];
    for (int i = 0; i < rgb.length; i++) {
      int x = i / 3 % width;
      int y = i / 3 / width;
      rgb[i] = (byte) image.value(x / 2, y / 2, i % 3);
    }
    return RgbImage.of(width, 2 * image.height(), rgb);
  }
}
