// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * A colour in CIELAB with the sRGB white as reference.
 *
 * <p>Source: CIE 15 / ISO 11664-4; matrix derived from the primaries and white of IEC 61966-2-1.
 *
 * @param l lightness, 0 for black to 100 for white
 * @param a green (negative) to red
 * @param b blue (negative) to yellow
 */
public record Cielab(double l, double a, double b) {
  private static final double EDGE = 6.0 / 29;

  /** Two thirds of the bits of 1.0, less what makes a third of a number's bits its root's best. */
  private static final long THIRD = 0x2A9F76253119D328L;

  /**
   * Converts linear sRGB.
   *
   * @param red linear, 0 to 1; a little over 1 is allowed
   * @param green linear
   * @param blue linear
   * @return the colour
   */
  public static Cielab ofLinear(double red, double green, double blue) {
    double x = (0.4123908 * red + 0.35758434 * green + 0.18048079 * blue) / 0.95045593;
    double y = 0.21263901 * red + 0.71516868 * green + 0.07219232 * blue;
    double z = (0.01933082 * red + 0.11919478 * green + 0.95053215 * blue) / 1.08905775;
    double fx = f(x);
    double fy = f(y);
    double fz = f(z);
    return new Cielab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
  }

  private static double f(double t) {
    return t > EDGE * EDGE * EDGE ? cbrt(t) : t / (3 * EDGE * EDGE) + 4.0 / 29;
  }

  /**
   * Returns a cube root to 14 digits, several times faster than the library's: two of Halley's
   * steps, each of which cubes the error, from a third of the exponent, which is within 4 %.
   */
  static double cbrt(double t) {
    double root = Double.longBitsToDouble(Double.doubleToLongBits(t) / 3 + THIRD);
    for (int step = 0; step < 2; step++) {
      double cube = root * root * root;
      root *= (cube + 2 * t) / (2 * cube + t);
    }
    return root;
  }
}
