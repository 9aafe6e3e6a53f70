// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import org.raftgauge.core.pixels.RgbImage;

/** A small grey copy of a photo, for judging it quickly. Owns its array; read only. */
final class Thumbnail {
  /** Longest side, px. At a board of 1.2 m filling the photo, a px is about 1.5 mm of deck. */
  static final int SIDE_PX = 1000;

  private final int width;
  private final int height;
  private final float[] luma;
  private final double clippedFraction;

  private Thumbnail(int width, int height, float[] luma, double clippedFraction) {
    this.width = width;
    this.height = height;
    this.luma = luma;
    this.clippedFraction = clippedFraction;
  }

  /**
   * Shrinks a photo to a longest side of {@link #SIDE_PX}; a smaller one keeps its size. Each value
   * is the mean luma of four pixels spread over its part of the photo, weights 1/4, 1/2, 1/4.
   *
   * @param image the photo
   * @return its thumbnail
   */
  static Thumbnail of(RgbImage image) {
    double scale = Math.max(1, (double) Math.max(image.width(), image.height()) / SIDE_PX);
    int width = Math.max(1, (int) Math.round(image.width() / scale));
    int height = Math.max(1, (int) Math.round(image.height() / scale));
    int[] columns = samples(image.width(), width);
    int[] rows = samples(image.height(), height);
    byte[] rgb = image.rgb();
    float[] luma = new float[width * height];
    int clipped = 0;
    for (int y = 0; y < height; y++) {
      int upper = 3 * image.width() * rows[2 * y];
      int lower = 3 * image.width() * rows[2 * y + 1];
      for (int x = 0; x < width; x++) {
        int left = 3 * columns[2 * x];
        int right = 3 * columns[2 * x + 1];
        int sum =
            luma4(rgb, upper + left)
                + luma4(rgb, upper + right)
                + luma4(rgb, lower + left)
                + luma4(rgb, lower + right);
        luma[y * width + x] = sum / 16f;
        clipped += clipped(rgb, upper + left);
      }
    }
    return new Thumbnail(width, height, luma, (double) clipped / luma.length);
  }

  /** Returns two places for each of n parts of a side, at a quarter and three quarters of it. */
  private static int[] samples(int sidePx, int parts) {
    int[] at = new int[2 * parts];
    for (int i = 0; i < at.length; i++) {
      at[i] = Math.min(sidePx - 1, (int) ((i + 0.5) * sidePx / at.length));
    }
    return at;
  }

  private static int luma4(byte[] rgb, int at) {
    return (rgb[at] & 0xff) + 2 * (rgb[at + 1] & 0xff) + (rgb[at + 2] & 0xff);
  }

  private static int clipped(byte[] rgb, int at) {
    int all = rgb[at] | rgb[at + 1] | rgb[at + 2];
    boolean full = rgb[at] == -1 || rgb[at + 1] == -1 || rgb[at + 2] == -1;
    return full || all == 0 ? 1 : 0;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** Returns the luma, 0..255 a pixel; read only. */
  float[] luma() {
    return luma;
  }

  /** Returns the share of pixels looked at with a channel at 255 or all at 0. */
  double clippedFraction() {
    return clippedFraction;
  }
}
