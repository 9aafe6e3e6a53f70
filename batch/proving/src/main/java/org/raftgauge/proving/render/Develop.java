// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import java.util.Random;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.proving.solid.Tint;

/** Turns linear light into an 8-bit sRGB picture, as a camera would. */
public final class Develop {
  private static final int GAUSSIANS = 1 << 16;

  private Develop() {}

  /**
   * Develops a photo.
   *
   * @param view the rendered view; its light is used up
   * @param shot the camera's settings
   * @return the picture
   */
  public static RgbImage develop(Exposure view, Shot shot) {
    gainAndVignette(view, shot);
    Blur.gaussian(view, shot.optics().blurPx());
    Blur.alongRows(view, shot.optics().motionPx());
    noise(view.rgb(), shot);
    byte[] encoded = encode(view.rgb(), shot.finish().contrast());
    Blur.sharpen(encoded, view.width(), view.height(), shot.finish().sharpen());
    return RgbImage.of(view.width(), view.height(), encoded);
  }

  private static void gainAndVignette(Exposure view, Shot shot) {
    Tint gain = shot.gain();
    double haze = shot.optics().haze();
    double cx = view.width() / 2.0;
    double cy = view.height() / 2.0;
    float[] rgb = view.rgb();
    for (int i = 0; i < rgb.length / 3; i++) {
      int row = i / view.width();
      double dx = (i % view.width() - cx) / cx;
      double dy = (row - cy) / cy;
      double fall = 1 - shot.optics().vignetting() * (dx * dx + dy * dy) / 2;
      rgb[3 * i] = (float) veil(rgb[3 * i] * gain.r() * fall, haze);
      rgb[3 * i + 1] = (float) veil(rgb[3 * i + 1] * gain.g() * fall, haze);
      rgb[3 * i + 2] = (float) veil(rgb[3 * i + 2] * gain.b() * fall, haze);
    }
  }

  private static double veil(double value, double haze) {
    return value * (1 - haze) + 0.55 * haze;
  }

  private static void noise(float[] rgb, Shot shot) {
    float[] table = new float[GAUSSIANS];
    Random random = new Random(shot.seed());
    for (int i = 0; i < GAUSSIANS; i++) {
      table[i] = (float) random.nextGaussian();
    }
    double read = shot.noise().read() * shot.noise().read();
    long state = shot.seed() * 0x9e3779b97f4a7c15L + 0x1234567;
    for (int i = 0; i < rgb.length; i++) {
      state ^= state << 13;
      state ^= state >>> 7;
      state ^= state << 17;
      double sigma = Math.sqrt(read + shot.noise().shot() * Math.max(0, Math.min(1.5, rgb[i])));
      rgb[i] += (float) (sigma * table[(int) (state >>> 48)]);
    }
  }

  /** Encodes by a table of 4096 steps of the square root, fine in the dark. */
  private static byte[] encode(float[] rgb, double contrast) {
    byte[] table = new byte[4097];
    for (int i = 0; i < table.length; i++) {
      double root = i / 4096.0;
      table[i] = (byte) Math.round(255 * curve(transfer(root * root), contrast));
    }
    byte[] encoded = new byte[rgb.length];
    for (int i = 0; i < rgb.length; i++) {
      double root = Math.sqrt(Math.max(0, Math.min(1, rgb[i])));
      encoded[i] = table[(int) (root * 4096 + 0.5)];
    }
    return encoded;
  }

  /** The sRGB transfer function, IEC 61966-2-1. */
  private static double transfer(double linear) {
    return linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
  }

  /** Blends the identity with a smoothstep: 0 and 1 stay, the middle steepens. */
  private static double curve(double value, double contrast) {
    return value + contrast * (value * value * (3 - 2 * value) - value);
  }
}
