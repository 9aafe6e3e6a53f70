// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.DeckImage;

/** Drawn ground with its truth, for tests of teaching in other packages. */
public final class TeachingGround {
  private static final int[] YELLOW_GREEN = {140, 150, 60};

  private final DrawnGround drawn;
  private final int width;
  private final int height;

  private TeachingGround(DrawnGround drawn, int width, int height) {
    this.drawn = drawn;
    this.width = width;
    this.height = height;
  }

  /** Draws four leaves of a dull yellow-green at places of a seed's choice. */
  public static TeachingGround dullLeaves(int width, int height, long seed) {
    DrawnGround drawn = DrawnGround.soil(width, height);
    Random random = new Random(seed);
    for (int n = 0; n < 4; n++) {
      double[] at = {
        width * (0.25 + 0.5 * (n % 2)) + 8 * random.nextGaussian(),
        height * (0.25 + 0.5 * Math.floorDiv(n, 2)) + 8 * random.nextGaussian()
      };
      double[] shape = {22 + 8 * random.nextDouble(), 14 + 4 * random.nextDouble(), 3.0 * n};
      drawn.leaf(at, shape, YELLOW_GREEN);
    }
    return new TeachingGround(drawn, width, height);
  }

  /** Says whether at least half of a pixel is leaf. */
  public boolean isLeaf(int i) {
    return drawn.coverAt(i) >= 0.5;
  }

  /** Returns the deck picture, 1 mm a pixel. */
  public DeckImage deck() {
    return drawn.deck(0);
  }

  /** Returns the pose under which the photo is the deck picture, pixel by pixel. */
  public CameraPose pose() {
    Lens lens = new Lens(1000, 1000, (width - 1) / 2.0, (height - 1) / 2.0, 0, 0, 0, 0, 0);
    double[] level = {1, 0, 0, 0, 1, 0, 0, 0, 1};
    return CameraPose.of(lens, level, new double[] {-width / 2.0, -height / 2.0, 1000});
  }

  /** Returns a layout with one site in the middle of a board. */
  public static Layout layout(Board board) {
    return new Layout(
        "plot",
        Optional.empty(),
        board,
        new SiteGrid(1, 1, board.widthMm() / 2, board.lengthMm() / 2, 100, 100, 0),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
