// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/** Householder's reflections against normal equations solved by the library. */
class LinearisedTest {
  private static final int ROWS = 7;

  private final Random random = new Random(3);

  private double[][] jacobian(int columns) {
    double[][] rows = new double[ROWS][columns];
    for (double[] row : rows) {
      for (int j = 0; j < columns; j++) {
        // Columns of sizes a thousand apart, as area and rate are.
        row[j] = random.nextGaussian() * Math.pow(1000, j);
      }
    }
    return rows;
  }

  private double[] values() {
    return random.doubles(ROWS, -2, 2).toArray();
  }

  @Test
  void stepCostOffsetAndInformationAreThoseOfTheNormalEquations() {
    for (int trial = 0; trial < 20; trial++) {
      double[][] rows = jacobian(1 + trial % 4);
      double[] values = values();
      Linearised here = Linearised.of(values, rows);
      RealMatrix j = MatrixUtils.createRealMatrix(rows);
      RealVector v = new ArrayRealVector(values);
      RealMatrix inverse = new LUDecomposition(j.transpose().multiply(j)).getSolver().getInverse();
      RealVector step = inverse.operate(j.preMultiply(v)).mapMultiply(-1);
      assertFalse(here.isSingular());
      assertEquals(v.dotProduct(v), here.cost(), 1e-12);
      RealVector tangent = j.operate(step);
      assertEquals(tangent.getNorm() / v.getNorm(), here.relativeOffset(), 1e-9, "trial " + trial);
      for (int i = 0; i < step.getDimension(); i++) {
        double size = Math.sqrt(inverse.getEntry(i, i));
        assertEquals(step.getEntry(i), here.gaussNewtonStep()[i], 1e-8 * size);
        for (int k = 0; k < step.getDimension(); k++) {
          double other = Math.sqrt(inverse.getEntry(k, k));
          assertEquals(
              inverse.getEntry(i, k), here.inverseInformation()[i][k], 1e-8 * size * other);
        }
      }
    }
  }

  @Test
  void whatItIsGivenStaysAsItWas() {
    double[][] rows = jacobian(2);
    double[] first = rows[0].clone();
    double[] values = values();
    double[] before = values.clone();
    Linearised.of(values, rows);
    assertArrayEquals(first, rows[0], 0);
    assertArrayEquals(before, values, 0);
  }

  @Test
  void columnsThatCannotBeToldApartAreSingular() {
    double[][] alike = jacobian(3);
    double[][] empty = jacobian(3);
    double[][] endless = jacobian(3);
    double[][] nearly = jacobian(3);
    for (int i = 0; i < ROWS; i++) {
      alike[i][2] = 5 * alike[i][0];
      empty[i][1] = 0;
      endless[i][1] = 1e200;
      nearly[i][2] = nearly[i][0] + 1e-9 * nearly[i][2] / 1e6;
    }
    assertTrue(Linearised.of(values(), alike).isSingular());
    assertTrue(Linearised.of(values(), empty).isSingular());
    assertTrue(Linearised.of(values(), endless).isSingular());
    assertFalse(Linearised.of(values(), nearly).isSingular(), "apart by a billionth");
    assertTrue(Linearised.of(new double[2], new double[2][3]).isSingular(), "fewer rows");
    assertTrue(Linearised.of(new double[0], new double[0][0]).cost() == 0);
  }

  @Test
  void aSquareOfRowsLeavesNothingAndNothingHasNoOffset() {
    Linearised square = Linearised.of(new double[] {1, 2}, new double[][] {{1, 1}, {0, 1}});
    assertFalse(square.isSingular());
    // x + y = -1, y = -2
    assertArrayEquals(new double[] {1, -2}, square.gaussNewtonStep(), 1e-12);
    assertEquals(1, square.relativeOffset(), 1e-12);
    assertEquals(
        0, Linearised.of(new double[2], new double[][] {{1, 1}, {0, 1}}).relativeOffset(), 0);
  }
}
