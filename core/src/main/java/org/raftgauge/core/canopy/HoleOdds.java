// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;
import org.raftgauge.core.pixels.PointPx;

/** How likely leaf is at pixels of a board's holes, as {@link HoleNetwork} has it. */
final class HoleOdds {
  /** Scores are moved by this power of the odds, and by e squared at the most. */
  private static final double PER_ODDS = 0.23;

  private static final double MOST = 2;

  /** What is less likely than this is no dead leaf either, log odds (working value). */
  private static final float DEAD = -1.5f;

  /** Stands for even odds: noughts are pixels of which nothing is said. */
  private static final float EVEN = 1e-6f;

  private final float[] odds;

  private HoleOdds(float[] odds) {
    this.odds = odds;
  }

  /** Says nothing of any pixel. */
  static HoleOdds none() {
    return new HoleOdds(new float[0]);
  }

  /**
   * Asks for the pixels of all holes whose leaf is told by a model that comes with the program:
   * what users taught is none of what the network was taught with.
   *
   * @param look the board
   * @param board its holes
   * @param step every so many pixels of every so many rows of every so many holes are asked for
   * @return what was said
   */
  static HoleOdds of(BoardLook look, HoleBoard board, int step) {
    BitSet which = new BitSet();
    for (int at = 0; at < board.holes().length; at += step) {
      which.set(at);
    }
    return of(look, board, which, step);
  }

  /** Asks for the pixels of some holes, every so many of every so many rows. */
  static HoleOdds of(BoardLook look, HoleBoard board, BitSet which, int step) {
    float[] odds = new float[look.scores().length];
    TileModels models = look.models();
    boolean[] green = models.seenBy(LeafModel.GREEN_LEAF);
    boolean[] red = models.seenBy(LeafModel.RED_LEAF);
    HoleTerms.Asked asked = new HoleTerms.Asked(models.has(LeafModel.RED_LEAF), step);
    PointPx[] holes = board.holes();
    for (int at = which.nextSetBit(0); at >= 0; at = which.nextSetBit(at + 1)) {
      HoleTerms.each(
          board,
          holes[at],
          look.ruled(),
          asked,
          (i, terms) -> {
            if (green[i] || red[i]) {
              float said = HoleNetwork.shipped().odds(terms);
              odds[i] = said == 0 ? EVEN : said;
            }
          });
    }
    return new HoleOdds(odds);
  }

  /** Says whether anything is said of a pixel. */
  boolean speak(int i) {
    return odds.length > 0 && odds[i] != 0;
  }

  /** Says whether leaf is likelier than not. */
  boolean leaf(int i) {
    return odds[i] > 0;
  }

  /** Writes what is said into scores, so that what is likelier than not is over the threshold. */
  void into(float[] scores, double threshold) {
    for (int i = 0; i < odds.length; i++) {
      if (odds[i] != 0) {
        double by = Math.max(-MOST, Math.min(MOST, PER_ODDS * odds[i]));
        scores[i] = (float) (threshold * Math.exp(by));
      }
    }
  }

  /** Gives back likely leaf that was taken. */
  void keep(boolean[] leaf, boolean[] before) {
    for (int i = 0; i < odds.length; i++) {
      leaf[i] |= odds[i] > 0 && before[i];
    }
  }

  /** Clears what is not even dead leaf. */
  void clearPlugs(boolean[] mayBeLeaf) {
    for (int i = 0; i < odds.length; i++) {
      mayBeLeaf[i] &= odds[i] == 0 || odds[i] > DEAD;
    }
  }
}
