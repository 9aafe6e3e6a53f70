// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/** Decides which part of a deck picture is leaf. */
public final class SegmentCanopy {
  /**
   * Edges smeared by more than this beyond a sharp photo's fill narrow gaps (working value), mm.
   */
  private static final double LEAST_SOFT_MM = 0.12;

  private SegmentCanopy() {}

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
   * Looks at the pixels of a board's holes, for teaching.
   *
   * @param deck the deck picture
   * @param layout the board's layout
   * @param light its light
   * @param models the colour model at each place of the deck
   * @param visit told of each pixel that lies in a hole and is seen
   */
  public static void holes(
      DeckImage deck, Layout layout, EvenedLight light, ModelMap models, HolePixel visit) {
    BoardLook look = BoardLook.at(deck, layout, light, models);
    HoleBoard board = HoleBoard.of(deck, layout, look.level(), look.scores());
    HoleTerms.Asked all = new HoleTerms.Asked(look.models().has(LeafModel.RED_LEAF), 1);
    for (PointPx hole : board.holes()) {
      HoleTerms.each(board, hole, look.ruled(), all, visit);
    }
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
    BoardLook look = BoardLook.at(deck, layout, light, models);
    LeafReading reading = LeafReading.of(look, HoleOdds.none());
    SecondReading.doubt(look, reading);
    boolean[] leaf = reading.leaf();
    float[][] rgb = look.rgb();
    int width = deck.image().width();
    int height = deck.image().height();
    byte[] coverage = EdgeMix.coverage(width, height, rgb, leaf);
    if (deck.softMm() > LEAST_SOFT_MM) {
      new SoftGaps(width, height, look.luminance()).thin(coverage, leaf, look.places().hole());
    }
    return new Canopy(
        width,
        height,
        coverage,
        light,
        new Canopy.Doubts(
            look.ruled().threshold(),
            reading.near(),
            weak(coverage, reading),
            FillsHole.sites(deck, layout, leaf),
            reading.plugLike()));
  }

  /** Returns the pixels whose colour speaks but weakly for what they were taken for. */
  private static BitSet weak(byte[] coverage, LeafReading reading) {
    BitSet weak = new BitSet(coverage.length);
    for (int i = 0; i < coverage.length; i++) {
      if (reading.isWeak(i, coverage[i] < 0)) {
        weak.set(i);
      }
    }
    return weak;
  }
}
