// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import org.raftgauge.core.pixels.RgbImage;

/**
 * A picture in which only what is nearly black stays so, and all that is brighter is white: a
 * marker whose border a leaf touches stands alone again, for leaf is far from black, and so are
 * shadows on a board. Between both lies a ramp, so that edges keep their place within a pixel.
 */
final class BlackAlone {
  /** Shares of the picture's white, as coded, up to which all is black and from which white. */
  private static final double BLACK = 0.12;

  private static final double NO_BLACK = 0.42;

  /** Share of the pixels that is darker than white. */
  private static final double WHITE = 0.98;

  private BlackAlone() {}

  /** Returns the picture. */
  static RgbImage of(RgbImage image) {
    byte[] rgb = image.rgb();
    byte[] ramp = ramp(white(rgb));
    byte[] alone = new byte[rgb.length];
    for (int i = 0; i < rgb.length; i += 3) {
      byte level = ramp[Math.max(rgb[i] & 0xff, Math.max(rgb[i + 1] & 0xff, rgb[i + 2] & 0xff))];
      alone[i] = level;
      alone[i + 1] = level;
      alone[i + 2] = level;
    }
    return RgbImage.of(image.width(), image.height(), alone);
  }

  /** Returns what each level becomes, as coded. */
  private static byte[] ramp(int white) {
    byte[] ramp = new byte[256];
    for (int level = 0; level < ramp.length; level++) {
      double share = (level / Math.max(1.0, white) - BLACK) / (NO_BLACK - BLACK);
      ramp[level] = (byte) Math.round(255 * Math.max(0, Math.min(1, share)));
    }
    return ramp;
  }

  private static int white(byte[] rgb) {
    int[] counts = new int[256];
    for (int i = 1; i < rgb.length; i += 3) {
      counts[rgb[i] & 0xff]++;
    }
    int wanted = (int) (WHITE * rgb.length / 3);
    int level = 0;
    for (int sum = counts[0]; sum < wanted && level < 255; sum += counts[level]) {
      level++;
    }
    return level;
  }
}
