// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.core.pixels.PointPx;

class FindTargetTest {

  private static TargetSighting look(CalibrationTarget target, TestCamera camera, double blurPx) {
    return FindTarget.in(target, "a.jpg", camera.photo(TestCamera.paint(target), blurPx));
  }

  /** A camera turned so that the target has one way to lie: bias along x or y cannot cancel. */
  private static TestCamera camera() {
    return TestCamera.views().get(1);
  }

  @ParameterizedTest
  @CsvSource({
    "chessboard:10x7:25, 54, 0.02, 0.10",
    "squares:5x4:25:45, 80, 0.05, 0.60",
    "circles:8x6:18:30, 192, 0.10, 0.45",
    "staggered-circles:14x9:20:30, 63, 0.20, 0.30"
  })
  void pointsLieWhereTheyWerePainted(String text, int points, double biasPx, double missPx) {
    CalibrationTarget target = CalibrationTarget.parse(text).orElseThrow();
    TestCamera camera = camera();
    TargetSighting seen = look(target, camera, 0.7);

    assertEquals(points, seen.points().size());
    double dx = 0;
    double dy = 0;
    double miss = 0;
    for (TargetPoint p : seen.points()) {
      PointPx nearest = nearest(camera, p, target);
      dx += (p.seen().xPx() - nearest.xPx()) / points;
      dy += (p.seen().yPx() - nearest.yPx()) / points;
      miss += p.seen().distancePx(nearest) / points;
    }
    // Measured on these pictures (0.07, 0.51, 0.37, 0.2 px: the outlines of squares and circles are
    // taken in coded light and so lie inside or outside alike), rounded up; half a pixel of bias,
    // the library's other convention,
    // would be ten times as much.
    assertEquals(0, dx, biasPx, "bias along x");
    assertEquals(0, dy, biasPx, "bias along y");
    assertTrue(miss < missPx, "mean miss " + miss);
  }

  /** A target looks the same after half a turn; the nearer of both readings is meant. */
  private static PointPx nearest(TestCamera camera, TargetPoint p, CalibrationTarget target) {
    PointPx best = camera.project(p.xMm(), p.yMm());
    for (int i = 1; i < 4; i++) {
      double x = (i & 1) == 1 ? -p.xMm() : p.xMm();
      double y = (i & 2) == 2 ? -p.yMm() : p.yMm();
      PointPx other = camera.project(x, y);
      best = other.distancePx(p.seen()) < best.distancePx(p.seen()) ? other : best;
    }
    assertTrue(best.distancePx(p.seen()) < 5, target + ": point " + p + " lies nowhere near");
    return best;
  }

  @ParameterizedTest
  @CsvSource({"chessboard:10x7:25", "squares:5x4:25:45", "circles:8x6:18:30"})
  void blurIsMeasuredToATenth(String text) {
    CalibrationTarget target = CalibrationTarget.parse(text).orElseThrow();
    for (double blurPx : new double[] {1, 2.5}) {
      TargetSighting seen = look(target, TestCamera.views().get(0), blurPx);
      // The pixel itself is a box of 1 px, its standard deviation 1 / sqrt(12): both add up.
      assertEquals(Math.hypot(blurPx, 1 / Math.sqrt(12)), seen.blurPx().orElseThrow(), 0.15);
    }
  }

  @Test
  void targetCutOffByThePictureIsNotFound() {
    CalibrationTarget target = CalibrationTarget.parse("chessboard:10x7:25").orElseThrow();
    TestCamera cut = new TestCamera(new double[3], new double[] {300, 0, 700});
    TargetSighting seen = look(target, cut, 0.7);
    assertFalse(seen.found());
    assertTrue(seen.blurPx().isEmpty());
  }

  @Test
  void anotherBoardIsNotTakenForTheTarget() {
    CalibrationTarget painted = CalibrationTarget.parse("chessboard:9x6:25").orElseThrow();
    CalibrationTarget wanted = CalibrationTarget.parse("chessboard:10x7:25").orElseThrow();
    assertFalse(
        FindTarget.in(wanted, "a.jpg", camera().photo(TestCamera.paint(painted), 0.7)).found());
  }
}
