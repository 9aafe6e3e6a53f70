// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.pixels.RgbImage;

/**
 * What each pixel of a photo shows, as it was painted. A painted colour counts as the nearest one
 * of the palette if that is near; magenta is left out.
 *
 * <p>Owns its array; read only.
 */
public final class Labels {
  /** The colour of what is not to be learned from. */
  public static final int IGNORE_RGB = 0xFF00FF;

  /** Painting programs round a little; colours of the palette are over twice as far apart. */
  private static final int NEAR = 32;

  private static final byte IGNORED = -1;
  private static final List<Tissue> TISSUES = List.of(Tissue.values());

  private final int width;
  private final int height;
  private final byte[] tissue;
  private final double unknownFraction;

  private Labels(int width, int height, byte[] tissue, double unknownFraction) {
    this.width = width;
    this.height = height;
    this.tissue = tissue;
    this.unknownFraction = unknownFraction;
  }

  /**
   * Reads a painted picture.
   *
   * @param picture in the palette's colours
   * @return its labels
   */
  public static Labels read(RgbImage picture) {
    byte[] rgb = picture.rgb();
    byte[] tissue = new byte[rgb.length / 3];
    int unknown = 0;
    for (int i = 0; i < tissue.length; i++) {
      int colour =
          (rgb[3 * i] & 0xff) << 16 | (rgb[3 * i + 1] & 0xff) << 8 | (rgb[3 * i + 2] & 0xff);
      tissue[i] = nearest(colour);
      unknown += tissue[i] == IGNORED && apart(colour, IGNORE_RGB) > NEAR ? 1 : 0;
    }
    return new Labels(picture.width(), picture.height(), tissue, (double) unknown / tissue.length);
  }

  private static byte nearest(int colour) {
    for (int t = 0; t < TISSUES.size(); t++) {
      if (apart(colour, TISSUES.get(t).rgb()) <= NEAR) {
        return (byte) t;
      }
    }
    return IGNORED;
  }

  /** Largest difference of a channel. */
  static int apart(int a, int b) {
    int most = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      most = Math.max(most, Math.abs((a >> shift & 0xff) - (b >> shift & 0xff)));
    }
    return most;
  }

  /** Returns the width in px. */
  public int width() {
    return width;
  }

  /** Returns the height in px. */
  public int height() {
    return height;
  }

  /** Returns the share of pixels in colours that are not in the palette, 0..1. */
  public double unknownFraction() {
    return unknownFraction;
  }

  /**
   * Returns what a pixel shows.
   *
   * @param x column
   * @param y row
   * @return nothing beyond the picture and where it is to be left out
   */
  public Optional<Tissue> at(int x, int y) {
    if (x < 0 || y < 0 || x >= width || y >= height || tissue[y * width + x] == IGNORED) {
      return Optional.empty();
    }
    return Optional.of(TISSUES.get(tissue[y * width + x]));
  }

  /** Says whether all pixels about one are painted as it is; outlines are drawn a pixel off. */
  boolean isInner(int x, int y) {
    Optional<Tissue> own = at(x, y);
    return own.isPresent()
        && own.equals(at(x - 1, y))
        && own.equals(at(x + 1, y))
        && own.equals(at(x, y - 1))
        && own.equals(at(x, y + 1));
  }
}
