// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import org.raftgauge.core.pixels.RgbImage;

/** Tells a photo without colour: grey values hide every leaf. */
final class Greyness {
  /** Channels of a grey picture differ by no more than rounding and JPEG leave, of 255. */
  private static final int LEAST_DIFFERENCE = 6;

  /** Even a white board under white light shows this share of coloured pixels. */
  private static final double LEAST_SHARE = 0.001;

  private static final int STEP = 7;

  private Greyness() {}

  static boolean isGrey(RgbImage image) {
    byte[] rgb = image.rgb();
    int n = 0;
    int coloured = 0;
    for (int i = 0; i + 2 < rgb.length; i += 3 * STEP) {
      int r = rgb[i] & 0xff;
      int g = rgb[i + 1] & 0xff;
      int b = rgb[i + 2] & 0xff;
      int difference = Math.max(r, Math.max(g, b)) - Math.min(r, Math.min(g, b));
      coloured += difference > LEAST_DIFFERENCE ? 1 : 0;
      n++;
    }
    return coloured < LEAST_SHARE * n;
  }
}
