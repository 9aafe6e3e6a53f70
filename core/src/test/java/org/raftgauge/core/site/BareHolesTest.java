// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.canopy.KnownCanopy;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DrawnDeck;

/** One site on 200 x 200 px of 1 mm; its hole of 50 mm about (99.5, 99.5). */
class BareHolesTest {
  /** CIELAB of this sRGB: L* 27, a* -13, b* 11 (from the definition, D65, in Python). */
  private static final int[] MOSS = {50, 70, 48};

  /** L* 54, a* -43, b* 46: leaf. */
  private static final int[] LEAF = {70, 145, 40};

  @Test
  void aSpeckThatNoSeedlingIsLeavesTheSiteEmpty() {
    // 2 % of the hole is 0.39 cm2: a disc of 3 mm has 0.28, one of 4 mm 0.50.
    SiteMeasure speck = measure(LEAF, disc(99.5, 99.5, 3));
    assertEquals(0, speck.projectedAreaCm2().orElseThrow());
    assertEquals(0, speck.visibleAreaCm2().orElseThrow());
    assertEquals(List.of(), speck.shape());
    assertEquals(List.of(), speck.colour());
    // Half of 0.39: what may still stand there.
    assertEquals(0.5 * 0.02 * Math.PI * 6.25, speck.projectedAreaSeCm2().orElseThrow(), 1e-9);
    assertEquals(0.503, area(measure(LEAF, disc(99.5, 99.5, 4))), 0.02);
  }

  @Test
  void aTipOfALeafAwayFromTheHoleIsNoPlantOfIt() {
    // 1.35 radii of the hole end at 34 mm; the tip begins at 60 mm and has 3 of the hole's 20 cm2.
    assertEquals(0, area(measure(LEAF, disc(169.5, 99.5, 10))));
    // A plant as large as its hole may have slid off it: 21 cm2 from 39 mm on.
    assertEquals(1, area(measure(LEAF, disc(164.5, 99.5, 26))) / (Math.PI * 6.76), 0.02);
    // A small one that reaches within 34 mm may have fallen over: it begins at 28 mm.
    assertEquals(1, area(measure(LEAF, disc(137.5, 99.5, 10))) / Math.PI, 0.05);
  }

  @Test
  void theRimOfAHoleIsNoPlant() {
    assertEquals(0, area(measure(LEAF, ring(21, 26))));
    // Half of it is one leaf or two.
    byte[] half = ring(21, 26);
    for (int i = 0; i < half.length; i++) {
      half[i] = i % 200 < 100 ? half[i] : 0;
    }
    assertTrue(area(measure(LEAF, half)) > 3);
  }

  @Test
  void aRimAboutAPlantStaysWithIt() {
    byte[] both = ring(21, 26);
    byte[] plant = disc(99.5, 99.5, 12);
    for (int i = 0; i < both.length; i++) {
      both[i] |= plant[i];
    }
    double ring = Math.PI * (26 * 26 - 21 * 21) / 100;
    assertEquals(1, area(measure(LEAF, both)) / (ring + Math.PI * 1.44), 0.02);
  }

  @Test
  void aDullDiscAsRoundAsItsHoleIsAPlug() {
    assertEquals(0, area(measure(MOSS, disc(100, 99, 21))));
  }

  @Test
  void aFewBrightLeavesOnAPlugAreAPlant() {
    byte[] rgb = new byte[3 * 200 * 200];
    for (int i = 0; i < rgb.length; i++) {
      int x = Math.floorDiv(i, 3) % 200;
      // A leaf 6 px wide through the plug's middle: 18 % of a disc of 42 px.
      rgb[i] = (byte) (Math.abs(x - 99.5) < 3 ? LEAF[i % 3] : MOSS[i % 3]);
    }
    DeckImage deck = DrawnDeck.painted(200, 200, 1, rgb);
    SiteCanopy sites =
        MeasureSites.of(ground(deck), KnownCanopy.of(200, 200, disc(99.5, 99.5, 21)));
    assertEquals(1, area(sites.sites().get(0)) / (Math.PI * 4.41), 0.02);
  }

  @Test
  void whatIsGreenOrNotRoundOrPastTheRimIsAPlant() {
    assertEquals(1, area(measure(LEAF, disc(99.5, 99.5, 21))) / (Math.PI * 4.41), 0.02);
    assertEquals(1, area(measure(MOSS, disc(99.5, 99.5, 36))) / (Math.PI * 12.96), 0.02);
    assertEquals(1, area(measure(MOSS, disc(107.5, 99.5, 18))) / (Math.PI * 3.24), 0.02);
    byte[] leaves = KnownCanopy.discs(200, 200, leaf(-12), leaf(12));
    assertTrue(area(measure(MOSS, leaves)) > 7);
  }

  @Test
  void whatIsTakenFromASiteCountsAsLeftOver() {
    SiteCanopy sites =
        MeasureSites.of(ground(MOSS), KnownCanopy.of(200, 200, disc(99.5, 99.5, 21)));
    assertEquals(1, sites.leftoverCm2() / (Math.PI * 4.41), 0.02);
  }

  private static double[] leaf(double asideMm) {
    return new double[] {99.5 + asideMm, 99.5, 12};
  }

  private static byte[] disc(double x, double y, double radius) {
    return KnownCanopy.discs(200, 200, new double[] {x, y, radius});
  }

  private static byte[] ring(double inner, double outer) {
    byte[] coverage = new byte[200 * 200];
    for (int i = 0; i < coverage.length; i++) {
      double d = Math.hypot(i % 200 - 99.5, Math.floorDiv(i, 200) - 99.5);
      coverage[i] = d >= inner && d < outer ? (byte) 255 : 0;
    }
    return coverage;
  }

  private static double area(SiteMeasure site) {
    return site.projectedAreaCm2().orElseThrow();
  }

  private static SiteMeasure measure(int[] rgb, byte[] coverage) {
    return MeasureSites.of(ground(rgb), KnownCanopy.of(200, 200, coverage)).sites().get(0);
  }

  private static Ground ground(int[] rgb) {
    byte[] all = new byte[3 * 200 * 200];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) rgb[i % 3];
    }
    return ground(DrawnDeck.painted(200, 200, 1, all));
  }

  private static Ground ground(DeckImage deck) {
    Ground blank = Grounds.row(200, 200, 200, 1);
    return new Ground(
        deck,
        blank.layout(),
        blank.pose(),
        blank.poseErrorMm(),
        blank.heights(),
        blank.closedOutline());
  }
}
