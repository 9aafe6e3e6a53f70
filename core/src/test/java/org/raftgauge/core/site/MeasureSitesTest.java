// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.raftgauge.core.site.DrawnSites.area;
import static org.raftgauge.core.site.DrawnSites.blocks;
import static org.raftgauge.core.site.DrawnSites.disc;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.KnownCanopy;
import org.raftgauge.core.relief.HeightMap;
import org.raftgauge.core.relief.HeightSource;

class MeasureSitesTest {
  private static final HeightModel TALL = new HeightModel(5.2, 0.5, 0.5);

  @Test
  void aDiscIsMeasuredInEveryTrait() {
    // 2 mm a pixel, radius 30 px = 60 mm, 3 px right of the foot at 99.5 and 4 px above it.
    SiteMeasure site = disc(new double[] {102.5, 95.5, 30}, Grounds.row(200, 200, 200, 2));
    double area = Math.PI * 36;
    assertEquals(1, site.projectedAreaCm2().orElseThrow() / area, 0.003);
    SiteMeasure.Shape shape = site.shape().get(0);
    assertEquals(120, shape.equivalentDiameterMm(), 0.3);
    assertEquals(120, shape.largestDiameterMm(), 3);
    assertEquals(1, shape.perimeterMm() / (Math.PI * 120), 0.02);
    assertTrue(shape.solidity() > 0.96, "" + shape.solidity());
    // The foot lies at 100 px from the picture's edge, pixel centre 99.5.
    assertEquals(6, shape.offsetXMm(), 0.05);
    assertEquals(-8, shape.offsetYMm(), 0.05);
    assertEquals(0, site.sharedOutlineFraction(), 1e-12);
    assertFalse(site.closed());
    assertEquals(1, site.parallaxFactor(), 1e-12);
    assertEquals("", site.held());
  }

  @Test
  void aTallPlantIsShrunkByItsOwnHeight() {
    Ground ground = Grounds.row(200, 200, new double[] {200, 2}, TALL, 0);
    SiteMeasure site = disc(new double[] {99.5, 99.5, 50}, ground);
    // sqrt(A) = sqrt(S) / (1 + c sqrt(S) / H), see ParallaxTest; S = pi * 10^2 cm2.
    double root = Math.sqrt(Math.PI * 100) / (1 + 5.2 * Math.sqrt(Math.PI * 100) / 1600);
    assertEquals(1, site.projectedAreaCm2().orElseThrow() / (root * root), 0.003);
    assertEquals(5.2 * root, site.heightMm(), 0.2);
    double shrink = Math.sqrt(site.parallaxFactor());
    assertEquals(200 * shrink, site.shape().get(0).equivalentDiameterMm(), 0.5);
    assertEquals(200 * shrink, site.shape().get(0).largestDiameterMm(), 3);
  }

  @Test
  void aHeightThatWasSeenStandsInForTheModelAndGivesVolume() {
    Ground flat = Grounds.row(200, 200, new double[] {200, 2}, TALL, 0);
    float[] mm = new float[200 * 200];
    for (int i = 0; i < mm.length; i++) {
      // Left half of the plant 80 mm high, right half 160; a strip of 10 px was not seen.
      int x = i % 200;
      mm[i] = x < 95 ? 80 : x < 105 ? Float.NaN : 160;
    }
    SiteMeasure site = disc(new double[] {99.5, 99.5, 50}, seen(flat, mm));
    // Each half counts by (1 - h / H)^2, H = 1600: 0.9025 and 0.81.
    double factor = (0.9025 + 0.81) / 2;
    assertEquals(factor, site.parallaxFactor(), 1e-3);
    assertEquals(Math.PI * 100 * factor, site.projectedAreaCm2().orElseThrow(), 1);
    double mean = (0.9025 * 80 + 0.81 * 160) / (0.9025 + 0.81);
    assertEquals(mean, site.heightMm(), 0.2);
    SiteMeasure.Relief relief = site.relief().get(0);
    assertEquals(160, relief.p95Mm(), 1e-3);
    assertEquals(
        site.projectedAreaCm2().orElseThrow() * site.heightMm() / 10, relief.volumeCm3(), 1e-9);
    // The strip is 10 px wide over the middle of a disc of radius 50: 10 * 100 of pi * 2500 px.
    assertEquals(1 - 1000 / (Math.PI * 2500), relief.seenFraction(), 0.01);
    // The pair's error is 1 mm, the model's 13 %: the area is known better.
    assertTrue(
        site.projectedAreaSeCm2().orElseThrow()
            < disc(new double[] {99.5, 99.5, 50}, flat).projectedAreaSeCm2().orElseThrow());
  }

  @Test
  void aPlantOfWhichTooLittleWasSeenHasTheHeightOfItsModel() {
    Ground flat = Grounds.row(200, 200, new double[] {200, 2}, TALL, 0);
    float[] mm = new float[200 * 200];
    for (int i = 0; i < mm.length; i++) {
      mm[i] = i % 200 < 90 ? 80 : Float.NaN;
    }
    SiteMeasure seen = disc(new double[] {99.5, 99.5, 50}, seen(flat, mm));
    assertEquals(disc(new double[] {99.5, 99.5, 50}, flat), seen);
  }

