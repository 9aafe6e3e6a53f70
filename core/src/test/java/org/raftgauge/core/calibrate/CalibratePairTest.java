// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;

/** Pairs whose truth is known: points of a target put through two cameras by plain formulas. */
class CalibratePairTest {
  private static final Lens FIRST = new Lens(1400, 1400, 640, 480, -0.1, 0.02, 0, 0, 0);
  private static final Lens SECOND = new Lens(1380, 1385, 650, 470, -0.11, 0.03, 0, 0, 0);

  /** The second camera: turned by 2 degrees about y, then shifted. */
  private static final double TURN = Math.toRadians(2);

  private static final double[] SHIFT = {-100, 2, 3};

  private final Random random = new Random(5);

  private static double[] turned(double[] p, double about, boolean x) {
    double c = Math.cos(about);
    double s = Math.sin(about);
    return x
        ? new double[] {p[0], c * p[1] - s * p[2], s * p[1] + c * p[2]}
        : new double[] {c * p[0] + s * p[2], p[1], -s * p[0] + c * p[2]};
  }

  private static double[] inSecond(double[] p) {
    double[] q = turned(p, TURN, false);
    return new double[] {q[0] + SHIFT[0], q[1] + SHIFT[1], q[2] + SHIFT[2]};
  }

  private static PointPx seen(Lens l, double[] p) {
    double x = p[0] / p[2];
    double y = p[1] / p[2];
    double r2 = x * x + y * y;
    double radial = 1 + l.k1() * r2 + l.k2() * r2 * r2;
    return new PointPx(l.fxPx() * x * radial + l.cxPx(), l.fyPx() * y * radial + l.cyPx());
  }

  private PointPx noisy(PointPx p, double noisePx) {
    return new PointPx(
        p.xPx() + noisePx * random.nextGaussian(), p.yPx() + noisePx * random.nextGaussian());
  }

  /** A board of 9 x 6 points 25 mm apart, tilted about x and y, seen by both. */
  private CalibratePair.Moment moment(double tiltX, double tiltY, double noisePx) {
    List<TargetPoint> a = new ArrayList<>();
    List<TargetPoint> b = new ArrayList<>();
    for (int i = 0; i < 54; i++) {
      double u = 25 * (i % 9);
      double v = 25 * Math.floorDiv(i, 9);
      double[] p = turned(turned(new double[] {u - 100, v - 62, 0}, tiltX, true), tiltY, false);
      double[] q = {p[0] + 40, p[1], p[2] + 620};
      a.add(new TargetPoint(i, u, v, noisy(seen(FIRST, q), noisePx)));
      b.add(new TargetPoint(i, u, v, noisy(seen(SECOND, inSecond(q)), noisePx)));
    }
    String name = tiltX + " " + tiltY;
    return new CalibratePair.Moment(sighting(name, a), sighting(name, b));
  }

  private static TargetSighting sighting(String name, List<TargetPoint> points) {
    return new TargetSighting(name, 1280, 960, points, OptionalDouble.empty());
  }

  private List<CalibratePair.Moment> moments(double noisePx) {
    double[][] tilts = {{0, 0}, {0.5, 0}, {-0.5, 0.1}, {0, 0.5}, {0.1, -0.5}, {0.4, 0.4}};
    List<CalibratePair.Moment> moments = new ArrayList<>();
    for (double[] tilt : tilts) {
      moments.add(moment(tilt[0], tilt[1], noisePx));
    }
    return moments;
  }

  @Test
  void exactPointsGiveTheExactPair() {
    PairFit fit = CalibratePair.fit(FIRST, SECOND, moments(0)).orElseThrow();
    assertEquals(-100, fit.shiftMm().get(0), 1e-4);
    assertEquals(2, fit.shiftMm().get(1), 1e-4);
    assertEquals(3, fit.shiftMm().get(2), 1e-4);
    assertEquals(0, fit.turnDeg().get(0), 1e-5);
    assertEquals(2, fit.turnDeg().get(1), 1e-5);
    assertEquals(0, fit.turnDeg().get(2), 1e-5);
    assertEquals(0, fit.rowErrorPx(), 1e-4);
  }

  @Test
  void theErrorSaidIsThatOfTheBaseline() {
    double squares = 0;
    double said = 0;
    int n = 12;
    for (int i = 0; i < n; i++) {
      PairFit fit = CalibratePair.fit(FIRST, SECOND, moments(0.2)).orElseThrow();
      double off = fit.baselineMm() - Math.sqrt(100 * 100 + 4 + 9);
      squares += off * off / n;
      said += fit.shiftErrorMm() / n;
      // 0.2 px in each coordinate: a distance of 0.2 sqrt(2), root mean square.
      assertEquals(0.2 * Math.sqrt(2), fit.rmsErrorPx(), 0.02);
    }
    // Twelve draws tell a standard deviation to 21 %; twice that.
    assertEquals(1, Math.sqrt(squares) / said, 0.45);
  }

