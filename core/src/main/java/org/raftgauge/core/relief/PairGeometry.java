// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.opencv.MatchRows;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.Rotations;

/**
 * How both photos of a pair are redrawn so that a thing lies in the same row of both: as two
 * cameras would see it that look plumb on the deck, side by side along the line between them.
 *
 * <p>Rows of {@code toRectified}: along the baseline, across it, down to the deck as plumb as the
 * baseline lets it (Fusiello, Trucco and Verri 2000, Machine Vision and Applications 12:16-22, with
 * the deck's own direction for the old axis). The second picture is moved sideways so that the
 * deck's middle has disparity 0: {@code depth = 1 / (disparity / (f B) + 1 / deckDepth)}.
 *
 * @param toRectified from the first camera's axes, row by row, 9 numbers
 * @param baselineMm distance of both cameras
 * @param lens of both pictures: a pinhole
 * @param width of both, px
 * @param height of both, px
 * @param deckDepthMm depth of the board's middle
 * @param range disparities that the deck and what stands on it can have
 */
record PairGeometry(
    double[] toRectified,
    double baselineMm,
    Lens lens,
    int width,
    int height,
    double deckDepthMm,
    MatchRows.Range range) {
  /** Finer pictures cost time and tell little more: at 2400 px a leaf is a hundred px wide. */
  private static final double MOST_FOCAL_PX = 2400;

  /** Nothing stands higher than this share of the camera's height, or farther under the deck. */
  private static final double TALLEST = 0.4;

  private static final double DEEPEST_MM = 60;

  /** Cameras one above the other see no more than one of them. */
  private static final double MOST_ALONG_AXIS = 0.3;

  /** A pair so near to the board that it needs more than this sees too little of it in both. */
  private static final int MOST_DISPARITIES = 640;

  /** Lays the pictures over a board; nothing where the cameras cannot see its height. */
  static Optional<PairGeometry> over(CameraPose pose, Board board, SecondPicture second) {
    double[] r = second.rotation();
    double[] t = second.shiftMm();
    double[] x = new double[3];
    for (int i = 0; i < 3; i++) {
      x[i] = -(r[i] * t[0] + r[3 + i] * t[1] + r[6 + i] * t[2]);
    }
    double baseline = Math.sqrt(dot(x, x));
    double[] down = {pose.rotation()[2], pose.rotation()[5], pose.rotation()[8]};
    double along = dot(x, down) / Math.max(baseline, 1e-9);
    if (baseline < 1 || Math.abs(along) > MOST_ALONG_AXIS) {
      return Optional.empty();
    }
    double[] rectified = axes(x, down);
    double first = (pose.lens().fxPx() + pose.lens().fyPx()) / 2;
    double other = (second.lens().fxPx() + second.lens().fyPx()) / 2;
    double focal = Math.min(MOST_FOCAL_PX, Math.min(first, other));
    return new Extent(pose, board, rectified).geometry(baseline, focal);
  }

  private static double[] axes(double[] baseline, double[] down) {
    double length = Math.sqrt(dot(baseline, baseline));
    double[] x = {baseline[0] / length, baseline[1] / length, baseline[2] / length};
    double along = dot(down, x);
    double[] z = {down[0] - along * x[0], down[1] - along * x[1], down[2] - along * x[2]};
    double size = Math.sqrt(dot(z, z));
    for (int i = 0; i < 3; i++) {
      z[i] /= size;
    }
    return new double[] {
      x[0],
      x[1],
      x[2],
      z[1] * x[2] - z[2] * x[1],
      z[2] * x[0] - z[0] * x[2],
      z[0] * x[1] - z[1] * x[0],
      z[0],
      z[1],
      z[2]
    };
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  /** Returns depth along the pictures' axis at a disparity, mm. */
  double depthMm(double disparityPx) {
    return 1 / (disparityPx / (lens.fxPx() * baselineMm) + 1 / deckDepthMm);
  }

  /** Returns the columns by which the second picture is moved. */
  double movedPx() {
    return lens.fxPx() * baselineMm / deckDepthMm;
  }

  /** Returns the mm of height that a px of disparity makes at the deck. */
  double mmPerDisparityPx() {
    return deckDepthMm * deckDepthMm / (lens.fxPx() * baselineMm);
  }

  /** What of the rectified plane a board and its plants take up: bounds of x/z, y/z and 1/z. */
  private static final class Extent {
    private final CameraPose pose;
    private final Board board;
    private final double[] rectified;
    private final double[] least = {1e9, 1e9, 1e9};
    private final double[] most = {-1e9, -1e9, -1e9};

    Extent(CameraPose pose, Board board, double[] rectified) {
      this.pose = pose;
      this.board = board;
      this.rectified = rectified;
    }

    Optional<PairGeometry> geometry(double baseline, double focal) {
      double rim = 0.1 * Math.max(board.widthMm(), board.lengthMm());
      double tall = TALLEST * pose.heightMm();
      for (double z : new double[] {-DEEPEST_MM, tall}) {
        // What stands tall leans out over the rim no farther than the deck picture reaches.
        double shrink = z > 0 ? 0.5 * (1 - z / pose.heightMm()) : 0.5;
        for (int corner = 0; corner < 4; corner++) {
          double sideX = corner % 2 == 0 ? -1 : 1;
          double sideY = corner < 2 ? -1 : 1;
          take(
              board.widthMm() / 2 + sideX * (shrink * board.widthMm() + rim),
              board.lengthMm() / 2 + sideY * (shrink * board.lengthMm() + rim),
              z);
        }
      }
      double deck = 1 / point(board.widthMm() / 2, board.lengthMm() / 2, 0)[2];
      int low = (int) Math.floor(focal * baseline * (least[2] - deck)) - 1;
      int high = (int) Math.ceil(focal * baseline * (most[2] - deck)) + 1;
      int count = (high - low + 16) / 16 * 16;
      // Looking from left to right no column is answered for at the left rim, from right to left
      // none at the right.
      int blind = low + count + 2;
      int width = (int) Math.ceil(focal * (most[0] - least[0])) + 2 * blind;
      int height = (int) Math.ceil(focal * (most[1] - least[1])) + 1;
      Lens lens =
          new Lens(focal, focal, blind - focal * least[0], -focal * least[1], 0, 0, 0, 0, 0);
      return count > MOST_DISPARITIES
          ? Optional.empty()
          : Optional.of(
              new PairGeometry(
                  rectified,
                  baseline,
                  lens,
                  width,
                  height,
                  1 / deck,
                  new MatchRows.Range(low, count)));
    }

    private void take(double x, double y, double z) {
      double[] p = point(x, y, z);
      double[] values = {p[0] / p[2], p[1] / p[2], 1 / p[2]};
      for (int i = 0; i < 3; i++) {
        least[i] = Math.min(least[i], values[i]);
        most[i] = Math.max(most[i], values[i]);
      }
    }

    private double[] point(double x, double y, double z) {
      return turned(rectified, OverBoard.inCamera(pose, x, y, z));
    }
  }

  /** Returns a matrix times a vector. */
  static double[] turned(double[] m, double[] v) {
    return new double[] {
      m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
      m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
      m[6] * v[0] + m[7] * v[1] + m[8] * v[2]
    };
  }

  /** Returns a matrix turned over: of a rotation, its inverse. */
  static double[] transposed(double[] m) {
    return new double[] {m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]};
  }

  /** Returns the rotation from rectified axes to the first camera's. */
  double[] toFirst() {
    return transposed(toRectified);
  }

  /** Returns the rotation from rectified axes to the second camera's. */
  double[] toSecond(SecondPicture second) {
    return Rotations.times(second.rotation(), toFirst());
  }
}
