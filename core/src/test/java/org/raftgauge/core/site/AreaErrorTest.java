// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.raftgauge.core.site.DrawnSites.area;
import static org.raftgauge.core.site.DrawnSites.blocks;
import static org.raftgauge.core.site.DrawnSites.disc;
import static org.raftgauge.core.site.DrawnSites.se;

import java.util.BitSet;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.canopy.KnownCanopy;

/** Standard errors of projected areas. */
class AreaErrorTest {
  private static final HeightModel TALL = new HeightModel(5.2, 0.5, 0.5);

  @Test
  void theStandardErrorGrowsWithEachOfItsCauses() {
    double[] at = {99.5, 99.5, 40};
    double plain = se(disc(at, Grounds.row(200, 200, 200, 2)));
    double height = se(disc(at, Grounds.row(200, 200, new double[] {200, 2}, TALL, 0)));
    double pose = se(disc(at, Grounds.row(200, 200, new double[] {200, 2}, Grounds.FLAT, 3)));
    // The same 80 mm with half the pixels.
    double edge = se(disc(new double[] {49.5, 49.5, 20}, Grounds.row(100, 100, 100, 4)));
    assertTrue(height > 1.2 * plain, plain + " " + height);
    assertTrue(pose > 1.2 * plain, plain + " " + pose);
    assertTrue(edge > 1.5 * plain, plain + " " + edge);
    SiteMeasure shared = blocks(41, 41).get(0);
    SiteMeasure alone = blocks(45, 41).get(0);
    assertEquals(area(alone), area(shared), 1e-9);
    assertTrue(se(shared) > 1.2 * se(alone), se(shared) + " " + se(alone));
    assertTrue(shared.quality() < alone.quality());
  }

  @Test
  void doubtfulColourWidensTheStandardErrorByItsShareOfTheArea() {
    byte[] leaf = KnownCanopy.discs(200, 200, new double[] {99.5, 99.5, 40});
    Ground ground = Grounds.row(200, 200, 200, 2);
    SiteMeasure sure = MeasureSites.of(ground, KnownCanopy.of(200, 200, leaf)).sites().get(0);
    SiteMeasure doubted =
        MeasureSites.of(ground, KnownCanopy.doubtful(200, 200, leaf, 0.1)).sites().get(0);
    // 0.34 of the doubtful tenth, see AreaError.
    assertEquals(
        0.034 * area(sure), Math.sqrt(Math.pow(se(doubted), 2) - Math.pow(se(sure), 2)), 1e-9);
  }

  @Test
  void leafOfDoubtfulColourAndDeckThatNearlyIsLeafWidenTheirOwnSitesStandardError() {
    byte[] leaf = KnownCanopy.discs(200, 200, new double[] {99.5, 99.5, 40});
    Ground ground = Grounds.row(200, 200, 200, 2);
    BitSet inside = new BitSet();
    inside.set(99 * 200 + 80, 99 * 200 + 120);
    BitSet beside = new BitSet();
    beside.set(99 * 200 + 141, 99 * 200 + 145);
    beside.set(99 * 200 + 160, 99 * 200 + 170); // past the 6 px that are looked at
    double sure = se(weak(ground, leaf, new BitSet()));
    // 40 px of 2 mm are 1.6 cm2, 4 px are 0.16; 0.19 and 0.11 of them, see AreaError.
    assertEquals(Math.hypot(sure, 0.19 * 1.6), se(weak(ground, leaf, inside)), 1e-9);
    assertEquals(Math.hypot(sure, 0.11 * 0.16), se(weak(ground, leaf, beside)), 1e-9);
  }

  private static SiteMeasure weak(Ground ground, byte[] leaf, BitSet near) {
    return MeasureSites.of(ground, KnownCanopy.weak(200, leaf, near)).sites().get(0);
  }

  @Test
  void aTallPlantOffTheCamerasFootIsLessSureThanOneBelowIt() {
    SiteMeasure below =
        disc(new double[] {99.5, 99.5, 50}, Grounds.row(200, 200, new double[] {200, 2}, TALL, 0));
    Ground two = Grounds.row(400, 200, new double[] {200, 2}, TALL, 0);
    byte[] leaf = KnownCanopy.discs(400, 200, new double[] {93.5, 99.5, 50});
    SiteMeasure aside = MeasureSites.of(two, KnownCanopy.of(400, 200, leaf)).sites().get(0);
    assertEquals(area(below), area(aside), 0.01 * area(below));
    // 0.25 of width * h * tan(angle); 200 mm off the foot, 1600 mm below the camera.
    double view = 0.25 * 10 * Math.sqrt(area(aside)) * aside.heightMm() * 200 / 1600 / 100;
    assertEquals(view, Math.sqrt(Math.pow(se(aside), 2) - Math.pow(se(below), 2)), 0.03 * view);
  }

  @Test
  void theStandardErrorOfAClosedSiteIsTheRootOfItsTermsSquares() {
    // Flat, so that height and view cost nothing; the pose is exact; all colours are sure.
    SiteMeasure site = blocks(41, 121).get(0);
    double shared = 121 / 324.0;
    SiteMeasure.Shape shape = site.shape().get(0);
    double[] terms = {
      shape.perimeterMm() * 0.09 * 2 / 100,
      shape.perimeterMm() * shared * 2.1 / 100,
      0.13 * area(site) * shared,
      0.6 * area(site) * (shared - 0.35),
      area(site) * (1 - shape.solidity()) * Math.sqrt(shared),
      0.02
    };
    double squares = 0;
    for (double term : terms) {
      squares += term * term;
    }
    assertTrue(site.closed());
    assertEquals(Math.sqrt(squares), se(site), 1e-9);
  }
}