  private static Ground seen(Ground ground, float[] mm) {
    return new Ground(
        ground.deck(),
        ground.layout(),
        ground.pose(),
        ground.poseErrorMm(),
        0,
        ground.heights(),
        ground.closedOutline(),
        Optional.of(HeightMap.of(200, mm, HeightSource.STEREO, 1)));
  }

  @Test
  void aTallPlantFarFromTheCamerasFootIsPutBackOverItsHole() {
    // Two sites 400 mm apart, the camera between them: a plant of h = 92 mm over the left hole is
    // seen 200 * h / (H - h) mm further left.
    Ground ground = Grounds.row(400, 200, new double[] {200, 2}, TALL, 0);
    double area = Math.PI * 100;
    double height = 5.2 * Math.sqrt(area) / (1 + 5.2 * Math.sqrt(area) / 1600);
    double outPx = 200 * height / (1600 - height) / 2;
    byte[] coverage = KnownCanopy.discs(400, 200, new double[] {99.5 - outPx, 99.5, 50});
    SiteCanopy sites = MeasureSites.of(ground, KnownCanopy.of(400, 200, coverage));
    SiteMeasure.Shape shape = sites.sites().get(0).shape().get(0);
    assertEquals(0, shape.offsetXMm(), 0.2);
    assertEquals(0, shape.offsetYMm(), 0.2);
    assertEquals(200 - 2 * outPx, sites.plantCentres().get(0).xMm(), 0.3);
  }

  @Test
  void halfTheMillimetresAPixelGiveTheSameTraits() {
    Ground coarse = Grounds.row(200, 200, 200, 2);
    Ground fine = Grounds.row(400, 400, 400, 1);
    SiteMeasure a = disc(new double[] {99.5, 99.5, 40}, coarse);
    SiteMeasure b = disc(new double[] {199.5, 199.5, 80}, fine);
    assertEquals(1, area(a) / area(b), 0.002);
    assertEquals(1, a.shape().get(0).perimeterMm() / b.shape().get(0).perimeterMm(), 0.02);
  }

  @Test
  void anEmptySiteHasNoAreaNoShapeAndIsNotHeld() {
    Canopy bare = KnownCanopy.of(60, 30, new byte[1800]);
    SiteCanopy sites = MeasureSites.of(Grounds.row(60, 30, 30, 10), bare);
    assertEquals(2, sites.sites().size());
    for (SiteMeasure site : sites.sites()) {
      assertEquals(OptionalDouble.of(0), site.projectedAreaCm2());
      assertEquals(List.of(), site.shape());
      assertEquals("", site.held());
      assertFalse(site.closed());
    }
    assertEquals(0, sites.canopyCover());
    assertEquals(0, sites.leftoverCm2());
  }

  @Test
  void coverIsTheShareOfTheBoardThatIsLeaf() {
    byte[] half = new byte[60 * 30];
    for (int i = 0; i < half.length; i++) {
      half[i] = i % 60 < 30 ? (byte) 255 : 0;
    }
    Ground ground = Grounds.row(60, 30, 30, 10);
    assertEquals(0.5, MeasureSites.of(ground, KnownCanopy.of(60, 30, half)).canopyCover(), 1e-9);
    java.util.Arrays.fill(half, (byte) 255);
    SiteCanopy full = MeasureSites.of(ground, KnownCanopy.of(60, 30, half));
    assertEquals(1, full.canopyCover(), 1e-9);
    // 600 x 300 mm, each pixel a site's or left over.
    double owned = full.sites().stream().mapToDouble(DrawnSites::area).sum();
    assertEquals(1800, owned + full.leftoverCm2(), 1e-6);
  }

  @Test
  void theSharedPartOfTheOutlineIsCountedAndClosesASite() {
    // Two squares of 41 px that touch along one side each: a quarter of either outline.
    List<SiteMeasure> quarter = blocks(41, 41);
    assertEquals(0.25, quarter.get(0).sharedOutlineFraction(), 1e-9);
    assertEquals(0.25, quarter.get(1).sharedOutlineFraction(), 1e-9);
    assertFalse(quarter.get(0).closed());
    // 41 wide and 121 high: 121 of 324 sides shared, 0.373, past the limit of 0.35.
    List<SiteMeasure> tall = blocks(41, 121);
    assertEquals(121 / 324.0, tall.get(0).sharedOutlineFraction(), 1e-9);
    assertTrue(tall.get(0).closed());
    assertEquals(0, blocks(45, 41).get(0).sharedOutlineFraction(), 1e-9);
  }

  @Test
  void sidesAlongThePicturesRimBelongToTheOutline() {
    // Two pixels side by side fill the picture: one of four sides of each is shared.
    Borders borders = Borders.of(2, 1, new short[] {0, 1}, 2);
    assertEquals(0.25, borders.sharedFraction(0), 1e-12);
    assertEquals(0.25, borders.sharedFraction(1), 1e-12);
  }

  @Test
  void aGroundWithoutAModelForEachSiteIsRefused() {
    Ground row = Grounds.row(60, 30, 30, 10);
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                new Ground(
                    row.deck(), row.layout(), row.pose(), 0, List.of(), row.closedOutline()));
    assertEquals("heights and closedOutline must have one entry a site, got 0", e.getMessage());
  }
}
