// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.plane.DeckImage;

/** Decides which part of a deck picture is leaf. */
public final class SegmentCanopy {
  /** Leaf up to this many times the threshold was nearly none. */
  private static final double NEAR_ABOVE = 1.25;

  /** Bare deck past this share of the threshold was nearly leaf. */
  private static final double NEAR_BELOW = 0.75;

  /**
   * Edges smeared by more than this beyond a sharp photo's fill narrow gaps (working value), mm.
   */
  private static final double LEAST_SOFT_MM = 0.12;

  private final DeckImage deck;
  private final Layout layout;
  private final CanopyRule rule;
  private final int width;
  private final int height;
  private final Veil veil;
  private final float[][] rgb;

  private SegmentCanopy(DeckImage deck, Layout layout, CanopyRule rule) {
    this.deck = deck;
    this.layout = layout;
    this.rule = rule;
    this.width = deck.image().width();
    this.height = deck.image().height();
    this.veil = Veil.over(deck);
    this.rgb = veil.lifted();
  }

  /**
   * Evens the light on a board.
   *
   * @param deck the deck picture
   * @param layout the board's layout
   * @return the light
   */
  public static EvenedLight evenLight(DeckImage deck, Layout layout) {
    return BoardLight.of(deck, layout);
  }

  /**
   * Decides how much of each pixel is leaf.
   *
   * @param deck the deck picture
   * @param layout the board's layout
   * @param light its light
   * @param models the colour model at each place of the deck
   * @return the canopy
   */
  public static Canopy on(DeckImage deck, Layout layout, EvenedLight light, ModelMap models) {
    return new SegmentCanopy(deck, layout, CanopyRule.defaults())
        .decide(light, TileModels.of(deck, models));
  }

  private Canopy decide(EvenedLight light, TileModels models) {
    DeckPlaces places = DeckPlaces.of(deck, layout);
    TileGains gains = TileGains.of(light, width, height);
    float[][] even = even(gains);
    float[] scores = models.scores(even);
    boolean[] painted = PaintedParts.find(even, rgb, width);
    clear(scores, painted);
    float[][] level = HoleLight.level(deck, layout, even, scores);
    Optional<PlugColour> plug = PlugColour.of(deck, layout, level, scores);
    float[] untold = plug.isPresent() ? scores.clone() : scores;
    boolean[] hole =
        plug.isPresent() ? BoxFilter.any(places.hole(), width, height, 2) : places.hole();
    TellFromPlug tell = new TellFromPlug(rule, scores, hole);
    plug.ifPresent(p -> tell.clear(p, level));
    double threshold = threshold(scores);
    tell.raise();
    // Red leaf scores as little as brown plugs: beside them it is held against what was raised.
    boolean[] redLeaf = models.seenBy(LeafModel.RED_LEAF);
    double besidePlugs = plug.isPresent() ? Math.max(threshold, threshold(scores)) : threshold;
    boolean red = models.has(LeafModel.RED_LEAF);
    if (red && light.boardIsBright()) {
      blacken(scores, light, models, places);
    }
    boolean[] leaf = new boolean[scores.length];
    int near = 0;
    int all = 0;
    for (int i = 0; i < scores.length; i++) {
      leaf[i] = scores[i] > (redLeaf[i] && tell.besidePlug(i) ? besidePlugs : threshold);
      if (leaf[i]) {
        all++;
        near += scores[i] < NEAR_ABOVE * threshold ? 1 : 0;
      }
    }
    int[] size = {width, height};
    boolean[] green = models.seenBy(LeafModel.GREEN_LEAF);
    clear(green, painted);
    if (red) {
      new RedInHole(size, places).add(leaf, level, scores, redLeaf);
    }
    DimLight dim = DimLight.of(size, rgb, light);
    dim.add(leaf, even, green, threshold);
    new LeafGloss(size, even, scores).add(leaf, green, threshold);
    float[] luminance = veil.luminance();
    boolean[] unbled = red ? leaf.clone() : leaf;
    new ChromaBleed(width, height, luminance).takeBack(leaf, places.hole());
    if (red) {
      keepRed(leaf, unbled, models);
      boolean[] redHole = redLeaf.clone();
      keep(redHole, places.hole());
      RedSeams.close(leaf, luminance, redHole, size);
    }
    new DeadLeaf(size, leaf, places).add(dim.raised(level), green);
    boolean[] wide = plug.isPresent() ? leaf : leaf.clone();
    HoleSpecks.drop(deck, layout, wide);
    BitSet plugLike = PlugDisc.drop(deck, layout, leaf, wide, luminance);
    if (plug.isPresent()) {
      new TintedGaps(size, luminance, untold, hole).fill(leaf, places.holePx());
    }
    new DarkGaps(size, luminance).fill(leaf, places.holePx());
    byte[] coverage = EdgeMix.coverage(width, height, rgb, leaf);
    if (deck.softMm() > LEAST_SOFT_MM) {
      new SoftGaps(width, height, luminance).thin(coverage, leaf, places.hole());
    }
    double doubt = all == 0 ? 0 : (double) near / all;
    return new Canopy(
        width,
        height,
        coverage,
        light,
        new Canopy.Doubts(
            threshold,
            doubt,
            weak(coverage, scores, threshold),
            FillsHole.sites(deck, layout, leaf),
            plugLike));
  }