  @Test
  void aMomentReadTheOtherWayRoundIsLeftOut() {
    List<CalibratePair.Moment> moments = new ArrayList<>(moments(0.1));
    CalibratePair.Moment good = moments.get(2);
    List<TargetPoint> turned = new ArrayList<>();
    List<TargetPoint> points = good.second().points();
    for (int i = 0; i < points.size(); i++) {
      TargetPoint p = points.get(i);
      turned.add(
          new TargetPoint(p.number(), p.xMm(), p.yMm(), points.get(points.size() - 1 - i).seen()));
    }
    moments.set(2, new CalibratePair.Moment(good.first(), sighting("turned", turned)));

    PairFit fit = CalibratePair.fit(FIRST, SECOND, moments).orElseThrow();

    assertEquals(5, fit.photos().size());
    assertTrue(Math.abs(fit.baselineMm() - 100.06) < 0.2, "" + fit.baselineMm());
  }

  @Test
  void lensesThatAreALittleOffAreMendedTogetherWithThePair() {
    Lens roughFirst = new Lens(1410, 1405, 644, 476, -0.095, 0.01, 0, 0, 0);
    Lens roughSecond = new Lens(1372, 1380, 645, 474, -0.1, 0.02, 0, 0, 0);
    List<CalibratePair.Moment> moments = moments(0);
    PairFit fit = together(roughFirst, roughSecond, moments);
    assertEquals(-100, fit.shiftMm().get(0), 1e-3);
    assertEquals(2, fit.turnDeg().get(1), 1e-4);
    assertEquals(FIRST.fxPx(), fit.first().fxPx(), 1e-2);
    assertEquals(SECOND.cyPx(), fit.second().cyPx(), 1e-2);
    assertEquals(0, fit.rowErrorPx(), 1e-3);
  }

  private static PairFit together(Lens first, Lens second, List<CalibratePair.Moment> moments) {
    return CalibrateTogether.fit(
            new CalibrateTogether.Camera(
                first, moments.stream().map(CalibratePair.Moment::first).toList()),
            new CalibrateTogether.Camera(
                second, moments.stream().map(CalibratePair.Moment::second).toList()),
            moments,
            EnumSet.of(LensTerm.FY, LensTerm.K1, LensTerm.K2))
        .orElseThrow();
  }

  @Test
  void theErrorSaidHasThatOfTheLensesInIt() {
    double squares = 0;
    double said = 0;
    int n = 12;
    for (int i = 0; i < n; i++) {
      PairFit fit = together(FIRST, SECOND, moments(0.2));
      double off = fit.baselineMm() - Math.sqrt(100 * 100 + 4 + 9);
      squares += off * off / n;
      said += fit.shiftErrorMm() / n;
    }
    // Twelve draws tell a standard deviation to 21 %; twice that.
    assertEquals(1, Math.sqrt(squares) / said, 0.45);
    double held = CalibratePair.fit(FIRST, SECOND, moments(0.2)).orElseThrow().shiftErrorMm();
    assertTrue(said > 1.2 * held, said + " against " + held + " with exact lenses");
  }

  @Test
  void photosOfOneCameraAloneHelpItsLens() {
    List<CalibratePair.Moment> moments = moments(0.2);
    List<TargetSighting> left = moments.stream().map(CalibratePair.Moment::first).toList();
    List<TargetSighting> right = moments.stream().map(CalibratePair.Moment::second).toList();
    Set<LensTerm> terms = EnumSet.of(LensTerm.FY, LensTerm.K1, LensTerm.K2);
    double all = together(FIRST, SECOND, moments).shiftErrorMm();
    double some =
        CalibrateTogether.fit(
                new CalibrateTogether.Camera(FIRST, left.subList(0, 3)),
                new CalibrateTogether.Camera(SECOND, right),
                moments.subList(0, 3),
                terms)
            .orElseThrow()
            .shiftErrorMm();
    assertTrue(some > all, some + " mm from three moments, " + all + " from six");
  }

  @Test
  void twoMomentsAreTooFew() {
    assertEquals(Optional.empty(), CalibratePair.fit(FIRST, SECOND, moments(0).subList(0, 2)));
  }
}
