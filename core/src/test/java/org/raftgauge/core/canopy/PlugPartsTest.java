// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** Specks of plugs and whole plugs that were taken for leaf. */
class PlugPartsTest {
  private static final DeckImage DECK =
      new DrawnDeck(Plants.LAYOUT.board(), 1).draw(Plants.on(0.75));

  @Test
  void linesAndSpecksInAHoleAreDroppedAndLeavesStay() {
    // The square is 3 px at 1 mm a pixel.
    String[] before = {
      "##.........", //
      "...........",
      "......###..",
      "......###..",
      "#.....###..",
      "...........",
      "...........",
      ".####.....#"
    };
    String[] after = {
      "...........", //
      "...........",
      "......###..",
      "......###..",
      "......###..",
      "...........",
      "...........",
      "..........."
    };
    PointPx hole = centre(0);
    boolean[] leaf = at(hole, before);
    HoleSpecks.drop(DECK, Plants.LAYOUT, leaf);
    assertArrayEquals(at(hole, after), leaf);
  }

  @Test
  void aThinTipThatBrokeOffALeafStays() {
    boolean[] leaf = at(centre(0), "###..", "###.#", "###..");
    boolean[] before = leaf.clone();
    HoleSpecks.drop(DECK, Plants.LAYOUT, leaf);
    assertArrayEquals(before, leaf);
  }

  @Test
  void specksOffTheHolesAreLeftToOthers() {
    PointPx hole = centre(0);
    boolean[] leaf = at(new PointPx(hole.xPx() + 40, hole.yPx()), "#...", "...#");
    boolean[] before = leaf.clone();
    HoleSpecks.drop(DECK, Plants.LAYOUT, leaf);
    assertArrayEquals(before, leaf);
  }

  @Test
  void aLineThatReachesOutOfTheHoleStays() {
    boolean[] leaf = at(centre(0), "#".repeat(40));
    boolean[] before = leaf.clone();
    HoleSpecks.drop(DECK, Plants.LAYOUT, leaf);
    assertArrayEquals(before, leaf);
  }

  @Test
  void aDiscInAHoleBesideLargePlantsIsItsPlug() {
    boolean[] leaf = discs(62, 62, 62, 20);
    PlugDisc.drop(DECK, Plants.LAYOUT, leaf, leaf.clone(), new float[leaf.length]);
    assertArrayEquals(discs(62, 62, 62, 0), leaf);
  }

  /** The layout's hole is 50 px wide, a plug at least 0.72 of it: 18 px from its middle. */
  @Test
  void aPlugIsAsWideAsItsPixelsNotAsTheirCentres() {
    boolean[] leaf = discs(62, 62, 62, 17.8);
    PlugDisc.drop(DECK, Plants.LAYOUT, leaf, leaf.clone(), new float[leaf.length]);
    assertArrayEquals(discs(62, 62, 62, 0), leaf);
  }

  @Test
  void aRoundHeadAmongOthersOfItsSizeIsAPlant() {
    boolean[] leaf = discs(28, 31, 25, 20);
    PlugDisc.drop(DECK, Plants.LAYOUT, leaf, leaf.clone(), new float[leaf.length]);
    assertArrayEquals(discs(28, 31, 25, 20), leaf);
  }

  @Test
  void severalDiscsOfOneSizeBesideTwiceLargerPlantsArePlugs() {
    // Plants of 40 px cover 2.3 discs of the layout's hole (50 mm) each, those of 35 px 1.7.
    Layout layout = DrawnDeck.layout(new Board(580, 300), new SiteGrid(2, 4, 80, 80, 140, 140, 0));
    DeckImage deck = new DrawnDeck(layout.board(), 1).draw((x, y, rgb) -> rgb[0] = 0.75);
    for (double plant : new double[] {40, 35}) {
      boolean[] leaf = new boolean[deck.image().width() * deck.image().height()];
      List<SiteId> sites = layout.grid().sites();
      for (int s = 0; s < sites.size(); s++) {
        PointPx c = deck.toPx(layout.grid().centre(sites.get(s)));
        disc(leaf, deck.image().width(), c, s % 3 == 0 ? 20 : plant);
      }
      PlugDisc.drop(deck, layout, leaf, leaf.clone(), new float[leaf.length]);
      PointPx first = deck.toPx(layout.grid().centre(sites.get(0)));
      int row = (int) first.yPx();
      boolean stays = leaf[row * deck.image().width() + (int) first.xPx()];
      assertEquals(plant < 40, stays, "plants of " + plant + " px");
    }
  }

  @Test
  void theSameDiscInAllHolesIsTheirPlugs() {
    boolean[] leaf = discs(20, 20, 20, 20);
    PlugDisc.drop(DECK, Plants.LAYOUT, leaf, leaf.clone(), new float[leaf.length]);
    assertArrayEquals(new boolean[leaf.length], leaf);
  }