  /** Returns the pixels whose colour speaks but weakly for what they were taken for. */
  private static BitSet weak(byte[] coverage, float[] scores, double threshold) {
    BitSet weak = new BitSet(coverage.length);
    double most = NEAR_ABOVE * threshold;
    double least = NEAR_BELOW * threshold;
    for (int i = 0; i < coverage.length; i++) {
      if (coverage[i] < 0 ? scores[i] < most : scores[i] > least) {
        weak.set(i);
      }
    }
    return weak;
  }

  /**
   * Counts near-black inside a bright board as red leaf, off holes and marks; it must still be
   * attached to a plant.
   */
  private void blacken(float[] scores, EvenedLight light, TileModels models, DeckPlaces places) {
    TileGains gains = TileGains.of(light, width, height);
    boolean[] bare = places.bareBoard();
    for (int y = 0, i = 0; y < height; y++) {
      for (int x = 0; x < width; x++, i++) {
        if (bare[i] && models.at(x, y) == LeafModel.RED_LEAF) {
          float lit = rgb[1][i] * gains.at(1, x, y);
          float green = Math.max(lit, rgb[1][i] / (float) light.boardGreen());
          scores[i] = Math.max(0, scores[i]) + (float) LeafRule.darkness(green);
        }
      }
    }
  }

  /** Red leaf is dark by itself: only green leaf lends its colour. */
  private void keepRed(boolean[] leaf, boolean[] before, TileModels models) {
    for (int y = 0, i = 0; y < height; y++) {
      for (int x = 0; x < width; x++, i++) {
        leaf[i] |= before[i] && models.at(x, y) == LeafModel.RED_LEAF;
      }
    }
  }

  private static void clear(float[] scores, boolean[] where) {
    for (int i = 0; i < where.length; i++) {
      scores[i] = where[i] ? 0 : scores[i];
    }
  }

  private static void clear(boolean[] mask, boolean[] where) {
    for (int i = 0; i < where.length; i++) {
      mask[i] &= !where[i];
    }
  }

  private static void keep(boolean[] mask, boolean[] where) {
    for (int i = 0; i < where.length; i++) {
      mask[i] &= where[i];
    }
  }

  /** The middle between leaf and board, from the photo's own leaf, within the rule's limits. */
  private double threshold(float[] scores) {
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

  /** Calms the noise and evens the light. */
  private float[][] even(TileGains gains) {
    float[][] even = new float[3][];
    for (int c = 0; c < 3; c++) {
      even[c] = Binomial.blur(rgb[c], width, height, gains.ofRows(c, width));
    }
    return even;
  }
}
