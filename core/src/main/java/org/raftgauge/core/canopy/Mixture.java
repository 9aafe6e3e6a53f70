// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.OptionalDouble;
import org.raftgauge.core.pixels.Srgb;

/**
 * Tells how much of a pixel is leaf, from the light of the leaf and of the ground beside it.
 *
 * <p>A pixel across an edge mixes the light of both sides linearly, but the ground right beside a
 * leaf lies in its shade: {@code p = c l + u g}, where the share c of leaf and the light u of the
 * ground add up to 1 where there is no shade, and to less in it. Both are found by least squares:
 * brightness is sharp, colour is blurred (cameras and JPEG keep it at half the resolution), and
 * {@code c + u} is 1 give or take {@link #SHADE}. Leaves also throw green light on the ground,
 * which shade alone would take for leaf: what was not taken for leaf is no more of it than along
 * the straight line from ground to leaf, which green light hardly moves.
 */
final class Mixture {
  /** Squared contrast of leaf and ground, in linear light, under which 8 bits tell nothing. */
  private static final double LEAST_CONTRAST = 1e-4;

  /** What lies this many standard deviations of the photo's noise off is no noise. */
  private static final double SPREADS = 3;

  /**
   * Before ground this much darker than the leaf, brightness alone tells the mixture: colour is
   * half as sharp.
   */
  static final double DARK_GROUND = 0.5;

  /**
   * A pixel whose squared distance from what both sides mix to is over this share of their squared
   * contrast shows a third thing, such as the wall of a hole, and is no mixture.
   */
  private static final double OFF_MIX = 0.03;

  /** Error of brightness, as a share of its contrast (working value, as are the next two). */
  private static final double BRIGHTNESS_ERROR = 0.05;

  /** Error of colour, as a share of its contrast. */
  private static final double COLOUR_ERROR = 0.15;

  /** Standard deviation of the shade beside leaves. */
  private static final double SHADE = 0.2;

  private final double noise;

  /**
   * Sets up.
   *
   * @param noise standard deviation of a channel's noise, linear light
   */
  Mixture(double noise) {
    this.noise = noise;
  }

  /**
   * Returns how much of a pixel is leaf.
   *
   * @param pixel its linear light: red, green, blue first
   * @param leaf that of the leaf beside it
   * @param ground that of the ground beside it
   * @param taken whether it was taken for leaf
   * @return 0 to 1; nothing where it is no mixture of both or they look alike
   */
  OptionalDouble share(double[] pixel, double[] leaf, double[] ground, boolean taken) {
    double leafLight = luminance(leaf);
    double groundLight = luminance(ground);
    if (byBrightness(leaf, ground)) {
      return OptionalDouble.of(
          clamped((luminance(pixel) - groundLight) / (leafLight - groundLight)));
    }
    double line = 0;
    double contrast = 0;
    for (int c = 0; c < 3; c++) {
      double d = leaf[c] - ground[c];
      line += (pixel[c] - ground[c]) * d;
      contrast += d * d;
    }
    double blur = SPREADS * SPREADS * noise * noise;
    if (contrast < Math.max(LEAST_CONTRAST, blur)) {
      return OptionalDouble.empty();
    }
    double sharp = weight(BRIGHTNESS_ERROR, leafLight - groundLight);
    double colour =
        Math.hypot(
            leaf[0] - leafLight - ground[0] + groundLight,
            leaf[2] - leafLight - ground[2] + groundLight);
    double soft = weight(COLOUR_ERROR, colour);
    double shade = 1 / (SHADE * SHADE);
    double leafLeaf = dot(leaf, leaf, sharp, soft) + shade;
    double leafGround = dot(leaf, ground, sharp, soft) + shade;
    double groundGround = dot(ground, ground, sharp, soft) + shade;
    double leafPixel = dot(leaf, pixel, sharp, soft) + shade;
    double groundPixel = dot(ground, pixel, sharp, soft) + shade;
    double det = leafLeaf * groundGround - leafGround * leafGround;
    double share = clamped((leafPixel * groundGround - groundPixel * leafGround) / det);
    double lit = (groundPixel * leafLeaf - leafPixel * leafGround) / det;
    if (away(pixel, leaf, ground, share, lit) > OFF_MIX * contrast + 2 * blur) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        taken ? share : lower(share, clamped(line / contrast), SPREADS * noise / colour));
  }

  /** Returns the lower of two shares, and their mean where no more than noise lies between. */
  private static double lower(double a, double b, double between) {
    return 0.5 * (a + b - Math.max(0, Math.abs(a - b) - between));
  }

  /** Says whether brightness alone tells the mixture of two lights, the ground being dark. */
  static boolean byBrightness(double[] leaf, double[] ground) {
    return luminance(ground) < DARK_GROUND * luminance(leaf);
  }

  /** Weight of a sum's part whose contrast is given. */
  private double weight(double errorShare, double contrast) {
    double error = errorShare * contrast;
    return 1 / (noise * noise + error * error + 1e-8);
  }

  /** Product of two lights in brightness and in colour (red and blue less brightness), weighted. */
  private static double dot(double[] a, double[] b, double sharp, double soft) {
    double ya = luminance(a);
    double yb = luminance(b);
    return sharp * ya * yb + soft * ((a[0] - ya) * (b[0] - yb) + (a[2] - ya) * (b[2] - yb));
  }

  private static double away(
      double[] pixel, double[] leaf, double[] ground, double share, double lit) {
    double away = 0;
    for (int c = 0; c < 3; c++) {
      double off = pixel[c] - share * leaf[c] - lit * ground[c];
      away += off * off;
    }
    return away;
  }

  private static double luminance(double[] light) {
    return Srgb.luminance(light[0], light[1], light[2]);
  }

  private static double clamped(double share) {
    return Math.max(0, Math.min(1, share));
  }
}
