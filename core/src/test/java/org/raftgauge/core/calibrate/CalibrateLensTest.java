// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Lens;

class CalibrateLensTest {
  private static final CalibrationTarget BOARD =
      CalibrationTarget.parse("chessboard:10x7:25").orElseThrow();

  private static List<TargetSighting> sightings(double noisePx, long seed) {
    Random random = new Random(seed);
    List<TargetSighting> sightings = new ArrayList<>();
    for (TestCamera view : TestCamera.views()) {
      sightings.add(view.corners("v" + sightings.size(), BOARD, noisePx, random));
    }
    return sightings;
  }

  private static LensFit fit(List<TargetSighting> sightings) {
    return assertInstanceOf(LensFit.class, CalibrateLens.fit(sightings, LensTerm.usual()));
  }

  @Test
  void exactPointsGiveTheLensBack() {
    LensFit fit = fit(sightings(0, 1));

    // The points are made with this lens; 1e-4 px leaves room for the numeric derivative.
    Lens truth = TestCamera.LENS;
    assertEquals(truth.fxPx(), fit.lens().fxPx(), 1e-4);
    assertEquals(truth.fyPx(), fit.lens().fyPx(), 1e-4);
    assertEquals(truth.cxPx(), fit.lens().cxPx(), 1e-4);
    assertEquals(truth.cyPx(), fit.lens().cyPx(), 1e-4);
    assertEquals(truth.k1(), fit.lens().k1(), 1e-6);
    assertEquals(truth.k2(), fit.lens().k2(), 1e-5);
    assertEquals(truth.p1(), fit.lens().p1(), 1e-7);
    assertEquals(truth.p2(), fit.lens().p2(), 1e-7);
    assertEquals(0, fit.meanErrorPx(), 1e-6);
  }

  @Test
  void tiltAndDistanceOfAViewAreThoseItWasMadeWith() {
    LensFit fit = fit(sightings(0, 1));

    // View 1 is turned 0.5 rad about x only, its middle 700 mm off.
    assertEquals(Math.toDegrees(0.5), fit.views().get(1).tiltDeg(), 1e-4);
    assertEquals(700, fit.views().get(1).distanceMm(), 1e-3);
    // Views 0 faces the target squarely.
    assertEquals(0, fit.views().get(0).tiltDeg(), 0.01);
  }

  @Test
  void meanMissIsThatOfTheNoise() {
    LensFit fit = fit(sightings(0.3, 5));

    // The length of a 2-D normal error of 0.3 px has the mean 0.3 sqrt(pi / 2) = 0.376 (Rayleigh);
    // 756 points less 92 parameters take away 3 %; 5 % for chance.
    assertEquals(0.376, fit.meanErrorPx(), 0.05 * 0.376 + 0.012);
    // Root mean square: 0.3 sqrt(2) = 0.424.
    assertEquals(0.424, fit.rmsErrorPx(), 0.03);
  }

  @Test
  void standardErrorsAreHonest() {
    int n = 24;
    int within = 0;
    for (int seed = 0; seed < n; seed++) {
      LensFit fit = fit(sightings(0.3, 100 + seed));
      within += Math.abs(fit.lens().fxPx() - 1500) < 2 * fit.errors().fxPx() ? 1 : 0;
      within += Math.abs(fit.lens().cyPx() - 470) < 2 * fit.errors().cyPx() ? 1 : 0;
    }
    // 95.4 % of 48 = 45.8, standard deviation 1.45; 41 lies 3.3 of them below.
    assertTrue(within >= 41, within + " of 48 within two standard errors");
    // Not so wide either that they say nothing: some must lie beyond one (32 % of 48 = 15).
    int beyondOne = 0;
    for (int seed = 0; seed < n; seed++) {
      LensFit fit = fit(sightings(0.3, 100 + seed));
      beyondOne += Math.abs(fit.lens().fxPx() - 1500) > fit.errors().fxPx() ? 1 : 0;
      beyondOne += Math.abs(fit.lens().cyPx() - 470) > fit.errors().cyPx() ? 1 : 0;
    }
    assertTrue(beyondOne >= 5, beyondOne + " of 48 beyond one standard error");
  }

  @Test
  void moreNoiseGivesWiderErrorsInProportion() {
    double little = fit(sightings(0.1, 3)).errors().fxPx();
    double much = fit(sightings(0.4, 3)).errors().fxPx();
    // The same random numbers four times as large.
    assertEquals(4, much / little, 0.05);
  }

  @Test
  void whatIsNotFittedStaysZeroAndPixelsSquare() {
    LensFit fit =
        assertInstanceOf(
            LensFit.class, CalibrateLens.fit(sightings(0.1, 2), EnumSet.of(LensTerm.K1)));

    assertEquals(fit.lens().fxPx(), fit.lens().fyPx());
    assertEquals(0, fit.lens().k2());
    assertEquals(0, fit.lens().p1());
    assertEquals(0, fit.errors().k3());
    assertTrue(fit.errors().k1() > 0);
  }

  @Test
  void twoPhotosAreTooFew() {
    NoLens none =
        assertInstanceOf(
            NoLens.class, CalibrateLens.fit(sightings(0, 1).subList(0, 2), LensTerm.usual()));
    assertEquals(
        "there are 2 usable photos of the target; take at least 10, from different sides",
        none.reason());
  }

  @Test
  void photosThatAreAllAlikeGiveNoConfidentLens() {
    Random random = new Random(4);
    List<TargetSighting> alike = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      alike.add(TestCamera.views().get(0).corners("v" + i, BOARD, 0.2, random));
    }
    LensResult result = CalibrateLens.fit(alike, LensTerm.usual());
    // A target seen squarely says nothing of the focal length: none, or one with a huge error.
    assertTrue(
        result instanceof NoLens
            || (result instanceof LensFit fit && fit.errors().fxPx() > 0.02 * fit.lens().fxPx()),
        result.toString());
  }
}
