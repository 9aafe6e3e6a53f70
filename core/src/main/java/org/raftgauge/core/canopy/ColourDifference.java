// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * How different two colours look: CIEDE2000 with all three weights 1. Under 1 hardly anyone sees a
 * difference; 5 is plain beside each other.
 *
 * <p>Source: CIE 142-2001 and ISO/CIE 11664-6; steps and names as in Sharma, Wu and Dalal 2005,
 * Color Research and Application 30:21-30, doi:10.1002/col.20070.
 */
public final class ColourDifference {
  private static final double POW25_7 = 6103515625.0;

  private ColourDifference() {}

  /** A colour in the space that the difference is taken in: lightness, chroma, hue in degrees. */
  private record Polar(double l, double c, double h) {
    static Polar of(Cielab lab, double g) {
      double a = (1 + g) * lab.a();
      double h = Math.toDegrees(Math.atan2(lab.b(), a));
      return new Polar(lab.l(), Math.hypot(a, lab.b()), h < 0 ? h + 360 : h);
    }
  }

  /**
   * Returns the difference.
   *
   * @param one a colour
   * @param other another one; swapping the two changes nothing
   * @return 0 for the same colour; black and white are 100 apart
   */
  public static double ciede2000(Cielab one, Cielab other) {
    double mean = (Math.hypot(one.a(), one.b()) + Math.hypot(other.a(), other.b())) / 2;
    double g = 0.5 * (1 - share25(mean));
    return between(Polar.of(one, g), Polar.of(other, g));
  }

  private static double between(Polar p, Polar q) {
    double product = p.c * q.c;
    double dl = q.l - p.l;
    double dc = q.c - p.c;
    double turn = product == 0 ? 0 : Math.IEEEremainder(q.h - p.h, 360);
    double dh = 2 * Math.sqrt(product) * Math.sin(Math.toRadians(turn / 2));
    double l = (p.l + q.l) / 2;
    double c = (p.c + q.c) / 2;
    double h = meanHue(p, q, product);
    double off = (l - 50) * (l - 50);
    double sl = 1 + 0.015 * off / Math.sqrt(20 + off);
    double sc = 1 + 0.045 * c;
    double sh = 1 + 0.015 * c * hueWeight(h);
    double lightness = dl / sl;
    double chroma = dc / sc;
    double hue = dh / sh;
    return Math.sqrt(
        lightness * lightness + chroma * chroma + hue * hue + blueTurn(c, h) * chroma * hue);
  }

  /** Mean hue on the shorter way round, degrees; of a grey and a colour the colour's. */
  private static double meanHue(Polar p, Polar q, double product) {
    double sum = p.h + q.h;
    if (product == 0) {
      return sum;
    }
    if (Math.abs(p.h - q.h) <= 180) {
      return sum / 2;
    }
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  }

  private static double hueWeight(double h) {
    return 1
        - 0.17 * cos(h - 30)
        + 0.24 * cos(2 * h)
        + 0.32 * cos(3 * h + 6)
        - 0.20 * cos(4 * h - 63);
  }

  /** In blue, chroma and hue trade against each other. */
  private static double blueTurn(double c, double h) {
    double away = (h - 275) / 25;
    double turn = 30 * Math.exp(-away * away);
    return -Math.sin(Math.toRadians(2 * turn)) * 2 * share25(c);
  }

  private static double share25(double c) {
    double c7 = Math.pow(c, 7);
    return Math.sqrt(c7 / (c7 + POW25_7));
  }

  private static double cos(double degrees) {
    return Math.cos(Math.toRadians(degrees));
  }
}
