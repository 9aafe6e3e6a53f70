// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.OptionalDouble;

/**
 * Height over the deck plane of what each pixel of a deck picture shows. A pixel is the ray of the
 * first camera through that place of the deck, as in the photo, so that canopy and heights of a
 * deck picture lie over each other.
 *
 * <p>Owns its array; read only.
 */
public final class HeightMap implements Heights {
  private final int width;
  private final int height;
  private final float[] mm;
  private final Origin origin;

  /** What heights are from, the error that a plant's have in common, and the rows of the pair. */
  record Origin(HeightSource source, double errorMm, OptionalDouble rowsPx) {}

  HeightMap(int width, float[] mm, Origin origin) {
    this.width = width;
    this.height = mm.length / width;
    this.mm = mm;
    this.origin = origin;
  }

  /**
   * Returns a map of these heights.
   *
   * @param width of the deck picture, px
   * @param mm height of each pixel, row by row, NaN where not seen; copied
   * @param source what they are from
   * @param errorMm standard error that a whole plant's mean height has in common, mm
   * @return the map
   */
  public static HeightMap of(int width, float[] mm, HeightSource source, double errorMm) {
    if (width < 1 || mm.length % width != 0 || !(errorMm >= 0)) {
      throw new IllegalArgumentException(
          "a height map needs whole rows, got " + mm.length + " values of width " + width);
    }
    return new HeightMap(width, mm.clone(), new Origin(source, errorMm, OptionalDouble.empty()));
  }

  /** Returns the width, px. */
  public int width() {
    return width;
  }

  /** Returns the height of the picture, px. */
  public int height() {
    return height;
  }

  /** Returns what it is from. */
  public HeightSource source() {
    return origin.source;
  }

  /** Returns the standard error that a whole plant's mean height has in common, mm. */
  public double errorMm() {
    return origin.errorMm;
  }

  @Override
  public OptionalDouble rowsPx() {
    return origin.rowsPx;
  }

  /**
   * Says whether a pixel's height was seen.
   *
   * @param i row times width plus column
   */
  public boolean seen(int i) {
    return !Float.isNaN(mm[i]);
  }

  /**
   * Returns a pixel's height.
   *
   * @param i row times width plus column, of a pixel that was seen
   * @return mm over the deck plane, a little under 0 where the deck itself shows
   */
  public double mm(int i) {
    return mm[i];
  }

  /** Returns the same map with every height lowered. */
  HeightMap loweredBy(double byMm) {
    float[] lower = mm.clone();
    for (int i = 0; i < lower.length; i++) {
      lower[i] -= (float) byMm;
    }
    return new HeightMap(width, lower, origin);
  }
}
