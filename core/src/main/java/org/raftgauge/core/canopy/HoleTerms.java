// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.PointPx;

/**
 * What tells leaf from plug at the pixels of one hole: the terms of its colour ({@link HoleBoard}),
 * where in the hole it lies, what is about it, whether leaf goes on beyond the rim in its
 * direction, and what the rules say.
 */
final class HoleTerms {
  /** Number of terms of a pixel. */
  static final int TERMS = 25;

  /** Which of them is the rules' score by their threshold. */
  static final int RULED = 23;

  /** Where a leaf that crosses the rim goes on, in radii. */
  private static final double CROSSED_FROM = 1.06;

  private static final double CROSSED_TO = 1.3;
  private static final int SECTORS = 24;

  /** What scores more is leaf, at the least and as a share of the board's sure leaf. */
  private static final float LEAF = 0.75f;

  private static final double LEAF_SHARE = 0.45;

  /** What scores so many times the threshold is leaf by the rules, whatever it scores. */
  private static final double MOST_RULED = 2.5;

  /** Half sides of the squares about a pixel, px. */
  private static final int NEAR = 2;

  private static final int WIDE = 5;

  private final HoleBoard board;
  private final PointPx centre;
  private final int width;
  private final int left;
  private final int top;
  private final int across;
  private final float[] score;
  private final float[] light;
  private final double[] crossed = new double[SECTORS];
  private double vivid;

  private HoleTerms(HoleBoard board, PointPx centre) {
    int reach = (int) board.radiusPx() + WIDE + 2;
    this.board = board;
    this.centre = centre;
    this.width = board.deck().image().width();
    this.left = (int) Math.round(centre.xPx()) - reach;
    this.top = (int) Math.round(centre.yPx()) - reach;
    this.across = 2 * reach + 1;
    this.score = new float[across * across];
    this.light = new float[score.length];
    fill();
    cross();
  }

  /**
   * What is asked for.
   *
   * @param red whether leaf may be red
   * @param step every so many pixels of every so many rows
   */
  record Asked(boolean red, int step) {}

  /**
   * Visits the pixels of a hole.
   *
   * @param board the board
   * @param hole its centre
   * @param ruled what the rules make of the board
   * @param asked which pixels
   * @param visit told of each
   */
  static void each(HoleBoard board, PointPx hole, RuledScores ruled, Asked asked, HolePixel visit) {
    new HoleTerms(board, hole).each(ruled, asked, visit);
  }

  private void fill() {
    int height = board.deck().image().height();
    for (int y = 0; y < across; y++) {
      int row = Math.max(0, Math.min(height - 1, top + y)) * width;
      for (int x = 0; x < across; x++) {
        int i = row + Math.max(0, Math.min(width - 1, left + x));
        score[y * across + x] = board.scores()[i];
        light[y * across + x] = (float) board.light(i);
      }
    }
  }

  /** Notes in which directions leaf shows just beyond the rim, and how much of the hole does. */
  private void cross() {
    int[] all = new int[SECTORS];
    int[] seen = new int[2];
    double least = Math.max(LEAF, LEAF_SHARE * board.leafScore());
    HoleDisc.each(
        board.deck(),
        centre,
        CROSSED_TO * board.radiusPx(),
        (i, px) -> {
          if (px > CROSSED_FROM * board.radiusPx()) {
            int sector = sector(i);
            all[sector]++;
            crossed[sector] += board.scores()[i] > LEAF ? 1 : 0;
          } else if (px < board.innerPx()) {
            seen[0]++;
            seen[1] += board.scores()[i] > least ? 1 : 0;
          }
        });
    for (int s = 0; s < SECTORS; s++) {
      crossed[s] /= Math.max(1, all[s]);
    }
    vivid = (double) seen[1] / Math.max(1, seen[0]);
  }

  private int sector(int i) {
    double angle = Math.atan2(Math.floorDiv(i, width) - centre.yPx(), i % width - centre.xPx());
    return (int) ((angle / Math.PI + 1) / 2 * SECTORS) % SECTORS;
  }

  private void each(RuledScores ruled, Asked asked, HolePixel visit) {
    float[] square = new float[light.length];
    for (int i = 0; i < square.length; i++) {
      square[i] = light[i] * light[i];
    }
    float[] near = mean(score, NEAR);
    float[] wide = mean(score, WIDE);
    float[] lightNear = mean(light, NEAR);
    float[] squareNear = mean(square, NEAR);
    float[] t = new float[TERMS];
    HoleDisc.each(
        board.deck(),
        centre,
        board.innerPx(),
        (i, px) -> {
          int y = Math.floorDiv(i, width);
          int x = i % width;
          if (x % asked.step() != 0 || y % asked.step() != 0) {
            return;
          }
          int at = (y - top) * across + x - left;
          board.colourTerms(i, t);
          t[16] = (float) (px / board.radiusPx());
          double rough = squareNear[at] - lightNear[at] * lightNear[at];
          t[17] = (float) Math.sqrt(Math.max(0, rough));
          t[18] = near[at];
          t[19] = wide[at];
          t[20] = (float) crossed[sector(i)];
          t[21] = (float) vivid;
          t[22] = asked.red() ? 1 : 0;
          t[RULED] =
              (float) Math.min(MOST_RULED, ruled.scores()[i] / ruled.threshold(i, asked.red()));
          t[24] = ruled.plugKnown() ? 1 : 0;
          visit.at(i, t);
        });
  }

  private float[] mean(float[] values, int reach) {
    float[] sums = BoxFilter.sum(values, across, across, reach);
    float all = (2 * reach + 1) * (2 * reach + 1);
    for (int i = 0; i < sums.length; i++) {
      sums[i] /= all;
    }
    return sums;
  }
}
