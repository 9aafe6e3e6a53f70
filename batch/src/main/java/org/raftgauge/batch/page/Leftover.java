// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import org.raftgauge.core.measure.CanopyMap;

/** Hatches canopy that no site owns. */
final class Leftover {
  private static final int CANOPY = 128;

  private Leftover() {}

  /**
   * Hatches.
   *
   * @param picture the drawn photo
   * @param canopy the photo's canopy
   * @param scale from the one to the other
   */
  static void hatch(BufferedImage picture, CanopyMap canopy, Scale scale) {
    int[] rgb = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
    for (int y = 0; y < scale.height(); y++) {
      int row = (int) ((long) y * canopy.height() / scale.height()) * canopy.width();
      for (int x = 0; x < scale.width(); x++) {
        int i = row + (int) ((long) x * canopy.width() / scale.width());
        if (canopy.owner()[i] == 0 && (canopy.coverage()[i] & 0xff) >= CANOPY) {
          int at = y * picture.getWidth() + x;
          rgb[at] = hatched(rgb[at], x, y);
        }
      }
    }
  }

  /** Stripes of vermillion from lower left to upper right, a thin tint between them. */
  static int hatched(int rgb, int x, int y) {
    int share = (x + y) % 12 < 5 ? 220 : 50;
    int ink = Palette.VERMILLION.getRGB();
    int mixed = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      int a = (rgb >> shift) & 0xff;
      int b = (ink >> shift) & 0xff;
      mixed |= ((a * (255 - share) + b * share) / 255) << shift;
    }
    return mixed;
  }
}
