// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.FoundBoard;

/** Sees the height of what stands on a board with the help of a second camera. */
public final class SeeHeights {
  /**
   * Rows farther apart than this are not mended: the second camera has moved (a pair calibrated
   * well keeps them within half a px).
   */
  private static final double MOST_ROWS_PX = 3;

  /** What a plant's whole disparity may be off by, px (measured on rendered pairs). */
  private static final double DISPARITY_ERROR_PX = 0.2;

  /** What a plant's whole depth may be off by for a depth camera, share of the distance. */
  private static final double DEPTH_ERROR_FRACTION = 0.003;

  /** A place is found when it moves by less than this, mm, within so many rounds. */
  private static final double STILL_MM = 2;

  private static final int ROUNDS = 12;

  private static final String RECALIBRATE =
      "see that the second camera sits firmly, then calibrate the pair again (station pair)";

  private final FoundBoard board;
  private final DeckImage deck;
  private final SecondPicture second;

  private SeeHeights(FoundBoard board, DeckImage deck, SecondPicture second) {
    this.board = board;
    this.deck = deck;
    this.second = second;
  }

  /**
   * Sees the heights over a board.
   *
   * @param first the first camera's photo
   * @param second the second camera's picture of the same moment
   * @param board the board, found in the first photo
   * @param deck its deck picture
   * @return heights of the deck picture's pixels, or why there are none
   */
  public static Heights over(
      RgbImage first, SecondPicture second, FoundBoard board, DeckImage deck) {
    SeeHeights see = new SeeHeights(board, deck, second);
    return second.depth().isPresent() ? see.byDepth() : see.byPair(first);
  }

  private Heights byDepth() {
    double error = DEPTH_ERROR_FRACTION * board.pose().heightMm();
    return map(
        DepthGrid.of(second),
        new HeightMap.Origin(HeightSource.DEPTH, error, OptionalDouble.empty()));
  }

  private Heights byPair(RgbImage first) {
    CameraPose pose = board.pose();
    Optional<PairGeometry> geometry = PairGeometry.over(pose, board.layout().board(), second);
    if (geometry.isEmpty()) {
      return new NoHeights(
          "the two cameras do not stand side by side over the board", "mend second_camera");
    }
    RectifiedPair pair = RectifiedPair.of(first, pose, second, geometry.get());
    OptionalDouble rows = pair.rowErrorPx();
    if (Math.abs(rows.orElse(0)) > MOST_ROWS_PX) {
      return new NoHeights(
          String.format(
              Locale.ROOT,
              "the two cameras' rows lie %.1f px apart: one has moved",
              Math.abs(rows.getAsDouble())),
          RECALIBRATE,
          rows);
    }
    RectifiedPair even = rows.isPresent() ? pair.moved(second, rows.getAsDouble()) : pair;
    return map(
        DepthGrid.of(even, geometry.get()),
        new HeightMap.Origin(
            HeightSource.STEREO, DISPARITY_ERROR_PX * geometry.get().mmPerDisparityPx(), rows));
  }

  private HeightMap map(DepthGrid grid, HeightMap.Origin origin) {
    int width = deck.image().width();
    float[] mm = new float[width * deck.image().height()];
    OverBoard over = new OverBoard(board.pose());
    PointMm foot = board.pose().foot();
    double camera = board.pose().heightMm();
    Arrays.fill(mm, Float.NaN);
    for (int i = 0; i < mm.length; i++) {
      int x = i % width;
      int y = Math.floorDiv(i, width);
      if (deck.seen(x, y)) {
        Ray ray = new Ray(over, foot, deck.toMm(new PointPx(x, y)), camera);
        mm[i] = grid.fromFirst() ? once(grid, ray) : searched(grid, ray);
      }
    }
    return new HeightMap(width, mm, origin);
  }

  /** The ray of the first camera through a place of the deck. */
  private record Ray(OverBoard over, PointMm foot, PointMm deck, double cameraMm) {

    /** Returns where it passes at a height, in the first camera's axes. */
    double[] at(double heightMm) {
      double share = 1 - heightMm / cameraMm;
      return over.inCamera(
          foot.xMm() + (deck.xMm() - foot.xMm()) * share,
          foot.yMm() + (deck.yMm() - foot.yMm()) * share,
          heightMm);
    }
  }

  private static float once(DepthGrid grid, Ray ray) {
    double[] seen = grid.seenTowards(ray.at(0));
    return seen.length == 0 ? Float.NaN : (float) ray.over.heightMm(seen);
  }

  /** Goes along the ray to the height that the other camera sees there. */
  private static float searched(DepthGrid grid, Ray ray) {
    double height = 0;
    for (int round = 0; round < ROUNDS; round++) {
      double[] seen = grid.seenTowards(ray.at(height));
      if (seen.length == 0) {
        return Float.NaN;
      }
      double next = ray.over.heightMm(seen);
      if (Math.abs(next - height) < STILL_MM) {
        return (float) next;
      }
      height = next;
    }
    return Float.NaN;
  }
}
