// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.List;
import org.raftgauge.core.measure.CanopyMap;

/** Hatches canopy on a board that no site owns: what the raft's leftover counts, and no more. */
final class Leftover {
  private static final int CANOPY = 128;

  private Leftover() {}

  /**
   * Hatches.
   *
   * @param picture the drawn photo
   * @param canopy the photo's canopy
   * @param scale from the one to the other
   * @param boards the drawn boards whose leftover was counted; leaf beside them is of no raft
   */
  static void hatch(BufferedImage picture, CanopyMap canopy, Scale scale, List<Shape> boards) {
    int[] rgb = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
    int[] onBoard = mask(scale, boards);
    byte[] coverage = canopy.coverage();
    short[] owner = canopy.owner();
    for (int y = 0; y < scale.height(); y++) {
      int row = (int) ((long) y * canopy.height() / scale.height()) * canopy.width();
      for (int x = 0; x < scale.width(); x++) {
        int i = row + (int) ((long) x * canopy.width() / scale.width());
        boolean left = owner[i] == 0 && (coverage[i] & 0xff) >= CANOPY;
        if (left && onBoard[y * scale.width() + x] != 0) {
          int at = y * picture.getWidth() + x;
          rgb[at] = hatched(rgb[at], x, y);
        }
      }
    }
  }

  private static int[] mask(Scale scale, List<Shape> boards) {
    BufferedImage mask =
        new BufferedImage(scale.width(), scale.height(), BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = mask.createGraphics();
    graphics.setColor(Color.WHITE);
    boards.forEach(graphics::fill);
    graphics.dispose();
    return ((DataBufferInt) mask.getRaster().getDataBuffer()).getData();
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
