// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * How wide a board's planting holes are, as far as the board itself shows it: the distance from
 * their centres at which its own colour sets in. A layout says only what is usual.
 */
final class HoleRim {
  /** The rim is looked for between these shares of the usual radius (working values). */
  private static final double LEAST = 0.55;

  private static final double MOST = 1.7;

  /** The board's colour about a hole is read out to this share of the usual radius. */
  private static final double ABOUT = 2.2;

  /** What scores more may be leaf, and is no measure of the board. */
  private static final float BOARD_SCORE = 0.35f;

  /** What scores more is leaf, which hides board and hole alike. */
  private static final float LEAF_SCORE = 0.75f;

  /** A colour is the board's within this ratio in each channel (working value). */
  private static final double ALIKE = 1.28;

  /** By so much the share of board must rise at the rim, else the usual radius stands. */
  private static final double LEAST_STEP = 0.3;

  private static final int STEPS_PER_PX = 2;

  /** The share of board is averaged over so many steps to either side. */
  private static final int SIDE = 5;

  private static final int LEAST_PX = 50;

  /** What is so near to leaf is mixed with it. */
  private static final int OUTLINE_PX = 2;

  private final DeckImage deck;
  private final float[][] even;
  private final float[] scores;
  private final double usualPx;
  private final double[] board;
  private final double[] open;
  private final boolean[] hidden;

  private HoleRim(DeckImage deck, double usualPx, float[][] even, float[] scores) {
    this.deck = deck;
    this.even = even;
    this.scores = scores;
    this.usualPx = usualPx;
    int steps = (int) (STEPS_PER_PX * MOST * usualPx) + 1;
    this.board = new double[steps];
    this.open = new double[steps];
    this.hidden = leafAbout();
  }

  /**
   * Finds the radius of a board's holes.
   *
   * @param deck the deck picture
   * @param layout its layout
   * @param even three planes of evened light
   * @param scores of the same pixels
   * @return px; the usual radius where no rim shows
   */
  static double radiusPx(DeckImage deck, Layout layout, float[][] even, float[] scores) {
    double usual = 0.5 * layout.grid().holeMm() / deck.mmPerPx();
    HoleRim rim = new HoleRim(deck, usual, even, scores);
    for (SiteId site : layout.grid().sites()) {
      rim.look(deck.toPx(layout.grid().centre(site)));
    }
    return rim.radius();
  }

  /** Returns where leaf is, or so near that its outline may be taken for a rim. */
  private boolean[] leafAbout() {
    boolean[] leaf = new boolean[scores.length];
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] = scores[i] >= LEAF_SCORE;
    }
    return BoxFilter.any(leaf, deck.image().width(), deck.image().height(), OUTLINE_PX);
  }

  private void look(PointPx hole) {
    double[] own = boardAbout(hole);
    if (own.length == 0) {
      return;
    }
    HoleDisc.each(
        deck,
        hole,
        MOST * usualPx,
        (i, px) -> {
          int at = (int) (STEPS_PER_PX * px);
          if (at < open.length && !hidden[i]) {
            open[at]++;
            board[at] += isLike(i, own) ? 1 : 0;
          }
        });
  }

  private boolean isLike(int i, double[] own) {
    for (int c = 0; c < 3; c++) {
      double light = even[c][i] + LeafRule.FLOOR;
      if (light > own[c] * ALIKE || light * ALIKE < own[c]) {
        return false;
      }
    }
    return true;
  }

  /** Returns the board's usual light about a hole; empty where it hardly shows. */
  private double[] boardAbout(PointPx hole) {
    int most = (int) (4 * (ABOUT * usualPx + 1) * (ABOUT * usualPx + 1));
    double[][] about = new double[3][most];
    int[] n = {0};
    HoleDisc.each(
        deck,
        hole,
        ABOUT * usualPx,
        (i, px) -> {
          if (px > MOST * usualPx && scores[i] < BOARD_SCORE) {
            for (int c = 0; c < 3; c++) {
              about[c][n[0]] = even[c][i];
            }
            n[0]++;
          }
        });
    double[] own = new double[n[0] < LEAST_PX ? 0 : 3];
    for (int c = 0; c < own.length; c++) {
      own[c] = Quantile.of(Arrays.copyOf(about[c], n[0]), 0.5) + LeafRule.FLOOR;
    }
    return own;
  }

  private double radius() {
    double best = LEAST_STEP;
    double radius = usualPx;
    for (int at = (int) (STEPS_PER_PX * LEAST * usualPx); at < open.length - SIDE; at++) {
      double step = share(at + 1, at + SIDE) - share(at - SIDE, at - 1);
      if (step > best) {
        best = step;
        radius = (at + 0.5) / STEPS_PER_PX;
      }
    }
    return radius;
  }

  /** Returns the share of board between two steps; not a number where leaf hides it. */
  private double share(int from, int to) {
    double boards = 0;
    double all = 0;
    for (int at = Math.max(0, from); at <= to; at++) {
      boards += board[at];
      all += open[at];
    }
    return all < LEAST_PX ? Double.NaN : boards / all;
  }
}
