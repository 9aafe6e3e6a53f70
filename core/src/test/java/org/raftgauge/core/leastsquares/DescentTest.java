// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Ways down whose ends are known: straight lines, and Rosenbrock's bent valley. */
class DescentTest {
  private static final MeanFunction LINE =
      (x, b, gradient) -> {
        gradient[0] = 1;
        gradient[1] = x;
        return b[0] + b[1] * x;
      };

  /** Rosenbrock 1960, The Computer Journal 3:175-184: 10 (y - x^2) and 1 - x, least at (1, 1). */
  private static final MeanFunction VALLEY =
      (x, b, gradient) -> {
        gradient[0] = x == 0 ? -20 * b[0] : -1;
        gradient[1] = x == 0 ? 10 : 0;
        return x == 0 ? 10 * (b[1] - b[0] * b[0]) : 1 - b[0];
      };

  /** Depends on its first parameter alone. */
  private static final MeanFunction BLIND =
      (x, b, gradient) -> {
        gradient[0] = 1;
        gradient[1] = 0;
        return b[0];
      };

  private static Residuals line() {
    // Least squares by hand: means 1.5 and 4; slope (1.5*3 + 0.5*1 + 0.5*1 + 1.5*3) / 5 = 2.
    return new Residuals(LINE, Points.of(new double[] {0, 1, 2, 3}, new double[] {1, 3, 5, 7}), 1);
  }

  private static Residuals bentLine() {
    // Slope (-1.5*-3 + -0.5*-2 + 0.5*1 + 1.5*4) / 5 = 2.4, level 5 - 1.5 * 2.4 = 1.4;
    // left over 0.6, -0.8, -0.2, 0.4: squares 1.2.
    return new Residuals(LINE, Points.of(new double[] {0, 1, 2, 3}, new double[] {2, 3, 6, 9}), 1);
  }

  private static Residuals valley() {
    return new Residuals(VALLEY, Points.of(new double[] {0, 1}, new double[2]), 1);
  }

  @Test
  void marquardtComesToTheEndOfALineAndOfTheValley() {
    Residuals line = bentLine();
    assertTrue(Marquardt.down(new double[] {50, -20}, line));
    assertEquals(1.2, line.bestCost(), 1e-7);
    assertArrayEquals(new double[] {1.4, 2.4}, line.best(), 1e-3);
    Residuals exact = line();
    assertTrue(Marquardt.down(new double[] {50, -20}, exact));
    assertArrayEquals(new double[] {1, 2}, exact.best(), 1e-6);
    Residuals valley = valley();
    assertTrue(Marquardt.down(new double[] {-1.2, 1}, valley));
    assertArrayEquals(new double[] {1, 1}, valley.best(), 1e-6);
  }

  @Test
  void marquardtSaysWhereItLosesItsWay() {
    Residuals blind = new Residuals(BLIND, Points.of(new double[] {0, 1}, new double[] {1, 3}), 1);
    assertFalse(Marquardt.down(new double[] {0, 0}, blind));
    MeanFunction never =
        (x, b, gradient) -> {
          gradient[0] = 1;
          return b[0] == 7 ? 1 : Double.NaN;
        };
    Residuals cliff = new Residuals(never, Points.of(new double[] {0}, new double[] {0}), 1);
    assertFalse(Marquardt.down(new double[] {7}, cliff));
    assertArrayEquals(new double[] {7}, cliff.best(), 0);
  }

  @Test
  void allWaysEndAtTheSameBottomToTheLastDigits() {
    double[] far = {50, -20};
    assertArrayEquals(new double[] {1.4, 2.4}, Descent.from(far, bentLine()), 1e-12);
    assertArrayEquals(new double[] {1.4, 2.4}, Descent.near(far, bentLine()), 1e-12);
    assertArrayEquals(new double[] {1.4, 2.4}, Descent.towards(far, bentLine()), 1e-12);
    assertArrayEquals(new double[] {50, -20}, far, 0, "the start stays");
    assertArrayEquals(new double[] {1, 1}, Descent.from(new double[] {-1.2, 1}, valley()), 1e-12);
    assertArrayEquals(new double[] {1, 1}, Descent.near(new double[] {-1.2, 1}, valley()), 1e-12);
  }

  @Test
  void aFewStepsGoDownAndNoFurther() {
    double[] start = {-1.2, 1};
    Residuals before = valley();
    double cost = before.evaluate(start);
    Residuals after = valley();
    double[] there = Descent.towards(start, after);
    assertTrue(after.evaluate(there) < cost);
    // The first full step lands at (1, -3.84), as high as 23.4 squared: it is halved.
    assertTrue(Math.abs(there[0] - 1) > 1e-6, "two steps are not enough: " + there[0]);
    Residuals blind = new Residuals(BLIND, Points.of(new double[] {0, 1}, new double[] {1, 3}), 1);
    assertArrayEquals(new double[] {5, 6}, Descent.towards(new double[] {5, 6}, blind), 0);
    assertEquals(2, Descent.near(new double[] {5, 6}, blind)[0], 1e-6);
  }

  @Test
  void theStepOfAFitIsTheOneToItsEndWhereTheCurveIsStraight() {
    Points points = Points.of(new double[] {0, 1, 2, 3}, new double[] {2, 3, 6, 9});
    double[] step = NonlinearFit.step(LINE, points, 1, new double[] {1, 2});
    assertArrayEquals(new double[] {0.4, 0.4}, step, 1e-12);
    assertEquals(0, NonlinearFit.step(BLIND, points, 1, new double[2]).length);
    assertArrayEquals(
        new double[] {1.4, 2.4}, NonlinearFit.towards(LINE, points, 1, new double[] {1, 2}), 1e-12);
    Solved near =
        assertInstanceOf(Solved.class, NonlinearFit.near(LINE, points, new double[] {1, 2}));
    assertEquals(Math.sqrt(1.2 / 2), near.sigma(), 1e-12);
  }

  @Test
  void aCurveWithoutABottomIsUnsolved() {
    // exp(-b x) falls for ever where the points are 0: b has no best value.
    MeanFunction fall =
        (x, b, gradient) -> {
          gradient[0] = -x * Math.exp(-b[0] * x);
          return Math.exp(-b[0] * x);
        };
    Points zero = Points.of(new double[] {1, 2, 3}, new double[3]);
    FitOutcome fit = NonlinearFit.of(fall, zero, new double[] {1});
    Unsolved not = assertInstanceOf(Unsolved.class, fit);
    assertTrue(not.reason().startsWith("the "), not.reason());
  }
}
