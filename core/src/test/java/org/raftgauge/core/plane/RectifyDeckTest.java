// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

class RectifyDeckTest {
  private static final Layout DECK = TestLayouts.deck18();
  private static final Lens LENS = TestPoses.lens(480, 800);
  private static final CameraPose POSE = TestPoses.over(LENS, DECK.board(), 1600, 12, 4, -3);

  @Test
  void discsLieWhereTheyWereLaidAtAnyScale() {
    Scene scene = Scene.of(480, 800, 1).noise(0);
    scene.board(DECK, POSE).bare().disc(200, 240, 40).disc(420, 900, 40);
    RgbImage photo = scene.draw();
    double own = DeckScale.ofPhoto(POSE, DECK.board(), 0).mmPerPx();
    for (double times : new double[] {0.5, 1, 1.25, 1.7, 3.2}) {
      DeckScale scale = new DeckScale(own * times, 20);
      DeckImage deck = RectifyDeck.rectify(photo, POSE, DECK.board(), scale);
      for (PointMm centre : new PointMm[] {new PointMm(200, 240), new PointMm(420, 900)}) {
        PointMm found = greenCentre(deck, centre);
        // A tenth of a photo pixel (1.8 mm).
        assertEquals(centre.xMm(), found.xMm(), 0.2, "times " + times);
        assertEquals(centre.yMm(), found.yMm(), 0.2, "times " + times);
      }
    }
  }

  @Test
  void pixelsAndMillimetresConvertBothWaysAtPixelCentres() {
    DeckImage deck =
        RectifyDeck.rectify(
            RgbImage.of(480, 800, new byte[3 * 480 * 800]),
            POSE,
            DECK.board(),
            new DeckScale(2, 10));
    // (600 + 20) / 2 by (1200 + 20) / 2.
    assertEquals(310, deck.image().width());
    assertEquals(610, deck.image().height());
    // Pixel (0, 0) covers -10 to -8 mm: its centre is -9.
    assertEquals(new PointMm(-9, -9), deck.toMm(new PointPx(0, 0)));
    assertEquals(new PointPx(4.5, 9.5), deck.toPx(new PointMm(0, 10)));
  }

  @Test
  void deckBeyondThePhotoIsMarkedUnseen() {
    CameraPose beside = TestPoses.shifted(POSE, 300, 0);
    DeckImage deck =
        RectifyDeck.rectify(
            RgbImage.of(480, 800, new byte[3 * 480 * 800]),
            beside,
            DECK.board(),
            new DeckScale(4, 0));
    int unseen = 0;
    for (int y = 0; y < deck.image().height(); y += 3) {
      for (int x = 0; x < deck.image().width(); x += 3) {
        PointPx p = beside.toPhoto(deck.toMm(new PointPx(x, y)));
        boolean on = p.xPx() >= 0 && p.xPx() <= 479 && p.yPx() >= 0 && p.yPx() <= 799;
        boolean rim =
            Math.min(Math.abs(p.xPx()), Math.abs(p.xPx() - 479)) < 2
                || Math.min(Math.abs(p.yPx()), Math.abs(p.yPx() - 799)) < 2;
        assertTrue(rim || on == deck.seen(x, y), x + ", " + y);
        unseen += deck.seen(x, y) ? 0 : 1;
      }
    }
    assertTrue(unseen > 100);
    assertFalse(deck.seen(deck.image().width() - 1, 0));
  }

  @Test
  void aScaleThatWouldDrawHundredsOfMegapixelsIsRefused() {
    RgbImage photo = RgbImage.of(1, 1, new byte[3]);
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () -> RectifyDeck.rectify(photo, POSE, new Board(90000, 90000), new DeckScale(0.5, 0)));
    assertTrue(e.getMessage().startsWith("mmPerPx must be larger"), e.getMessage());
  }

  /** Returns the centre of gravity of leaf green about a place. */
  private static PointMm greenCentre(DeckImage deck, PointMm about) {
    double sum = 0;
    double x = 0;
    double y = 0;
    for (int j = 0; j < deck.image().height(); j++) {
      for (int i = 0; i < deck.image().width(); i++) {
        PointMm p = deck.toMm(new PointPx(i, j));
        if (Math.hypot(p.xMm() - about.xMm(), p.yMm() - about.yMm()) < 70) {
          double green = Math.max(0, deck.image().value(i, j, 1) - deck.image().value(i, j, 0));
          sum += green;
          x += green * p.xMm();
          y += green * p.yMm();
        }
      }
    }
    return new PointMm(x / sum, y / sum);
  }
}
