// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Draws a board upright, cut out of its photo, its origin corner at the top left: small enough for
 * a page that shows many.
 */
final class BoardPicture {
  private static final double LONGEST_PX = 900;

  private final RgbImage photo;
  private final List<PointPx> corners;

  private BoardPicture(RgbImage photo, List<PointPx> corners) {
    this.photo = photo;
    this.corners = corners;
  }

  /**
   * Draws.
   *
   * @param photo the photo
   * @param drawing where the board is in it
   * @return the board, longest side at most 900 px; nothing where its corners are not known
   */
  static Optional<BufferedImage> of(RgbImage photo, PhotoResult.RaftDrawing drawing) {
    if (drawing.boardCornersPx().size() != 4) {
      return Optional.empty();
    }
    return Optional.of(new BoardPicture(photo, drawing.boardCornersPx()).draw());
  }

  private BufferedImage draw() {
    double across = side(0, 1, 3, 2);
    double along = side(0, 3, 1, 2);
    double factor = Math.min(1, LONGEST_PX / Math.max(across, along));
    int width = (int) Math.max(1, Math.round(across * factor));
    int height = (int) Math.max(1, Math.round(along * factor));
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    ToQuad toPhoto = ToQuad.of(corners);
    int reach = (int) Math.max(1, Math.round(1 / factor));
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        Point2D.Double at = toPhoto.at((x + 0.5) / width, (y + 0.5) / height);
        picture.setRGB(x, y, mean(at, reach));
      }
    }
    return picture;
  }

  /** Returns the mean length of two opposite sides, photo px. */
  private double side(int a, int b, int c, int d) {
    return (corners.get(a).distancePx(corners.get(b)) + corners.get(c).distancePx(corners.get(d)))
        / 2;
  }

  /** Returns the mean colour of a square of the photo; outside of it, its nearest edge. */
  private int mean(Point2D.Double at, int reach) {
    int left = (int) Math.round(at.x - (reach - 1) / 2.0);
    int top = (int) Math.round(at.y - (reach - 1) / 2.0);
    int[] sum = new int[3];
    for (int y = top; y < top + reach; y++) {
      for (int x = left; x < left + reach; x++) {
        for (int c = 0; c < 3; c++) {
          sum[c] += photo.value(inside(x, photo.width()), inside(y, photo.height()), c);
        }
      }
    }
    int n = reach * reach;
    return ((sum[0] / n) << 16) | ((sum[1] / n) << 8) | (sum[2] / n);
  }

  private static int inside(int at, int size) {
    return Math.max(0, Math.min(size - 1, at));
  }
}
