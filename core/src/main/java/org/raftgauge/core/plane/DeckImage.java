// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * A board's deck plane at a fixed scale: x right along the columns, y down along the rows, with a
 * margin about the board. The centre of pixel (0, 0) lies half a pixel inside the margin's corner.
 *
 * <p>Not a record: it owns arrays. Read only.
 */
public final class DeckImage {
  private final RgbImage image;
  private final boolean[] seen;
  private final double mmPerPx;
  private final double marginMm;
  private final double softMm;

  DeckImage(RgbImage image, boolean[] seen, double mmPerPx, double marginMm) {
    this(image, seen, new DeckScale(mmPerPx, marginMm), 0);
  }

  private DeckImage(RgbImage image, boolean[] seen, DeckScale scale, double softMm) {
    this.image = image;
    this.seen = seen;
    this.mmPerPx = scale.mmPerPx();
    this.marginMm = scale.marginMm();
    this.softMm = softMm;
  }

  /**
   * Returns the same picture of a photo that smears edges.
   *
   * @param mm how much wider than a sharp photo, mm of deck, 0 or more
   */
  public DeckImage soft(double mm) {
    return new DeckImage(image, seen, new DeckScale(mmPerPx, marginMm), mm);
  }

  /** Returns how much wider its photo smears edges than a sharp one does, mm of deck. */
  public double softMm() {
    return softMm;
  }

  /** Returns the picture; black where the photo does not show the deck. */
  public RgbImage image() {
    return image;
  }

  /** Returns the scale, mm of deck per pixel. */
  public double mmPerPx() {
    return mmPerPx;
  }

  /** Returns the width of the margin about the board, mm. */
  public double marginMm() {
    return marginMm;
  }

  /**
   * Says whether the photo shows a pixel's place.
   *
   * @param x column, 0 to width - 1
   * @param y row, 0 to height - 1
   * @return true if it does
   */
  public boolean seen(int x, int y) {
    return seen[y * image.width() + x];
  }

  /**
   * Returns the deck place of a place in the deck picture.
   *
   * @param p a place, px; integers are pixel centres
   * @return its place on the board, mm
   */
  public PointMm toMm(PointPx p) {
    return new PointMm((p.xPx() + 0.5) * mmPerPx - marginMm, (p.yPx() + 0.5) * mmPerPx - marginMm);
  }

  /**
   * Returns the place in the deck picture of a deck place.
   *
   * @param p a place on the board, mm
   * @return its place, px; it may lie outside the picture
   */
  public PointPx toPx(PointMm p) {
    return new PointPx((p.xMm() + marginMm) / mmPerPx - 0.5, (p.yMm() + marginMm) / mmPerPx - 0.5);
  }
}
