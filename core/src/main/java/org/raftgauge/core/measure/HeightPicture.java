// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

/**
 * Heights over the deck of what a photo shows, in its own pixels.
 *
 * <p>Owns its array; read only.
 */
public final class HeightPicture {
  private final int width;
  private final int height;
  private final float[] mm;

  /**
   * Wraps heights.
   *
   * @param width px
   * @param height px
   * @param mm mm over the deck of each pixel, NaN where none was seen; length {@code width *
   *     height}
   */
  public HeightPicture(int width, int height, float[] mm) {
    if (mm.length != width * height) {
      throw new IllegalArgumentException("mm must have width * height values, got " + mm.length);
    }
    this.width = width;
    this.height = height;
    this.mm = mm;
  }

  /** Returns the width in px. */
  public int width() {
    return width;
  }

  /** Returns the height in px. */
  public int height() {
    return height;
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
   * @return mm over the deck
   */
  public double mm(int i) {
    return mm[i];
  }
}
