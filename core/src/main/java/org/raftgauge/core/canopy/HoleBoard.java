// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.book.Layout;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * The holes of a board as a whole: how wide they are, what colours are met in them and beside them,
 * and what its sure leaf looks like. A plug's colour ends at the rims; a leaf's goes on beyond
 * them, or stays about the holes' middles.
 */
final class HoleBoard {
  /** Zones about a hole end at these radii. */
  private static final double CORE = 0.45;

  private static final double MIDDLE = 0.7;
  private static final double BESIDE = 1.45;
  private static final double FAR = 2.6;

  /** A pixel at the rim has a share of both sides, px. */
  private static final double INNER_PX = 0.5;

  private static final double OUTER_PX = 2.5;

  /** Scores of what may be leaf beside a hole, further off, and of what is leaf. */
  private static final float MAY = 0.3f;

  private static final float LIKELY = 0.6f;
  private static final float SURE = 0.9f;

  /** A plug that scores less is told from leaf by its score. */
  private static final float DULL = 0.4f;

  /** So many pixels of sure leaf tell its colour. */
  private static final int ENOUGH_PX = 300;

  /** Else the more leaf-like fifth of the holes' middles does. */
  private static final double VIVID = 0.8;

  /** So many pixels of a dull plug tell its light. */
  private static final int ENOUGH_DULL_PX = 50;

  /** ln of the light of the usual plug, where none shows. */
  private static final double USUAL_PLUG = -2.5;

  private final DeckImage deck;
  private final float[][] even;
  private final float[] scores;
  private final double radiusPx;
  private final PointPx[] holes;
  private final HoleZone core = new HoleZone();
  private final HoleZone middle = new HoleZone();
  private final HoleZone rim = new HoleZone();
  private final HoleZone beside = new HoleZone();
  private final HoleZone far = new HoleZone();

  /** Values of {@link ColourSample} of sure leaf. */
  private double[] leaf = new double[ColourSample.VALUES];

  private double plugLight;
  private double rich;

  private HoleBoard(DeckImage deck, Layout layout, float[][] even, float[] scores) {
    this.deck = deck;
    this.even = even;
    this.scores = scores;
    this.radiusPx = HoleRim.radiusPx(deck, layout, even, scores);
    this.holes =
        layout.grid().sites().stream()
            .map(s -> deck.toPx(layout.grid().centre(s)))
            .toArray(PointPx[]::new);
  }

  /**
   * Looks at a board.
   *
   * @param deck the deck picture
   * @param layout its layout
   * @param even three planes of evened light, the holes as if in one light
   * @param scores of the same pixels by colour alone
   */
  static HoleBoard of(DeckImage deck, Layout layout, float[][] even, float[] scores) {
    HoleBoard board = new HoleBoard(deck, layout, even, scores);
    double pitch = Math.min(layout.grid().pitchXMm(), layout.grid().pitchYMm()) / deck.mmPerPx();
    board.look(Math.min(FAR * board.radiusPx, pitch / 2));
    return board;
  }

  private void look(double reachPx) {
    ColourSample sure = new ColourSample();
    ColourSample inCore = new ColourSample();
    ColourSample dull = new ColourSample();
    int[] inside = {0};
    for (PointPx hole : holes) {
      HoleDisc.each(
          deck,
          hole,
          reachPx,
          (i, px) -> {
            if (px < innerPx()) {
              double[] c = colour(i);
              inside[0]++;
              zone(px).add(HoleZone.cell(c[0], c[1], c[2]));
              if (px < CORE * radiusPx) {
                inCore.add(c, scores[i]);
              }
              if (scores[i] < DULL) {
                dull.add(c, scores[i]);
              }
            } else if (px > radiusPx + OUTER_PX) {
              lookBeside(i, px, sure);
            }
          });
    }
    leaf = (sure.size() > ENOUGH_PX ? sure : inCore.above(VIVID)).medians();
    plugLight = dull.size() > ENOUGH_DULL_PX ? dull.medians()[2] : USUAL_PLUG;
    rich = (double) sure.size() / Math.max(1, inside[0]);
  }

  private HoleZone zone(double px) {
    return px < CORE * radiusPx ? core : px < MIDDLE * radiusPx ? middle : rim;
  }

  private void lookBeside(int i, double px, ColourSample sure) {
    boolean near = px < BESIDE * radiusPx;
    HoleZone zone = near ? beside : far;
    if (scores[i] > (near ? MAY : LIKELY)) {
      double[] c = colour(i);
      zone.add(HoleZone.cell(c[0], c[1], c[2]));
      if (scores[i] > SURE) {
        sure.add(c, scores[i]);
      }
    } else {
      zone.see();
    }
  }

  private double[] colour(int i) {
    double green = even[1][i];
    double u = HoleColours.u(even[0][i], green);
    double v = HoleColours.u(even[2][i], green);
    return new double[] {u, v, light(i)};
  }

  /** Returns ln of a pixel's light. */
  double light(int i) {
    return Math.log(PlugLight.luminance(even, i) + LeafRule.FLOOR);
  }

  PointPx[] holes() {
    return holes;
  }

  DeckImage deck() {
    return deck;
  }

  float[] scores() {
    return scores;
  }

  /** Returns the radius of the holes, px. */
  double radiusPx() {
    return radiusPx;
  }

  /** Returns how far from its middle a hole's pixels lie at most, px. */
  double innerPx() {
    return radiusPx - INNER_PX;
  }

  /** Returns the score of its sure leaf. */
  double leafScore() {
    return leaf[ColourSample.VALUES - 1];
  }

  /** Writes the 15 terms of a pixel's own colour, from the first on. */
  void colourTerms(int i, float[] t) {
    double[] c = colour(i);
    int cell = HoleZone.cell(c[0], c[1], c[2]);
    double atRim = rim.ln(cell);
    double inCore = core.ln(cell);
    t[0] = scores[i];
    t[1] = (float) c[0];
    t[2] = (float) c[1];
    t[3] = (float) c[2];
    t[4] = (float) (scores[i] / Math.max(MAY, leafScore()));
    t[5] = (float) (c[0] - leaf[0]);
    t[6] = (float) (c[1] - leaf[1]);
    t[7] = (float) (c[2] - leaf[2]);
    t[8] = (float) (beside.ln(cell) - atRim);
    t[9] = (float) (atRim - inCore);
    t[10] = (float) (far.ln(cell) - atRim);
    t[11] = (float) (inCore - middle.ln(cell));
    t[12] = (float) atRim;
    t[13] = (float) inCore;
    t[14] = (float) (c[2] - plugLight);
    t[15] = (float) rich;
  }
}
