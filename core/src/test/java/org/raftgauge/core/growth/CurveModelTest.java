// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Areas and growth rates of the curves, and their derivatives. */
class CurveModelTest {
  // Values: R 4.2.2, the project's reference values C (growth_model_values.csv)
  @ParameterizedTest
  @CsvSource({
    "LOGISTIC, 1, 0, 13.2984967884329, 0.194680601284627",
    "LOGISTIC, 1, 9, 70.9255324502439, 0.171629787019902",
    "LOGISTIC, 1, 18, 250, 0.1",
    "LOGISTIC, 1, 27, 429.074467549756, 0.0283702129800976",
    "LOGISTIC, 1, 36, 486.701503211567, 0.00531939871537317",
    "GOMPERTZ, 1, 0, 6.37615312258122e-14, 7.3196468887356",
    "GOMPERTZ, 1, 9, 1.17934669164661, 1.20992949288259",
    "GOMPERTZ, 1, 18, 183.939720585721, 0.2",
    "GOMPERTZ, 1, 27, 423.820158257887, 0.0330597776443173",
    "GOMPERTZ, 1, 36, 486.523096818959, 0.00546474448945851",
    "RICHARDS, 0.5, 0, 1.34244071770913, 0.379273663380449",
    "RICHARDS, 0.5, 9, 30.8657101881914, 0.300616765698528",
    "RICHARDS, 0.5, 18, 222.222222222222, 0.133333333333333",
    "RICHARDS, 0.5, 27, 426.573910130225, 0.0305359946602754",
    "RICHARDS, 0.5, 36, 486.613094265484, 0.0053910921368411"
  })
  void sigmoidsHaveTheAreasAndRatesOfR(
      CurveModel model, double shape, double dat, double area, double rgr) {
    List<Double> parameters =
        model == CurveModel.RICHARDS ? List.of(500.0, 0.2, 18.0, shape) : List.of(500.0, 0.2, 18.0);
    GrowthCurve curve = new GrowthCurve(model, parameters);
    assertEquals(1, curve.areaCm2(dat) / area, 2e-14 * 50);
    assertEquals(1, curve.rgrPerDay(dat) / rgr, 1e-12);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 10, 9.8",
    "9, 419.003544771423, 0.038661465392978",
    "18, 486.611376000827, 0.00550279942454556",
    "36, 499.634172953895, 0.000146437960374792"
  })
  void theMonomolecularCurveIsThatOfR(double dat, double area, double rgr) {
    // K 500, M0 10, r 0.2: area 0 at ln(1 - M0/K) / r
    double zero = Math.log(1 - 10.0 / 500) / 0.2;
    GrowthCurve curve = new GrowthCurve(CurveModel.MONOMOLECULAR, List.of(500.0, 0.2, zero));
    assertEquals(1, curve.areaCm2(dat) / area, 1e-12);
    assertEquals(1, curve.rgrPerDay(dat) / rgr, 1e-11);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 4.8587351573742, 0.244023761542074",
    "9, 38.68710061149, 0.207318005067381",
    "18, 170.141327798275, 0.120131670355098",
    "36, 600.247568513773, 0.0415464980271918"
  })
  void theExpolinearCurveIsThatOfR(double dat, double area, double rgr) {
    GrowthCurve curve = new GrowthCurve(CurveModel.EXPOLINEAR, List.of(25.0, 0.25, 12.0));
    assertEquals(1, curve.areaCm2(dat) / area, 1e-12);
    assertEquals(1, curve.rgrPerDay(dat) / rgr, 1e-12);
  }

  @Test
  void richardsHasTheLogisticAndGompertzAsLimits() {
    GrowthCurve logistic = new GrowthCurve(CurveModel.LOGISTIC, List.of(400.0, 0.2, 15.0));
    GrowthCurve gompertz = new GrowthCurve(CurveModel.GOMPERTZ, List.of(400.0, 0.2, 15.0));
    for (double dat = 0; dat <= 35; dat += 5) {
      GrowthCurve one = new GrowthCurve(CurveModel.RICHARDS, List.of(400.0, 0.2, 15.0, 1.0));
      GrowthCurve none = new GrowthCurve(CurveModel.RICHARDS, List.of(400.0, 0.2, 15.0, 1e-7));
      assertEquals(logistic.lnArea(dat), one.lnArea(dat), 1e-12);
      // First-order distance in the shape v: v e^(-2u) / 2 with u down to -3 is 2e-5
      assertEquals(gompertz.lnArea(dat), none.lnArea(dat), 3e-5);
    }
  }

  @ParameterizedTest
  @EnumSource(CurveModel.class)
  void gradientsAreThoseOfDifferences(CurveModel model) {
    Random random = new Random(7);
    for (int trial = 0; trial < 50; trial++) {
      double dat = 30 * random.nextDouble();
      double[] working = working(model, random);
      double[] byArea = new double[working.length];
      double[] byRate = new double[working.length];
      model.lnArea(dat, working, byArea);
      double rgr = model.rgrPerDay(dat, working, byRate);
      for (int j = 0; j < working.length; j++) {
        double h = 1e-5 * Math.max(1, Math.abs(working[j]));
        double[] more = working.clone();
        double[] less = working.clone();
        more[j] += h;
        less[j] -= h;
        double[] unused = new double[working.length];
        double area = model.lnArea(dat, more, unused) - model.lnArea(dat, less, unused);
        double rate = model.rgrPerDay(dat, more, unused) - model.rgrPerDay(dat, less, unused);
        // Central differences err by h^2 times a third derivative, and by rounding over h
        assertEquals(area / (2 * h), byArea[j], 1e-6 * (1 + Math.abs(byArea[j])), model + " " + j);
        assertEquals(rate / (2 * h), byRate[j], 1e-6 * (1 + Math.abs(byRate[j])), model + " " + j);
      }
      double h = 1e-5;
      double[] unused = new double[working.length];
      double risen =
          model.lnArea(dat + h, working, unused) - model.lnArea(dat - h, working, unused);
      assertEquals(risen / (2 * h), rgr, 1e-7 * (1 + rgr), model + " rate");
    }
  }

  private static double[] working(CurveModel model, Random random) {
    double k = Math.log(0.1 + 0.2 * random.nextDouble());
    double a = Math.log(300 + 300 * random.nextDouble());
    double t = 10 + 10 * random.nextDouble();
    return switch (model) {
      case EXPONENTIAL -> new double[] {Math.log(5), 0.2 * random.nextDouble() - 0.05};
      case MONOMOLECULAR -> new double[] {a, k, -1 - 5 * random.nextDouble()};
      case LOGISTIC, GOMPERTZ -> new double[] {a, k, t};
      case RICHARDS -> new double[] {a, k, t, Math.log(0.3 + 3 * random.nextDouble())};
      case EXPOLINEAR -> new double[] {Math.log(20), k, t};
    };
  }

  @Test
  void theMonomolecularCurveHasNoAreaBeforeItsZero() {
    GrowthCurve curve = new GrowthCurve(CurveModel.MONOMOLECULAR, List.of(500.0, 0.2, 3.0));
    assertFalse(Double.isFinite(curve.lnArea(2)));
  }

  @Test
  void curvesThatCannotBeAreRefused() {
    assertEquals(
        "rate_per_day must be finite and > 0, got -0.2",
        assertThrows(
                IllegalArgumentException.class,
                () -> new GrowthCurve(CurveModel.LOGISTIC, List.of(500.0, -0.2, 18.0)))
            .getMessage());
    assertEquals(
        "LOGISTIC needs parameters [asymptote_cm2, rate_per_day, midpoint_dat], got [1.0]",
        assertThrows(
                IllegalArgumentException.class,
                () -> new GrowthCurve(CurveModel.LOGISTIC, List.of(1.0)))
            .getMessage());
    assertEquals(
        "areaCm2 must be finite and > 0, got 0.0",
        assertThrows(
                IllegalArgumentException.class, () -> Series.of(new double[] {1}, new double[] {0}))
            .getMessage());
    assertEquals(
        "dat must be finite and ascending, got [2.0, 1.0]",
        assertThrows(
                IllegalArgumentException.class,
                () -> Series.of(new double[] {2, 1}, new double[] {1, 1}))
            .getMessage());
  }
}
