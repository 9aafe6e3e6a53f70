// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.Optional;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.Cielab;
import org.raftgauge.core.measure.CanopyMap;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Srgb;

/**
 * Paints a photo in the palette as the current colour model sees it, so that only its mistakes have
 * to be mended. What is mixed at edges, and what lies on no board, is left out.
 */
public final class FirstPainting {
  /** Coverage, 0..255, under which a pixel shows no leaf and over which nothing else. */
  private static final int LEAST_LEAF = 242;

  private static final int MOST_OTHER = 13;

  /** L* under which what is not leaf is painted dark (a working value). */
  private static final double DARK = 25;

  /** a* past which leaf is painted red (a working value). */
  private static final double RED = 5;

  private FirstPainting() {}

  /**
   * Paints a photo.
   *
   * @param photo the upright photo
   * @param canopy what was found on it
   * @param onBoard whether a pixel lies on a board that was measured
   * @return the painting, of the photo's size
   */
  public static RgbImage of(RgbImage photo, CanopyMap canopy, boolean[] onBoard) {
    byte[] painted = new byte[3 * onBoard.length];
    for (int i = 0; i < onBoard.length; i++) {
      int colour =
          onBoard[i]
              ? tissue(photo.rgb(), i, canopy.coverage()[i] & 0xff)
                  .map(Tissue::rgb)
                  .orElse(Labels.IGNORE_RGB)
              : Labels.IGNORE_RGB;
      painted[3 * i] = (byte) (colour >> 16);
      painted[3 * i + 1] = (byte) (colour >> 8);
      painted[3 * i + 2] = (byte) colour;
    }
    return RgbImage.of(photo.width(), photo.height(), painted);
  }

  private static Optional<Tissue> tissue(byte[] rgb, int i, int coverage) {
    if (coverage > MOST_OTHER && coverage < LEAST_LEAF) {
      return Optional.empty();
    }
    Cielab lab =
        Cielab.ofLinear(
            Srgb.linear(rgb[3 * i]), Srgb.linear(rgb[3 * i + 1]), Srgb.linear(rgb[3 * i + 2]));
    if (coverage >= LEAST_LEAF) {
      return Optional.of(lab.a() > RED ? Tissue.RED : Tissue.GREEN);
    }
    return Optional.of(lab.l() < DARK ? Tissue.DARK : Tissue.BOARD);
  }
}
