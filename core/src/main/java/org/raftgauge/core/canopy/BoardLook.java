// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.book.Layout;
import org.raftgauge.core.plane.DeckImage;

/** What is known of a board's pixels before leaf is told from the rest. Read only. */
final class BoardLook {
  private final DeckImage deck;
  private final Layout layout;
  private final EvenedLight light;
  private final TileModels models;
  private final TileGains gains;
  private final DeckPlaces places;
  private final float[][] rgb;
  private final float[] luminance;
  private final float[][] even;
  private final boolean[] painted;
  private final float[] scores;
  private final float[][] level;
  private final RuledScores ruled;

  private BoardLook(DeckImage deck, Layout layout, EvenedLight light, TileModels models) {
    int width = deck.image().width();
    this.deck = deck;
    this.layout = layout;
    this.light = light;
    this.models = models;
    this.gains = TileGains.of(light, width, deck.image().height());
    this.places = DeckPlaces.of(deck, layout);
    Veil veil = Veil.over(deck);
    this.rgb = veil.lifted();
    this.luminance = veil.luminance();
    this.even = calm();
    this.scores = models.scores(even);
    this.painted = PaintedParts.find(even, rgb, width);
    for (int i = 0; i < painted.length; i++) {
      scores[i] = painted[i] ? 0 : scores[i];
    }
    this.level = HoleLight.level(deck, layout, even, scores);
    this.ruled = RuledScores.of(deck, layout, level, scores);
  }

  /** Looks at a board. */
  static BoardLook at(DeckImage deck, Layout layout, EvenedLight light, ModelMap models) {
    return new BoardLook(deck, layout, light, TileModels.of(deck, models));
  }

  /** Calms the noise and evens the light. */
  private float[][] calm() {
    int width = deck.image().width();
    float[][] planes = new float[3][];
    for (int c = 0; c < 3; c++) {
      planes[c] = Binomial.blur(rgb[c], width, deck.image().height(), gains.ofRows(c, width));
    }
    return planes;
  }

  DeckImage deck() {
    return deck;
  }

  Layout layout() {
    return layout;
  }

  /** Returns width and height of the deck picture, px. */
  int[] size() {
    return new int[] {deck.image().width(), deck.image().height()};
  }

  EvenedLight light() {
    return light;
  }

  TileModels models() {
    return models;
  }

  TileGains gains() {
    return gains;
  }

  DeckPlaces places() {
    return places;
  }

  /** Returns three planes of linear light, haze lifted. */
  float[][] rgb() {
    return rgb;
  }

  /** Returns the luminance of {@link #rgb}. */
  float[] luminance() {
    return luminance;
  }

  /** Returns three planes of evened light. */
  float[][] even() {
    return even;
  }

  /**
   * Returns where colours are such as neither plants nor boards have; empty where there are none.
   */
  boolean[] painted() {
    return painted;
  }

  /** Returns the scores by colour alone. */
  float[] scores() {
    return scores;
  }

  /** Returns three planes of evened light, the holes as if in one light. */
  float[][] level() {
    return level;
  }

  /** Returns what the rules make of the scores. */
  RuledScores ruled() {
    return ruled;
  }
}
