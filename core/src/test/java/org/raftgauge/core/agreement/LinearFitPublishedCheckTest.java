// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Holds least squares to the NIST StRD linear sets and to a fit made with R. */
@Tag("published")
class LinearFitPublishedCheckTest {

  @Test
  void norrisAgreesToElevenDigits() throws IOException {
    ReferenceTable norris = ReferenceTable.read("nist_Norris.csv");
    LinearFit fit = LinearFit.of(norris.design("x"), norris.column("y"));

    // NIST StRD Norris, certified; the intercept is small against its terms, so 1e-9 relative.
    near(-0.262323073774029, fit.coefficients()[0], 1e-10);
    near(1.00211681802045, fit.coefficients()[1], 1e-11);
    near(0.232818234301152, fit.standardErrors()[0], 1e-10);
    near(0.429796848199937e-03, fit.standardErrors()[1], 1e-10);
    near(0.884796396144373, fit.residualSd(), 1e-10);
    assertEquals(34, fit.degreesOfFreedom());
  }

  @Test
  void longleyAgreesToNineDigits() throws IOException {
    ReferenceTable longley = ReferenceTable.read("nist_Longley.csv");
    List<String> names = longley.header().stream().filter(h -> !h.equals("y")).toList();
    LinearFit fit = LinearFit.of(longley.design(names.toArray(String[]::new)), longley.column("y"));

    // NIST StRD Longley, certified; the columns are nearly dependent on each other.
    double[] certified = {
      -3482258.63459582,
      15.0618722713733,
      -0.358191792925910E-01,
      -2.02022980381683,
      -1.03322686717359,
      -0.511041056535807E-01,
      1829.15146461355
    };
    double[] errors = {
      890420.383607373,
      84.9149257747669,
      0.334910077722432E-01,
      0.488399681651699,
      0.214274163161675,
      0.226073200069370,
      455.478499142212
    };
    for (int i = 0; i < certified.length; i++) {
      near(certified[i], fit.coefficients()[i], 1e-9);
      near(errors[i], fit.standardErrors()[i], 1e-9);
    }
    near(304.854073561965, fit.residualSd(), 1e-10);
  }

  @Test
  void lineThroughTheOriginHasItsOwnDegreesOfFreedom() throws IOException {
    ReferenceTable noIntercept = ReferenceTable.read("nist_NoInt1.csv");
    double[] x = noIntercept.column("x");
    double[][] design = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      design[i] = new double[] {x[i]};
    }
    LinearFit fit = LinearFit.of(design, noIntercept.column("y"));

    // NIST StRD NoInt1, certified.
    near(2.07438016528926, fit.coefficients()[0], 1e-13);
    near(0.0165289256198347, fit.standardErrors()[0], 1e-12);
    near(3.56753034006338, fit.residualSd(), 1e-12);
    assertEquals(10, fit.degreesOfFreedom());
  }

  @Test
  void lineOfLogarithmsAgreesWithAnotherProgram() throws IOException {
    ReferenceTable plants = ReferenceTable.read("synth_allometry.csv");
    double[] lnArea = logarithms(plants.column("pla_cm2"));
    double[][] design = new double[lnArea.length][];
    for (int i = 0; i < lnArea.length; i++) {
      design[i] = new double[] {1, lnArea[i]};
    }
    LinearFit fit = LinearFit.of(design, logarithms(plants.column("fw_g")));

    // R 4.2.2 lm on the same twelve invented plants.
    near(-2.956234028, fit.coefficients()[0], 1e-9);
    near(1.295123121, fit.coefficients()[1], 1e-9);
    near(0.05210483847, fit.residualSd(), 1e-9);
    near(0.012364501638, fit.covariance()[0][0], 1e-9);
    near(-0.002411864053, fit.covariance()[0][1], 1e-9);
    near(0.000479235804, fit.covariance()[1][1], 1e-8);
  }

  @Test
  void leaveOneOutResidualsAreThoseOfRefitting() {
    double[] x = {1, 2, 4, 7, 11, 16};
    double[] y = {2, 3, 5.5, 6, 12, 15};
    LinearFit all = LinearFit.of(design(x), y);
    for (int i = 0; i < x.length; i++) {
      LinearFit rest = LinearFit.of(design(Samples.without(x, i)), Samples.without(y, i));
      // The definition of a leave-one-out residual, worked the slow way.
      double slow = y[i] - rest.coefficients()[0] - rest.coefficients()[1] * x[i];
      assertEquals(slow, all.leaveOneOut()[i], 1e-12);
    }
  }

  @Test
  void dependentColumnsAreRefusedInWords() {
    double[][] design = {{1, 2, 4}, {1, 3, 6}, {1, 4, 8}, {1, 5, 10}};
    String message =
        assertThrows(
                IllegalArgumentException.class,
                () -> LinearFit.of(design, new double[] {1, 2, 3, 4}))
            .getMessage();
    assertTrue(message.startsWith("the columns of the design depend on each other"), message);
  }

  @Test
  void fewerRowsThanColumnsAreRefusedInWords() {
    String message =
        assertThrows(
                IllegalArgumentException.class,
                () -> LinearFit.of(new double[][] {{1, 2}}, new double[] {1}))
            .getMessage();
    assertEquals(
        "a fit needs more rows than columns and a value for each, got 1 rows and 1 values",
        message);
  }

  private static double[][] design(double[] x) {
    double[][] design = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      design[i] = new double[] {1, x[i]};
    }
    return design;
  }

  private static double[] logarithms(double[] x) {
    double[] ln = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      ln[i] = Math.log(x[i]);
    }
    return ln;
  }

  static void near(double expected, double found, double relative) {
    assertEquals(expected, found, Math.abs(expected) * relative);
  }
}
