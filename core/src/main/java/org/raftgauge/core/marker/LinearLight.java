// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Reads a photo's relative luminance in linear light between pixels.
 *
 * <p>Blur mixes light, not code values: only in linear light does the middle of a blurred edge sit
 * on the edge. Source of the curve and weights: IEC 61966-2-1 (sRGB).
 */
public final class LinearLight {
  private static final float[] LINEAR = linearTable();
  private static final double[][] LUMINANCE = {
    weighted(0.2126), weighted(0.7152), weighted(0.0722)
  };

  /** No light of a channel counts, and all of it does. */
  private static final double[] NONE = weighted(0);

  private static final double[] ALL = weighted(1);

  /** Light that is lost in a camera's floor. */
  private static final double DARK = 0.012;

  /** Green leaf has at least this many times the green over red, times that over blue: e. */
  private static final double GREENER = Math.E;

  private final RgbImage image;
  private final double[] red;
  private final double[] green;
  private final double[] blue;

  private LinearLight(RgbImage image, double[]... tables) {
    this.image = image;
    this.red = tables[0];
    this.green = tables[1];
    this.blue = tables[2];
  }

  /**
   * Wraps a photo.
   *
   * @param image the photo
   * @return its light
   */
  public static LinearLight of(RgbImage image) {
    return new LinearLight(image, LUMINANCE);
  }

  /**
   * Reads one colour of the photo's light instead of its luminance.
   *
   * @param channel 0 red, 1 green, 2 blue
   * @return the same photo
   */
  public LinearLight only(int channel) {
    double[][] tables = {NONE, NONE, NONE};
    tables[channel] = ALL;
    return new LinearLight(image, tables);
  }

  /**
   * Says whether a place lies on the photo, so that {@link #at} reads four pixels.
   *
   * @param p the place
   * @return true if it does
   */
  public boolean has(PointPx p) {
    return has(p.xPx(), p.yPx());
  }

  /**
   * Says whether a place lies on the photo.
   *
   * @param x column, px
   * @param y row, px
   * @return true if it does
   */
  public boolean has(double x, double y) {
    return x >= 0 && y >= 0 && x < image.width() - 1 && y < image.height() - 1;
  }

  /**
   * Returns the luminance at a place, bilinear between pixels; beyond the photo, that of its rim.
   *
   * @param x column, px
   * @param y row, px
   * @return 0 to 1
   */
  public double at(double x, double y) {
    double cx = Math.max(0, Math.min(image.width() - 1.0, x));
    double cy = Math.max(0, Math.min(image.height() - 1.0, y));
    int x0 = Math.min((int) cx, Math.max(0, image.width() - 2));
    int y0 = Math.min((int) cy, Math.max(0, image.height() - 2));
    int x1 = Math.min(x0 + 1, image.width() - 1);
    int y1 = Math.min(y0 + 1, image.height() - 1);
    double fx = cx - x0;
    double fy = cy - y0;
    return (1 - fy) * ((1 - fx) * pixel(x0, y0) + fx * pixel(x1, y0))
        + fy * ((1 - fx) * pixel(x0, y1) + fx * pixel(x1, y1));
  }

  /**
   * Returns red, green and blue light at the pixel nearest a place; beyond the photo, of its rim.
   *
   * @param p the place
   * @return three numbers, 0 to 1
   */
  public double[] rgbAt(PointPx p) {
    int x = (int) Math.max(0, Math.min(image.width() - 1, Math.round(p.xPx())));
    int y = (int) Math.max(0, Math.min(image.height() - 1, Math.round(p.yPx())));
    return new double[] {
      LINEAR[image.value(x, y, 0)], LINEAR[image.value(x, y, 1)], LINEAR[image.value(x, y, 2)]
    };
  }

  /**
   * Says whether green leaf shows at the pixel nearest a place; beyond the photo, at its rim.
   *
   * @param x column, px
   * @param y row, px
   * @return true if its colour is far greener than boards, water and stains are
   */
  public boolean isLeafAt(double x, double y) {
    int px = (int) Math.max(0, Math.min(image.width() - 1, Math.round(x)));
    int py = (int) Math.max(0, Math.min(image.height() - 1, Math.round(y)));
    double red = LINEAR[image.value(px, py, 0)] + DARK;
    double green = LINEAR[image.value(px, py, 1)] + DARK;
    double blue = LINEAR[image.value(px, py, 2)] + DARK;
    return green > red && green * green > GREENER * red * blue;
  }

  private double pixel(int x, int y) {
    int i = 3 * (y * image.width() + x);
    byte[] rgb = image.rgb();
    return red[rgb[i] & 0xff] + green[rgb[i + 1] & 0xff] + blue[rgb[i + 2] & 0xff];
  }

  private static double[] weighted(double weight) {
    double[] table = new double[256];
    for (int v = 0; v < 256; v++) {
      table[v] = weight * LINEAR[v];
    }
    return table;
  }

  private static float[] linearTable() {
    float[] table = new float[256];
    for (int v = 0; v < 256; v++) {
      double c = v / 255.0;
      table[v] = (float) (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }
    return table;
  }
}
