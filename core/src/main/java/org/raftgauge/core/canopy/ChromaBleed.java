// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Takes back dark pixels that only borrowed their colour from a lit leaf beside them.
 *
 * <p>Cameras and JPEG keep colour at half the resolution of brightness (4:2:0, ITU-T T.871), so
 * over a dark hole or board the green of a leaf runs two or three pixels past its edge. Brightness
 * stays crisp: a pixel much darker than the lit leaf beside it, with dark ground near, is ground,
 * unless the dark part is thick enough to have a colour of its own (a leaf in shadow).
 */
final class ChromaBleed {
  /** How far colour runs, px. */
  private static final int RUN_PX = 3;

  /** Half side of the square in which lit leaf is looked for, px. */
  private static final int LOCAL_PX = 8;

  /**
   * A pixel under this share of the lit leaf's brightness is dark: the middle between a leaf and
   * near black.
   */
  private static final double DARK_SHARE = 0.38;

  private final int width;
  private final int height;
  private final float[] luminance;

  ChromaBleed(int width, int height, float[] luminance) {
    this.width = width;
    this.height = height;
    this.luminance = luminance;
  }

  /**
   * Unsets in {@code leaf} what only borrowed its colour; {@code hole} tells where a planting hole
   * lies under the canopy.
   */
  void takeBack(boolean[] leaf, boolean[] hole) {
    int n = leaf.length;
    boolean[] dark = new boolean[n];
    boolean[] darkGround = new boolean[n];
    boolean[] brighter = brighter(leaf);
    new MaskMean(luminance, brighter, new int[] {width, height}, LOCAL_PX)
        .each(
            (y, lit) -> {
              for (int x = 0, i = y * width; x < width; x++, i++) {
                boolean isDark = luminance[i] < DARK_SHARE * lit[x]; // never where no leaf is near
                dark[i] = isDark && leaf[i];
                darkGround[i] = isDark && !leaf[i];
              }
            });
    boolean[] ownColour = new boolean[n];
    for (int i = 0; i < n; i++) {
      if (dark[i]) {
        ownColour[i] = !besideLit(i, leaf, dark);
      }
    }
    boolean[] nearOwn = BoxFilter.any(ownColour, width, height, RUN_PX + 1);
    boolean[] nearGround = BoxFilter.any(darkGround, width, height, RUN_PX);
    for (int i = 0; i < n; i++) {
      if (dark[i] && !nearOwn[i] && (hole[i] || nearGround[i])) {
        leaf[i] = false;
      }
    }
  }

  /**
   * Says whether leaf much brighter than a pixel lies where its colour may have run from; leaf
   * deeper in the same shadow lends none.
   */
  private boolean besideLit(int at, boolean[] leaf, boolean[] dark) {
    int left = Math.max(0, at % width - RUN_PX);
    int right = Math.min(width - 1, at % width + RUN_PX);
    int bottom = Math.min(height - 1, at / width + RUN_PX);
    for (int y = Math.max(0, at / width - RUN_PX); y <= bottom; y++) {
      for (int x = left; x <= right; x++) {
        int i = y * width + x;
        if (leaf[i] && !dark[i] && luminance[at] < DARK_SHARE * luminance[i]) {
          return true;
        }
      }
    }
    return false;
  }

  /** Returns the leaf that is at least as bright as the mean of the leaf about it. */
  private boolean[] brighter(boolean[] leaf) {
    boolean[] brighter = new boolean[leaf.length];
    new MaskMean(luminance, leaf, new int[] {width, height}, LOCAL_PX)
        .each(
            (y, mean) -> {
              for (int x = 0, i = y * width; x < width; x++, i++) {
                brighter[i] = leaf[i] && luminance[i] >= mean[x];
              }
            });
    return brighter;
  }
}