  @Test
  void leavesThatReachDifferentlyFarAreNoDisc() {
    boolean[] leaf = discs(62, 62, 62, 19);
    PointPx at = centre(3);
    for (int k = 0; k < 4; k++) {
      double angle = Math.PI / 2 * k;
      disc(leaf, at.xPx() + 20 * Math.cos(angle), at.yPx() + 20 * Math.sin(angle), 10);
    }
    boolean[] before = leaf.clone();
    PlugDisc.drop(DECK, Plants.LAYOUT, leaf, leaf.clone(), new float[leaf.length]);
    assertArrayEquals(before, leaf);
    assertFalse(PlugDisc.nearlyRound(DECK, 40, leaf, at), "reaches 30 mm four ways, 19 between");
  }

  @Test
  void aFrayedDiscIsAPlugOnlyBesidePlantsManyTimesItsSize() {
    // Alternately 20 and 17.6 px: spread 1.2 of a mean of 18.8, past 5 % and within 7.5 %. Plants
    // of 90 px cover over ten discs of the layout's hole (50 mm) each, those of 50 px four.
    boolean[] frayed = frayed(discs(90, 90, 90));
    PlugDisc.drop(DECK, Plants.LAYOUT, frayed, frayed.clone(), new float[frayed.length]);
    assertArrayEquals(discs(90, 90, 90), frayed);
    boolean[] beside = frayed(discs(50, 50, 50));
    boolean[] before = beside.clone();
    PlugDisc.drop(DECK, Plants.LAYOUT, beside, beside.clone(), new float[beside.length]);
    assertArrayEquals(before, beside);
  }

  /** Adds a disc at the last hole whose radius changes from sixteenth to sixteenth. */
  private static boolean[] frayed(boolean[] leaf) {
    int width = DECK.image().width();
    PointPx c = centre(3);
    for (int i = 0; i < leaf.length; i++) {
      double dx = i % width - c.xPx();
      double dy = Math.floorDiv(i, width) - c.yPx();
      boolean odd = (int) ((Math.atan2(dy, dx) / Math.PI + 1) * 8) % 2 == 1;
      leaf[i] |= Math.hypot(dx, dy) < (odd ? 17.6 : 20);
    }
    return leaf;
  }

  @Test
  void speckledDiscsAreDiscsAndSpecksAreNone() {
    boolean[] leaf = discs(62, 62, 62, 20);
    boolean[] few = leaf.clone();
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] &= !inLast(i) || i % 2 == 0;
      few[i] &= !inLast(i) || i % 7 == 0;
    }
    assertTrue(PlugDisc.nearlyRound(DECK, 40, leaf, centre(3)));
    assertFalse(PlugDisc.nearlyRound(DECK, 40, few, centre(3)), "a seventh of the disc");
    PlugDisc.drop(DECK, Plants.LAYOUT, leaf, leaf.clone(), new float[leaf.length]);
    assertArrayEquals(discs(62, 62, 62, 0), leaf);
    assertEquals(4, Plants.LAYOUT.grid().sites().size());
  }

  private static boolean inLast(int i) {
    int width = DECK.image().width();
    PointPx c = centre(3);
    return Math.hypot(i % width - c.xPx(), Math.floorDiv(i, width) - c.yPx()) < 30;
  }

  private static PointPx centre(int site) {
    return DECK.toPx(Plants.LAYOUT.grid().centre(Plants.LAYOUT.grid().sites().get(site)));
  }

  private static boolean[] discs(double... radiiPx) {
    boolean[] leaf = new boolean[DECK.image().width() * DECK.image().height()];
    for (int s = 0; s < radiiPx.length; s++) {
      disc(leaf, centre(s).xPx(), centre(s).yPx(), radiiPx[s]);
    }
    return leaf;
  }

  private static void disc(boolean[] leaf, double x, double y, double radius) {
    disc(leaf, DECK.image().width(), new PointPx(x, y), radius);
  }

  private static void disc(boolean[] leaf, int width, PointPx c, double radius) {
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] |= Math.hypot(i % width - c.xPx(), Math.floorDiv(i, width) - c.yPx()) < radius;
    }
  }

  /** Draws a picture whose upper left corner lies at a place. */
  private static boolean[] at(PointPx place, String... rows) {
    int width = DECK.image().width();
    boolean[] leaf = new boolean[width * DECK.image().height()];
    for (int y = 0; y < rows.length; y++) {
      for (int x = 0; x < rows[y].length(); x++) {
        leaf[((int) place.yPx() + y) * width + (int) place.xPx() + x] = rows[y].charAt(x) == '#';
      }
    }
    return leaf;
  }
}
