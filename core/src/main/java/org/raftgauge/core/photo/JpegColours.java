// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/**
 * Turns the levels that a JPEG stores into r g b.
 *
 * <p>{@code R = Y + 1.402 (Cr - 128), G = Y - 0.344136 (Cb - 128) - 0.714136 (Cr - 128), B = Y +
 * 1.772 (Cb - 128)}, rounded and clamped to 0..255.
 *
 * <p>Source: ITU-T T.871 (2011, JFIF), section 7. Differs from it: 16-bit fixed point as in the IJG
 * library, so that results are the same bytes as that library's.
 */
final class JpegColours {
  private static final int BITS = 16;
  private static final int HALF = 1 << (BITS - 1);
  private static final int CR_TO_R = fixed(1.402);
  private static final int CB_TO_G = fixed(0.34414);
  private static final int CR_TO_G = fixed(0.71414);
  private static final int CB_TO_B = fixed(1.772);

  private JpegColours() {}

  private static int fixed(double factor) {
    return (int) (factor * (1 << BITS) + 0.5);
  }

  /**
   * Turns levels into r g b in place.
   *
   * @param levels interleaved Y Cb Cr, length a multiple of 3
   */
  static void toRgb(byte[] levels) {
    for (int i = 0; i + 2 < levels.length; i += 3) {
      int y = levels[i] & 0xff;
      int cb = (levels[i + 1] & 0xff) - 128;
      int cr = (levels[i + 2] & 0xff) - 128;
      levels[i] = clamp(y + ((CR_TO_R * cr + HALF) >> BITS));
      levels[i + 1] = clamp(y + ((HALF - CB_TO_G * cb - CR_TO_G * cr) >> BITS));
      levels[i + 2] = clamp(y + ((CB_TO_B * cb + HALF) >> BITS));
    }
  }

  /** Returns the r g b of the Y Cb Cr at an index as {@code 0xrrggbb}. */
  static int toRgb(byte[] levels, int at) {
    byte[] pixel = {levels[at], levels[at + 1], levels[at + 2]};
    toRgb(pixel);
    return (pixel[0] & 0xff) << 16 | (pixel[1] & 0xff) << 8 | (pixel[2] & 0xff);
  }

  private static byte clamp(int level) {
    // Levels within 0..255, nearly all, have no other bits set.
    return (byte) ((level & ~0xff) == 0 ? level : ~(level >> 31));
  }

  /**
   * Repeats each grey level three times.
   *
   * @param grey one level a pixel
   * @return r g b, three times as long
   */
  static byte[] expandGrey(byte[] grey) {
    byte[] rgb = new byte[3 * grey.length];
    for (int i = 0; i < grey.length; i++) {
      rgb[3 * i] = grey[i];
      rgb[3 * i + 1] = grey[i];
      rgb[3 * i + 2] = grey[i];
    }
    return rgb;
  }
}
