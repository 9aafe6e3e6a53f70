// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;
import org.raftgauge.core.pixels.PointPx;

/**
 * Reads a board again, to doubt where what fills its holes may have misled the rules. They are
 * right to a few percent where they are right at all, and more often than {@link HoleNetwork}, so
 * that their reading stands; but where both differ in many holes of a board, as they do over moss
 * or stone wool, leaf and plug cannot be told: what differs is weakly told, and a site where one
 * finds three tenths less than the other is as good as a plug that looks like leaf. In a few holes,
 * as in a patch of sun, the network errs; but where the other plants have long outgrown theirs, a
 * hole that alone has leaf in it only is doubted by itself ({@link LoneHoles}).
 */
final class SecondReading {
  /** A hole differs where one finds by this share of the larger more leaf (working value). */
  private static final double DIFFERENT = 0.2;

  /** Where one finds by this share more leaf, the site cannot be told (working value). */
  private static final double UNTOLD = 0.3;

  /** The second reading counts where so many of the holes with leaf differ (working value). */
  private static final double MANY = 0.3;

  /**
   * It is not begun where fewer differ by a first look at every so many pixels of every so many
   * holes.
   */
  private static final double SOME = 0.15;

  private static final int STEP = 2;

  /** Where leaf covers more of the holes, no plug misleads. */
  private static final double COVERED = 0.85;

  /** Less of a hole is no leaf to speak of. */
  static final double SPECK = 0.02;

  private final BoardLook look;
  private final HoleBoard board;
  private final LeafReading rules;
  private final BitSet untold = new BitSet();

  private SecondReading(BoardLook look, HoleBoard board, LeafReading rules) {
    this.look = look;
    this.board = board;
    this.rules = rules;
  }

  /**
   * Notes in a reading what of it is doubtful by another.
   *
   * @param look the board
   * @param rules its reading by the rules
   */
  static void doubt(BoardLook look, LeafReading rules) {
    double covered = covered(look.places().hole(), rules.leaf());
    if (look.layout().grid().close() || covered == 0) {
      return;
    }
    BitSet lone = LoneHoles.of(look.deck(), look.layout(), rules.leaf());
    if (covered < COVERED || !lone.isEmpty()) {
      HoleBoard board = HoleBoard.of(look.deck(), look.layout(), look.level(), look.scores());
      SecondReading second = new SecondReading(look, board, rules);
      if (covered < COVERED) {
        second.doubt();
      }
      if (!lone.isEmpty()) {
        second.doubtLone(lone);
      }
    }
  }

  private static double covered(boolean[] holes, boolean[] leaf) {
    int all = 0;
    int both = 0;
    for (int i = 0; i < holes.length; i++) {
      all += holes[i] ? 1 : 0;
      both += holes[i] && leaf[i] ? 1 : 0;
    }
    return all == 0 ? 0 : (double) both / all;
  }

  private void doubt() {
    HoleOdds first = HoleOdds.of(look, board, STEP);
    if (differing(first::speak, first::leaf) >= SOME) {
      LeafReading told = LeafReading.of(look, HoleOdds.of(look, board, 1));
      if (differing(i -> true, i -> told.leaf()[i]) >= MANY) {
        rules.doubt(told);
        rules.hold(untold);
      }
    }
  }

  /** Doubts what alone stays in its hole, where the network finds much less of it. */
  private void doubtLone(BitSet lone) {
    HoleOdds odds = HoleOdds.of(look, board, lone, 1);
    differing(odds::speak, odds::leaf);
    rules.hold(untold);
  }

  /** Tells something of a pixel. */
  private interface Pixels {
    boolean at(int i);
  }

  /**
   * Returns the share of the holes with leaf in which another finds much more or less of it, and
   * notes those where both differ too much to tell.
   */
  private double differing(Pixels asked, Pixels leaf) {
    untold.clear();
    int planted = 0;
    int differ = 0;
    PointPx[] holes = board.holes();
    for (int site = 0; site < holes.length; site++) {
      int[] n = new int[3];
      HoleDisc.each(
          look.deck(),
          holes[site],
          board.innerPx(),
          (i, px) -> {
            if (asked.at(i)) {
              n[0]++;
              n[1] += rules.leaf()[i] ? 1 : 0;
              n[2] += leaf.at(i) ? 1 : 0;
            }
          });
      int most = Math.max(n[1], n[2]);
      int off = Math.abs(n[1] - n[2]);
      if (most > SPECK * n[0]) {
        planted++;
        differ += off > DIFFERENT * most ? 1 : 0;
        // Where the rules find none, a network that finds some is no reason for doubt.
        untold.set(site, n[1] > SPECK * n[0] && off > UNTOLD * most);
      }
    }
    return planted == 0 ? 0 : (double) differ / planted;
  }
}
