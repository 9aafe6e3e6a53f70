// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

import java.util.Arrays;

/**
 * Redraws a picture by a map of source places, mixing pixels in linear light: bilinear between
 * source pixels, source places to 1/32 px; then, where wanted, squares of pixels averaged to one.
 *
 * <p>Source: OpenCV 4.9 {@code remap} and {@code resize} ({@code INTER_AREA}) over {@link
 * LightLevels}, whose results these are to the last bit.
 */
public final class Warp {
  /** Places between two pixels that are told apart. */
  private static final int PARTS = 32;

  private static final float PART = 1f / PARTS;

  /** Floats from here to twice this have no bits for a fraction. */
  private static final float WHOLE = 0x1p23f;

  private static final int WHOLE_BITS = 0x7fffff;

  /** Where each pixel of a new picture comes from. */
  public interface Sources {

    /** Returns the width of the new picture, px. */
    int width();

    /** Returns the height of the new picture, px. */
    int height();

    /**
     * Writes the source places of a row.
     *
     * @param y the row
     * @param xPx receives source columns, length {@link #width}; outside the source gives black
     * @param yPx receives source rows, same length
     */
    void row(int y, float[] xPx, float[] yPx);
  }

  private final byte[] rgb;
  private final int width;
  private final int height;
  private final Sources sources;
  private final float[] xPx;
  private final float[] yPx;

  private Warp(RgbImage image, Sources sources) {
    this.rgb = image.rgb();
    this.width = image.width();
    this.height = image.height();
    this.sources = sources;
    this.xPx = new float[sources.width()];
    this.yPx = new float[sources.width()];
  }

  /**
   * Redraws a picture.
   *
   * @param image the picture
   * @param sources where each pixel comes from
   * @param shrink draws that many pixels a side per pixel of the result and averages them, 1 or
   *     more; must divide the map's width and height
   * @return the new picture, black outside the source
   */
  public static RgbImage redraw(RgbImage image, Sources sources, int shrink) {
    if (shrink < 1 || sources.width() % shrink != 0 || sources.height() % shrink != 0) {
      throw new IllegalArgumentException(
          "shrink must divide " + sources.width() + " x " + sources.height() + ", got " + shrink);
    }
    return new Warp(image, sources).draw(shrink);
  }

  private RgbImage draw(int shrink) {
    int across = sources.width() / shrink;
    int down = sources.height() / shrink;
    byte[] drawn = new byte[3 * across * down];
    int[] sums = new int[3 * across];
    for (int y = 0; y < down; y++) {
      Arrays.fill(sums, 0);
      for (int row = y * shrink; row < (y + 1) * shrink; row++) {
        sources.row(row, xPx, yPx);
        add(sums, shrink);
      }
      for (int i = 0, at = y * sums.length; i < sums.length; i++, at++) {
        drawn[at] = LightLevels.coded(mean(sums[i], shrink));
      }
    }
    return RgbImage.of(across, down, drawn);
  }

  private static int mean(int sum, int shrink) {
    if (shrink == 1) {
      return sum;
    }
    // The mean of four rounds halves up, that of more to even.
    return shrink == 2 ? (sum + 2) >> 2 : rounded(sum * (1f / (shrink * shrink)));
  }

  /** Rounds a number from 0 to 2^23, halves to even. */
  private static int rounded(float number) {
    return Float.floatToRawIntBits(number + WHOLE) & WHOLE_BITS;
  }

  /** Adds the light at a row's source places to its pixels. */
  private void add(int[] sums, int shrink) {
    float right = width - 1 - PART;
    float bottom = height - 1 - PART;
    for (int x = 0, i = 0; x < xPx.length; i += 3) {
      int end = x + shrink;
      do { // often once only: a loop that may run not at all costs a sixth more
        if (xPx[x] >= 0 && yPx[x] >= 0 && xPx[x] < right && yPx[x] < bottom) {
          addBetween(x, sums, i);
        } else {
          addOnRim(x, sums, i);
        }
      } while (++x < end);
    }
  }

  private void addBetween(int x, int[] sums, int i) {
    int u = rounded(PARTS * xPx[x]);
    int v = rounded(PARTS * yPx[x]);
    float toRight = u % PARTS * PART;
    float toLower = v % PARTS * PART;
    float a = (1 - toLower) * (1 - toRight);
    float b = (1 - toLower) * toRight;
    float c = toLower * (1 - toRight);
    float d = toLower * toRight;
    int p = 3 * (v / PARTS * width + u / PARTS);
    int q = p + 3 * width;
    sums[i] += rounded(a * at(p) + b * at(p + 3) + c * at(q) + d * at(q + 3));
    sums[i + 1] += rounded(a * at(p + 1) + b * at(p + 4) + c * at(q + 1) + d * at(q + 4));
    sums[i + 2] += rounded(a * at(p + 2) + b * at(p + 5) + c * at(q + 2) + d * at(q + 5));
  }

  private float at(int i) {
    return LightLevels.ofCode(rgb[i]);
  }

  /** Adds what lies between the outermost pixels and the black beyond them, or there. */
  private void addOnRim(int x, int[] sums, int i) {
    if (!(xPx[x] > -1 && yPx[x] > -1 && xPx[x] < width && yPx[x] < height)) {
      return;
    }
    int u = (int) Math.rint(PARTS * xPx[x]);
    int v = (int) Math.rint(PARTS * yPx[x]);
    int left = Math.floorDiv(u, PARTS);
    int top = Math.floorDiv(v, PARTS);
    float toRight = (u - left * PARTS) * PART;
    float toLower = (v - top * PARTS) * PART;
    for (int c = 0; c < 3; c++) {
      sums[i + c] +=
          rounded(
              (1 - toLower) * (1 - toRight) * light(left, top, c)
                  + (1 - toLower) * toRight * light(left + 1, top, c)
                  + toLower * (1 - toRight) * light(left, top + 1, c)
                  + toLower * toRight * light(left + 1, top + 1, c));
    }
  }

  private float light(int x, int y, int channel) {
    boolean on = x >= 0 && y >= 0 && x < width && y < height;
    return on ? LightLevels.ofCode(rgb[3 * (y * width + x) + channel]) : 0;
  }
}
