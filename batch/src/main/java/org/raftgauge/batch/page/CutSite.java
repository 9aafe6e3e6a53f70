// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteId;

/** Cuts a site, with its neighbours' rims, out of the picture of its upright board. */
public final class CutSite {
  /** Half the width of what is cut, in distances between sites. */
  private static final double REACH = 0.9;

  private static final int SIZE_PX = 360;

  private CutSite() {}

  /**
   * Cuts.
   *
   * @param board file of the board's picture, its origin corner at the top left
   * @param layout of the board
   * @param site the site
   * @param to file to write, 360 px square where the board reaches so far
   * @throws IOException if a picture cannot be read or written
   */
  public static void cut(Path board, Layout layout, SiteId site, Path to) throws IOException {
    BufferedImage picture = ImageIO.read(board.toFile());
    if (picture == null) {
      throw new IOException(board + ": is no picture");
    }
    PointMm centre = layout.grid().centre(site);
    double pxPerMm = picture.getWidth() / layout.board().widthMm();
    double reach = REACH * Math.max(layout.grid().pitchXMm(), layout.grid().pitchYMm()) * pxPerMm;
    int left = (int) Math.max(0, Math.round(centre.xMm() * pxPerMm - reach));
    int top = (int) Math.max(0, Math.round(centre.yMm() * pxPerMm - reach));
    int right = (int) Math.min(picture.getWidth(), Math.round(centre.xMm() * pxPerMm + reach));
    int bottom = (int) Math.min(picture.getHeight(), Math.round(centre.yMm() * pxPerMm + reach));
    double zoom = SIZE_PX / (2 * reach);
    BufferedImage cut =
        new BufferedImage(
            (int) Math.max(1, Math.round((right - left) * zoom)),
            (int) Math.max(1, Math.round((bottom - top) * zoom)),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D draw = cut.createGraphics();
    draw.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    draw.drawImage(picture, 0, 0, cut.getWidth(), cut.getHeight(), left, top, right, bottom, null);
    draw.dispose();
    PictureFiles.jpeg(cut, to);
  }
}
