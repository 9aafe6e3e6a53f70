// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.Arrays;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Warp;

/** Draws a board's deck plane from a photo, lens and tilt taken out, in one resampling. */
public final class RectifyDeck {
  /**
   * Shrink past which pixels are averaged: under 2, bilinear reading still touches every photo
   * pixel with some weight.
   */
  private static final double AVERAGE_FROM = 2;

  /**
   * Exact projections every so many pixels, linear between: a lens of k1 = -0.3 is bent by under
   * 0.002 px between them.
   */
  private static final int MESH = 8;

  /** A 24 megapixel photo of nothing but board needs 24e6 pixels; four times that is a mistake. */
  private static final long MAX_PIXELS = 100_000_000L;

  private RectifyDeck() {}

  /**
   * Draws the deck plane of a board.
   *
   * @param photo the photo
   * @param pose the camera over the board
   * @param board its size
   * @param scale scale and margin of the picture
   * @return the deck picture, {@code ceil((size + 2 margin) / mmPerPx)} pixels each way
   * @throws IllegalArgumentException if the picture would be over 100 megapixels
   */
  public static DeckImage rectify(RgbImage photo, CameraPose pose, Board board, DeckScale scale) {
    int width = scale.pixels(board.widthMm());
    int height = scale.pixels(board.lengthMm());
    double own = pose.mmPerPxAt(BoardPlaces.centre(board));
    double shrink = scale.mmPerPx() / own;
    int parts = shrink >= AVERAGE_FROM ? (int) Math.ceil(shrink) : 1;
    if ((long) width * height * parts * parts > MAX_PIXELS) {
      throw new IllegalArgumentException(
          "mmPerPx must be larger: " + width + " x " + height + " px, " + parts + " parts a pixel");
    }
    Mesh mesh = new Mesh(pose, scale, width * parts, height * parts, parts);
    RgbImage image = Warp.redraw(photo, mesh, parts);
    return new DeckImage(image, mesh.seen(photo, width, height), scale.mmPerPx(), scale.marginMm());
  }

  /** Source places of the (finely divided) deck pixels. */
  private static final class Mesh implements Warp.Sources {
    private final int width;
    private final int height;
    private final int parts;
    private final int columns;
    private final double[] xs;
    private final double[] ys;

    Mesh(CameraPose pose, DeckScale scale, int width, int height, int parts) {
      this.width = width;
      this.height = height;
      this.parts = parts;
      this.columns = (width - 1) / MESH + 2;
      this.xs = new double[columns * ((height - 1) / MESH + 2)];
      this.ys = new double[xs.length];
      double step = scale.mmPerPx() / parts;
      for (int i = 0; i < xs.length; i++) {
        double x = (i % columns * MESH + 0.5) * step - scale.marginMm();
        double y = (Math.floorDiv(i, columns) * MESH + 0.5) * step - scale.marginMm();
        PointPx at = pose.toPhoto(new PointMm(x, y));
        xs[i] = at.xPx();
        ys[i] = at.yPx();
      }
    }

    @Override
    public int width() {
      return width;
    }

    @Override
    public int height() {
      return height;
    }

    @Override
    public void row(int y, float[] xPx, float[] yPx) {
      double down = (double) (y % MESH) / MESH;
      int upper = y / MESH * columns;
      between(xs, upper, down, xPx);
      between(ys, upper, down, yPx);
    }

    /** Writes a row's values, that far between two rows of nodes. */
    private void between(double[] nodes, int upper, double down, float[] to) {
      double left = (1 - down) * nodes[upper] + down * nodes[upper + columns];
      for (int x0 = 0, i = upper + 1; x0 < width; x0 += MESH, i++) {
        double right = (1 - down) * nodes[i] + down * nodes[i + columns];
        double step = (right - left) / MESH;
        int n = Math.min(MESH, width - x0);
        for (int k = 0; k < n; k++) {
          to[x0 + k] = (float) (left + k * step);
        }
        left = right;
      }
    }

    /** Says of each deck pixel whether its middle lies on the photo. */
    boolean[] seen(RgbImage photo, int deckWidth, int deckHeight) {
      boolean[] seen = new boolean[deckWidth * deckHeight];
      if (within(xs, photo.width()) && within(ys, photo.height())) {
        Arrays.fill(seen, true);
        return seen;
      }
      float[] xPx = new float[width];
      float[] yPx = new float[width];
      for (int y = 0; y < deckHeight; y++) {
        row(y * parts + parts / 2, xPx, yPx);
        for (int x = 0, i = parts / 2; x < deckWidth; x++, i += parts) {
          seen[y * deckWidth + x] =
              xPx[i] >= 0
                  && yPx[i] >= 0
                  && xPx[i] <= photo.width() - 1
                  && yPx[i] <= photo.height() - 1;
        }
      }
      return seen;
    }

    /** Says whether all nodes, and so all between them, lie on a photo and off its rim. */
    private static boolean within(double[] nodes, int side) {
      for (double node : nodes) {
        if (!(node >= 1 && node <= side - 2)) {
          return false;
        }
      }
      return true;
    }
  }
}
