// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

/**
 * The sRGB transfer curve. Light mixes linearly, code values do not: whatever averages or divides
 * light works on linear values.
 *
 * <p>Source: IEC 61966-2-1.
 */
public final class Srgb {
  private static final float[] LINEAR = new float[256];

  static {
    for (int v = 0; v < 256; v++) {
      LINEAR[v] = (float) linear(v / 255.0);
    }
  }

  private Srgb() {}

  /**
   * Returns the linear light of a code value.
   *
   * @param value code value, the low 8 bits are used
   * @return 0 to 1
   */
  public static float linear(byte value) {
    return LINEAR[value & 0xff];
  }

  /**
   * Returns the linear light of a coded share.
   *
   * @param coded 0 to 1
   * @return 0 to 1
   */
  public static double linear(double coded) {
    return coded <= 0.04045 ? coded / 12.92 : Math.pow((coded + 0.055) / 1.055, 2.4);
  }

  /**
   * Returns the coded share of a linear light.
   *
   * @param linear 0 to 1
   * @return 0 to 1
   */
  public static double coded(double linear) {
    return linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
  }

  /**
   * Returns relative luminance.
   *
   * @param red linear, 0 to 1
   * @param green linear, 0 to 1
   * @param blue linear, 0 to 1
   * @return 0 to 1
   */
  public static double luminance(double red, double green, double blue) {
    return 0.21263901 * red + 0.71516868 * green + 0.07219232 * blue;
  }
}
