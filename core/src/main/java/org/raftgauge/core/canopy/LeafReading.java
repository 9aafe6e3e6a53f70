// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;

/** A reading of a board: which of its pixels are leaf, given what is said of those in its holes. */
final class LeafReading {
  /** Leaf up to this many times the threshold was nearly none. */
  private static final double NEAR = 1.25;

  /** Bare deck past this share of the threshold was nearly leaf. */
  private static final double NEAR_BELOW = 0.75;

  private final BoardLook look;
  private final HoleOdds odds;
  private final float[] scores;
  private final boolean[] leaf;
  private final BitSet unsure = new BitSet();
  private BitSet plugLike = new BitSet();
  private double near;

  private LeafReading(BoardLook look, HoleOdds odds) {
    this.look = look;
    this.odds = odds;
    this.scores = look.ruled().scores().clone();
    this.leaf = new boolean[scores.length];
  }

  /** Reads a board. */
  static LeafReading of(BoardLook look, HoleOdds odds) {
    LeafReading reading = new LeafReading(look, odds);
    reading.byScore();
    reading.byLook();
    return reading;
  }

  /** Notes where another reading differs. */
  void doubt(LeafReading other) {
    for (int i = 0; i < leaf.length; i++) {
      if (leaf[i] != other.leaf[i]) {
        unsure.set(i);
      }
    }
  }

  /** Notes sites, by their place in the grid, whose leaf may be the plug. */
  void hold(BitSet sites) {
    plugLike.or(sites);
  }

  /** Says whether colour speaks but weakly for what a pixel is taken for. */
  boolean isWeak(int i, boolean mostlyLeaf) {
    double threshold = look.ruled().threshold();
    return unsure.get(i)
        || (mostlyLeaf ? scores[i] < NEAR * threshold : scores[i] > NEAR_BELOW * threshold);
  }

  /** Returns where leaf is. */
  boolean[] leaf() {
    return leaf;
  }

  /** Returns the share of the leaf that was nearly none. */
  double near() {
    return near;
  }

  /** Returns the sites, by their place in the grid, whose leaf may be the plug. */
  BitSet plugLike() {
    return plugLike;
  }

  private void byScore() {
    RuledScores ruled = look.ruled();
    double threshold = ruled.threshold();
    boolean[] redLeaf = look.models().seenBy(LeafModel.RED_LEAF);
    odds.into(scores, threshold);
    if (look.models().has(LeafModel.RED_LEAF) && look.light().boardIsBright()) {
      blacken();
    }
    int all = 0;
    int nearly = 0;
    for (int i = 0; i < scores.length; i++) {
      leaf[i] = scores[i] > (odds.speak(i) ? threshold : ruled.threshold(i, redLeaf[i]));
      if (leaf[i]) {
        all++;
        nearly += scores[i] < NEAR * threshold ? 1 : 0;
      }
    }
    near = all == 0 ? 0 : (double) nearly / all;
  }

  private void byLook() {
    int[] size = look.size();
    DeckPlaces places = look.places();
    float[] luminance = look.luminance();
    double threshold = look.ruled().threshold();
    boolean red = look.models().has(LeafModel.RED_LEAF);
    boolean[] redLeaf = look.models().seenBy(LeafModel.RED_LEAF);
    boolean[] green = look.models().seenBy(LeafModel.GREEN_LEAF);
    boolean[] painted = look.painted();
    for (int i = 0; i < painted.length; i++) {
      green[i] &= !painted[i];
    }
    if (red) {
      new RedInHole(size, places).add(leaf, look.level(), scores, redLeaf);
    }
    DimLight dim = DimLight.of(size, look.rgb(), look.light());
    dim.add(leaf, look.even(), green, threshold);
    new LeafGloss(size, look.even(), scores).add(leaf, green, threshold);
    boolean[] unbled = leaf.clone();
    new ChromaBleed(size[0], size[1], luminance).takeBack(leaf, places.hole());
    odds.keep(leaf, unbled);
    if (red) {
      // Red leaf is dark by itself: only green leaf lends its colour.
      boolean[] redHole = places.hole().clone();
      for (int i = 0; i < leaf.length; i++) {
        leaf[i] |= unbled[i] && redLeaf[i];
        redHole[i] &= redLeaf[i];
      }
      RedSeams.close(leaf, luminance, redHole, size);
    }
    odds.clearPlugs(green);
    new DeadLeaf(size, leaf, places).add(dim.raised(look.level()), green);
    dropPlugs();
    if (look.ruled().plugKnown()) {
      boolean[] hole = BoxFilter.any(places.hole(), size[0], size[1], 2);
      new TintedGaps(size, luminance, look.scores(), hole).fill(leaf, places.holePx());
    }
    new DarkGaps(size, luminance).fill(leaf, places.holePx());
  }

  private void dropPlugs() {
    boolean[] wide = look.ruled().plugKnown() ? leaf : leaf.clone();
    HoleSpecks.drop(look.deck(), look.layout(), wide);
    plugLike = PlugDisc.drop(look.deck(), look.layout(), leaf, wide, look.luminance());
  }

  /**
   * Counts near-black inside a bright board as red leaf, off holes and marks; it must still be
   * attached to a plant.
   */
  private void blacken() {
    TileGains gains = look.gains();
    float[] green = look.rgb()[1];
    boolean[] bare = look.places().bareBoard();
    int width = look.size()[0];
    for (int i = 0; i < bare.length; i++) {
      int x = i % width;
      int y = Math.floorDiv(i, width);
      if (bare[i] && look.models().at(x, y) == LeafModel.RED_LEAF) {
        float lit = green[i] * gains.at(1, x, y);
        float seen = Math.max(lit, green[i] / (float) look.light().boardGreen());
        scores[i] = Math.max(0, scores[i]) + (float) LeafRule.darkness(seen);
      }
    }
  }
}
