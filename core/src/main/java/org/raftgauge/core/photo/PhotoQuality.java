// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import org.raftgauge.core.pixels.RgbImage;

/**
 * How good a photo is, seen as a whole.
 *
 * @param sharpness 0 (nothing but gradients) to 1; a picture of hard edges has about 0.8
 * @param exposureClippedFraction share of pixels with a channel at 255 or with all channels at 0,
 *     0..1
 * @param meanLevel mean luma, 0..1 of full scale
 * @param brightLevel luma that 99 % of the picture's patches stay under, 0..1
 * @param dark whether it is a frame taken in the dark, to be passed over
 */
public record PhotoQuality(
    double sharpness,
    double exposureClippedFraction,
    double meanLevel,
    double brightLevel,
    boolean dark) {

  /**
   * Bright level under which a frame was taken in the dark: 18 of 255, 0.6 % of white in linear
   * light.
   *
   * <p>Measured: of 184 real and rendered photos darkened to an eighth of their light the lowest
   * had 23; black frames under sensor noise of up to 30 levels had 13 at most. 18 lies midway.
   */
  public static final double DARK_LEVEL = 18 / 255.0;

  /** Share of patches that may be brighter in a dark frame: pilot lamps and their glints. */
  private static final double LAMP_SHARE = 0.01;

  // Side of a patch, px of the thumbnail: its mean has 1/8 of the noise of a pixel.
  private static final int PATCH_PX = 8;

  /** Checks the ranges. */
  public PhotoQuality {
    for (double value : new double[] {sharpness, exposureClippedFraction, meanLevel, brightLevel}) {
      if (!(value >= 0 && value <= 1)) {
        throw new IllegalArgumentException("each measure must be in 0..1, got " + value);
      }
    }
  }

  /**
   * Judges a photo on a thumbnail of at most {@link Thumbnail#SIDE_PX} px, so that photos of one
   * scene get one verdict whatever the camera's resolution.
   *
   * <p>Sharpness is {@link Sharpness}'s. It does not change with brightness or contrast, but with
   * what the picture shows: compare it between photos of one station.
   *
   * @param image the photo
   * @return its measures
   */
  public static PhotoQuality judge(RgbImage image) {
    Thumbnail thumbnail = Thumbnail.of(image);
    float[] luma = thumbnail.luma();
    double sum = 0;
    for (float level : luma) {
      sum += level;
    }
    double brightLevel = brightLevel(thumbnail);
    return new PhotoQuality(
        Sharpness.of(thumbnail),
        thumbnail.clippedFraction(),
        sum / luma.length / 255,
        brightLevel,
        brightLevel < DARK_LEVEL);
  }

  private static double brightLevel(Thumbnail thumbnail) {
    int across = Math.max(1, thumbnail.width() / PATCH_PX);
    int down = Math.max(1, thumbnail.height() / PATCH_PX);
    int[] patchesAtLevel = new int[256];
    for (int i = 0; i < across * down; i++) {
      patchesAtLevel[(int) patchMean(thumbnail, i % across * PATCH_PX, i / across * PATCH_PX)]++;
    }
    int brighter = 0;
    int level = 255;
    while (level > 0 && brighter + patchesAtLevel[level] <= LAMP_SHARE * across * down) {
      brighter += patchesAtLevel[level];
      level--;
    }
    return level / 255.0;
  }

  private static double patchMean(Thumbnail thumbnail, int left, int top) {
    int right = Math.min(left + PATCH_PX, thumbnail.width());
    int bottom = Math.min(top + PATCH_PX, thumbnail.height());
    double sum = 0;
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        sum += thumbnail.luma()[y * thumbnail.width() + x];
      }
    }
    return Math.min(255, sum / ((right - left) * (bottom - top)));
  }
}
