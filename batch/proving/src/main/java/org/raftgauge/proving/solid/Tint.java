// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

/**
 * A colour as linear red, green and blue: a reflectance (0..1) or a light (0 and up).
 *
 * @param r linear red, at least 0
 * @param g linear green, at least 0
 * @param b linear blue, at least 0
 */
public record Tint(double r, double g, double b) {

  /**
   * Turns an sRGB triple into linear values.
   *
   * <p>Source: IEC 61966-2-1, the inverse transfer function.
   *
   * @param rgb {@code 0xRRGGBB}
   * @return the linear colour
   */
  public static Tint srgb(int rgb) {
    return new Tint(linear((rgb >> 16) & 0xff), linear((rgb >> 8) & 0xff), linear(rgb & 0xff));
  }

  private static double linear(int value) {
    double c = value / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  /**
   * Multiplies all three values.
   *
   * @param factor at least 0
   * @return the new colour
   */
  public Tint times(double factor) {
    return new Tint(r * factor, g * factor, b * factor);
  }

  /**
   * Multiplies channel by channel.
   *
   * @param other the other colour
   * @return the new colour
   */
  public Tint times(Tint other) {
    return new Tint(r * other.r, g * other.g, b * other.b);
  }

  /**
   * Blends with another colour.
   *
   * @param other the other colour
   * @param share of the other, 0..1
   * @return the blend
   */
  public Tint mix(Tint other, double share) {
    return new Tint(
        r + (other.r - r) * share, g + (other.g - g) * share, b + (other.b - b) * share);
  }
}
