// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.pixels.GreyImage;
import org.raftgauge.core.pixels.RgbImage;

/**
 * How wide anything sharp is smeared in each part of a picture, boards, marks, holes and leaves
 * alike: what stays smeared in one part while the rest is as sharp as ever lies on the lens.
 *
 * <p>Along every few rows and columns each rise or fall between two turning points of the luma is
 * an edge; its height over its steepest slope is {@code sqrt(2 pi)} standard deviations of the
 * Gaussian blur that makes such an edge of a sharp one, times the cosine of its slant. Of a part
 * the first quartile is told: soft things, such as shaded leaf, are everywhere, sharp ones only
 * where the lens is clean.
 *
 * <p>Source of edges between turning points: Marziliano, Dufaux, Winkler, Ebrahimi 2002, A
 * no-reference perceptual blur metric. Differs from it: slope instead of width, for noise moves
 * turning points; slanted edges are set upright; quartile instead of mean.
 */
final class PartBlur {
  /** Lines looked along each way, of large photos. */
  private static final int LINES = 400;

  /** A step of fewer levels of 255 may be noise. */
  private static final int LEAST_STEP = 24;

  private static final int LEAST_EDGES = 40;
  private static final double QUARTILE = 0.25;

  /** Blurs are counted in bins of 4 %, from a quarter px on. */
  private static final double FINEST_PX = 0.25;

  private static final double BIN_LN = 0.04;
  private static final int BINS = 96;

  private final RgbImage photo;
  private final int width;
  private final int height;

  /** Luma along the line that is looked along. */
  private short[] levels;

  /** Where the luma turns along it; as many as were found last. */
  private final int[] turns;

  private final int[][] counts = new int[EdgeBlur.CELLS * EdgeBlur.CELLS][BINS];

  private PartBlur(RgbImage photo) {
    this.photo = photo;
    this.width = photo.width();
    this.height = photo.height();
    this.levels = new short[width];
    this.turns = new int[Math.max(width, height)];
  }

  /**
   * Measures.
   *
   * @param photo the photo
   * @return standard deviation of the blur of each part, px, row by row from the upper left; empty
   *     where too few edges lie
   */
  static List<OptionalDouble> of(RgbImage photo) {
    PartBlur blur = new PartBlur(photo);
    int every = Math.max(2, Math.min(blur.width, blur.height) / LINES);
    blur.rows(every);
    blur.columns(every);
    List<OptionalDouble> parts = new ArrayList<>();
    for (int[] count : blur.counts) {
      parts.add(quartile(count));
    }
    return parts;
  }

  /** Pixels in a line: the first's index, from one to the next, how many, to the next line. */
  private record Line(int first, int step, int length, int aside) {}

  private void rows(int every) {
    for (int y = 1; y < height - 1; y += every) {
      int first = y * width;
      for (int x = 0; x < width; x++) {
        levels[x] = (short) GreyImage.luma(photo, first + x);
      }
      line(new Line(first, 1, width, width));
    }
  }

  /** Looks along columns; they are read together, row by row, as the pixels lie. */
  private void columns(int every) {
    short[][] columns = new short[Math.max(0, (width - 3) / every + 1)][height];
    for (int y = 0; y < height; y++) {
      for (int c = 0, i = y * width + 1; c < columns.length; c++, i += every) {
        columns[c][y] = (short) GreyImage.luma(photo, i);
      }
    }
    for (int c = 0; c < columns.length; c++) {
      levels = columns[c];
      line(new Line(1 + c * every, width, height, 1));
    }
  }

  private void line(Line line) {
    int n = 0;
    int sign = 0;
    for (int i = 1; i < line.length; i++) {
      int change = Integer.signum(levels[i] - levels[i - 1]);
      turns[n] = i - 1;
      n += change == sign ? 0 : 1; // noise turns often and irregularly: no branch
      sign = change;
    }
    for (int k = 1; k < n; k++) {
      edge(line, turns[k - 1], turns[k]);
    }
  }

  /** Counts the edge between two turning points. */
  private void edge(Line line, int from, int to) {
    int step = Math.abs(levels[to] - levels[from]);
    if (step < LEAST_STEP || from < 1 || to > line.length - 2) {
      return;
    }
    int steepest = from;
    int slope = 0;
    for (int i = from; i <= to; i++) {
      int s = Math.abs(levels[i + 1] - levels[i - 1]);
      if (s > slope) {
        slope = s;
        steepest = i;
      }
    }
    int at = line.first + steepest * line.step;
    int across = GreyImage.luma(photo, at + line.aside) - GreyImage.luma(photo, at - line.aside);
    if (Math.abs(across) <= slope) {
      // Central differences: twice the slope a px. The cosine sets a slanted edge upright.
      double blur =
          2 * step / Math.sqrt((double) slope * slope + across * across) / Math.sqrt(2 * Math.PI);
      int bin = (int) (Math.log(blur / FINEST_PX) / BIN_LN);
      counts[part(at)][Math.max(0, Math.min(BINS - 1, bin))]++;
    }
  }

  private int part(int at) {
    int column = EdgeBlur.CELLS * (at % width) / width;
    int row = EdgeBlur.CELLS * (at / width) / height;
    return EdgeBlur.CELLS * row + column;
  }

  private static OptionalDouble quartile(int[] count) {
    int all = 0;
    for (int n : count) {
      all += n;
    }
    if (all < LEAST_EDGES) {
      return OptionalDouble.empty();
    }
    double left = QUARTILE * all;
    int bin = 0;
    while (left > count[bin]) {
      left -= count[bin];
      bin++;
    }
    double blur = FINEST_PX * Math.exp(BIN_LN * (bin + left / count[bin]));
    return OptionalDouble.of(Math.round(1000 * blur) / 1000.0); // kept of every photo: no more
  }
}
