// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * What to multiply the linear light of a deck picture's pixels with so that white is 1, the same
 * for all of a small square: the light on a board changes by far less within it. Read only.
 */
public final class TileGains {
  /** Side of a square is two to this many pixels. */
  static final int BITS = 3;

  /** Side of a square, px. */
  static final int TILE = 1 << BITS;

  private final int across;
  private final float[] gains;

  private TileGains(int across, float[] gains) {
    this.across = across;
    this.gains = gains;
  }

  /**
   * Reads a light at the middle of each square.
   *
   * @param light the light
   * @param width of the deck picture, px
   * @param height of the deck picture, px
   * @return what evens it
   */
  public static TileGains of(EvenedLight light, int width, int height) {
    int across = (width + TILE - 1) >> BITS;
    int down = (height + TILE - 1) >> BITS;
    float[] gains = new float[3 * across * down];
    float[] one = new float[3];
    for (int i = 0; i < across * down; i++) {
      double x = (i % across + 0.5) * TILE;
      double y = (Math.floorDiv(i, across) + 0.5) * TILE;
      light.gains(2 * x / width - 1, 2 * y / height - 1, one);
      System.arraycopy(one, 0, gains, 3 * i, 3);
    }
    return new TileGains(across, gains);
  }

  /**
   * Returns the factor of a channel at a pixel.
   *
   * @param channel 0 red, 1 green, 2 blue
   * @param x column
   * @param y row
   * @return above 0
   */
  public float at(int channel, int x, int y) {
    return gains[3 * ((y >> BITS) * across + (x >> BITS)) + channel];
  }

  /** Multiplies rows of a channel with its factors, one row after the other. */
  Binomial.EachRow ofRows(int channel, int width) {
    float[] gain = new float[width];
    return (y, row) -> {
      for (int x = 0; x < width && y % TILE == 0; x++) {
        gain[x] = at(channel, x, y);
      }
      for (int x = 0; x < width; x++) {
        row[x] *= gain[x];
      }
    };
  }
}
