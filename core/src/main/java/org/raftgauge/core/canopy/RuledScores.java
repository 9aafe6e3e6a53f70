// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.plane.DeckImage;

/**
 * The scores of a deck's pixels once the colour of its plugs is looked for, and the threshold
 * between leaf and board. Owns its arrays; scores may be changed by who asked for them.
 */
final class RuledScores {
  private final float[] scores;
  private final TellFromPlug tell;
  private final boolean plug;
  private final double threshold;
  private final double besidePlugs;

  private RuledScores(
      float[] scores, TellFromPlug tell, boolean plug, double threshold, double besidePlugs) {
    this.scores = scores;
    this.tell = tell;
    this.plug = plug;
    this.threshold = threshold;
    this.besidePlugs = besidePlugs;
  }

  /**
   * Rules.
   *
   * @param deck the deck picture
   * @param layout its layout
   * @param level three planes of evened light, the holes as if in one light
   * @param untold scores by colour alone; left as they are
   */
  static RuledScores of(DeckImage deck, Layout layout, float[][] level, float[] untold) {
    CanopyRule rule = CanopyRule.defaults();
    float[] scores = untold.clone();
    Optional<PlugColour> plug = PlugColour.of(deck, layout, level, scores);
    int width = deck.image().width();
    boolean[] holes = DeckPlaces.of(deck, layout).hole();
    boolean[] hole = BoxFilter.any(holes, width, deck.image().height(), 2);
    TellFromPlug tell = new TellFromPlug(rule, scores, hole);
    plug.ifPresent(p -> tell.clear(p, level));
    double threshold = threshold(rule, scores);
    tell.raise();
    // Red leaf scores as little as brown plugs: beside them it is held against what was raised.
    double raised = plug.isPresent() ? threshold(rule, scores) : threshold;
    return new RuledScores(scores, tell, plug.isPresent(), threshold, Math.max(threshold, raised));
  }

  /** Returns the scores. */
  float[] scores() {
    return scores;
  }

  /** Says whether the plugs have a colour that could pass for leaf. */
  boolean plugKnown() {
    return plug;
  }

  /** Returns what leaf scores more than. */
  double threshold() {
    return threshold;
  }

  /** Returns what a pixel must score more than to be leaf. */
  double threshold(int i, boolean redLeaf) {
    return redLeaf && tell.besidePlug(i) ? besidePlugs : threshold;
  }

  /** The middle between leaf and board, from the photo's own leaf, within the rule's limits. */
  private static double threshold(CanopyRule rule, float[] scores) {
    Histogram sure = new Histogram(ColourTable.MOST_SCORE);
    for (float s : scores) {
      if (s > 1.2 * rule.leastScore()) {
        sure.add(s);
      }
    }
    if (sure.isEmpty()) {
      return rule.leastScore();
    }
    double usual = sure.median();
    return Math.max(rule.leastScore(), Math.min(rule.mostThreshold(), rule.shareOfLeaf() * usual));
  }
}
