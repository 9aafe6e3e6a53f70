// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.opencv.Warp;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

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
    Warp.Sources sources = mesh.sources();
    RgbImage image = Warp.remap(photo, sources, parts);
    return new DeckImage(image, mesh.seen(photo, width, height), scale.mmPerPx(), scale.marginMm());
  }

  /** Source places of the (finely divided) deck pixels. */
  private static final class Mesh {
    private final int width;
    private final int height;
    private final int parts;
    private final float[] xs;
    private final float[] ys;

    Mesh(CameraPose pose, DeckScale scale, int width, int height, int parts) {
      this.width = width;
      this.height = height;
      this.parts = parts;
      this.xs = new float[width * height];
      this.ys = new float[width * height];
      double step = scale.mmPerPx() / parts;
      int columns = (width - 1) / MESH + 2;
      PointPx[] upper = row(pose, scale, step, 0, columns);
      for (int y = 0; y < height; y += MESH) {
        PointPx[] lower = row(pose, scale, step, y + MESH, columns);
        fill(y, upper, lower);
        upper = lower;
      }
    }

    private static PointPx[] row(
        CameraPose pose, DeckScale scale, double step, int y, int columns) {
      PointPx[] row = new PointPx[columns];
      for (int c = 0; c < columns; c++) {
        row[c] =
            pose.toPhoto(
                new PointMm(
                    (c * MESH + 0.5) * step - scale.marginMm(),
                    (y + 0.5) * step - scale.marginMm()));
      }
      return row;
    }

    private void fill(int y0, PointPx[] upper, PointPx[] lower) {
      for (int y = y0; y < Math.min(y0 + MESH, height); y++) {
        double fy = (double) (y - y0) / MESH;
        for (int x0 = 0; x0 < width; x0 += MESH) {
          int c = x0 / MESH;
          double left = (1 - fy) * upper[c].xPx() + fy * lower[c].xPx();
          double right = (1 - fy) * upper[c + 1].xPx() + fy * lower[c + 1].xPx();
          line(xs, y * width + x0, left, right);
          double top = (1 - fy) * upper[c].yPx() + fy * lower[c].yPx();
          double bottom = (1 - fy) * upper[c + 1].yPx() + fy * lower[c + 1].yPx();
          line(ys, y * width + x0, top, bottom);
        }
      }
    }

    /** Writes a line's values from one node of the mesh to before the next, or to the row's end. */
    private void line(float[] to, int at, double from, double next) {
      double step = (next - from) / MESH;
      int n = Math.min(MESH, width - at % width);
      for (int k = 0; k < n; k++) {
        to[at + k] = (float) (from + k * step);
      }
    }

    Warp.Sources sources() {
      return Warp.Sources.of(width, height, xs, ys);
    }

    /** Says of each deck pixel whether its middle lies on the photo. */
    boolean[] seen(RgbImage photo, int deckWidth, int deckHeight) {
      boolean[] seen = new boolean[deckWidth * deckHeight];
      for (int y = 0; y < deckHeight; y++) {
        for (int x = 0; x < deckWidth; x++) {
          int i = (y * parts + parts / 2) * width + x * parts + parts / 2;
          seen[y * deckWidth + x] =
              xs[i] >= 0 && ys[i] >= 0 && xs[i] <= photo.width() - 1 && ys[i] <= photo.height() - 1;
        }
      }
      return seen;
    }
  }
}
