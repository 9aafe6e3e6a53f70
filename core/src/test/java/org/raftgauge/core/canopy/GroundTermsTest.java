// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.TaughtGround;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** The terms that a taught network weighs, against slow loops. */
class GroundTermsTest {
  private static final int WIDTH = 40;

  /** Over two bands of rows. */
  private static final int HEIGHT = 130;

  private static DeckImage noise() {
    byte[] rgb = new byte[3 * WIDTH * HEIGHT];
    new Random(6).nextBytes(rgb);
    return DrawnDeck.painted(WIDTH, HEIGHT, 1, rgb);
  }

  private static double light(DeckImage deck, int x, int y) {
    byte[] rgb = deck.image().rgb();
    int i = 3 * (y * WIDTH + x);
    return Cielab.ofLinear(Srgb.linear(rgb[i]), Srgb.linear(rgb[i + 1]), Srgb.linear(rgb[i + 2]))
        .l();
  }

  /** Mean and mean square of lightness about a place, within the picture. */
  private static double[] about(DeckImage deck, int x, int y, int reach) {
    double[] sums = new double[2];
    int n = 0;
    for (int v = Math.max(0, y - reach); v <= Math.min(HEIGHT - 1, y + reach); v++) {
      for (int u = Math.max(0, x - reach); u <= Math.min(WIDTH - 1, x + reach); u++) {
        double light = light(deck, u, v);
        sums[0] += light;
        sums[1] += light * light;
        n++;
      }
    }
    return new double[] {sums[0] / n, sums[1] / n};
  }

  private static int at(int x, int y) {
    return y * WIDTH + x;
  }

  @Test
  void detailAndSpreadAreThoseOfTheWholePictureInEveryBand() {
    DeckImage deck = noise();
    int[][] places = {{3, 2}, {20, 95}, {20, 96}, {39, 129}};
    int[] pixels = new int[places.length];
    for (int n = 0; n < places.length; n++) {
      pixels[n] = at(places[n][0], places[n][1]);
    }
    float[][] terms = GroundTerms.of(deck, pixels);
    for (int n = 0; n < places.length; n++) {
      int x = places[n][0];
      int y = places[n][1];
      assertEquals(TaughtGround.TERMS, terms[n].length);
      // Six terms of evidence and the lightness come first.
      assertEquals(light(deck, x, y) - about(deck, x, y, 1)[0], terms[n][7], 1e-3);
      assertEquals(about(deck, x, y, 8)[0] - about(deck, x, y, 16)[0], terms[n][11], 1e-3);
      assertEquals(about(deck, x, y, 16)[0], terms[n][12], 1e-3);
      // Greenness takes six, mean contrast three places more.
      double[] near = about(deck, x, y, 2);
      assertEquals(Math.sqrt(near[1] - near[0] * near[0]), terms[n][22], 1e-2);
      assertEquals(0, terms[n][36], "the colour's odds are the teacher's");
    }
  }

  @Test
  void pixelsAreAnsweredInTheirOrder() {
    DeckImage deck = noise();
    float[][] one = GroundTerms.of(deck, new int[] {at(5, 5), at(30, 120)});
    float[][] other = GroundTerms.of(deck, new int[] {at(30, 120), at(5, 5)});
    assertArrayEquals(one[0], other[1]);
    assertArrayEquals(one[1], other[0]);
    assertEquals(0, GroundTerms.of(deck, new int[0]).length);
  }
}
