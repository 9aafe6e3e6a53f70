// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;

/** Small matrices by hand, and by the library's general ones. */
class SmallMatrixTest {
  private static final double[][] A = {{4, 1}, {1, 3}};

  @Test
  void sumsTakeTheLeadingBlockAndTheMultiple() {
    double[][] sum = {{1, 2}, {3, 4}};
    SmallMatrix.add(sum, new double[][] {{10, 20, 9}, {30, 40, 9}, {9, 9, 9}}, 0.5);
    assertArrayEquals(new double[] {6, 12}, sum[0]);
    assertArrayEquals(new double[] {18, 24}, sum[1]);
    double[] vector = {1, 2};
    SmallMatrix.add(vector, new double[] {10, 20, 30}, -2);
    assertArrayEquals(new double[] {-19, -38}, vector);
  }

  @Test
  void theOuterSquareOfTwoAndThreeIsFourSixSixNine() {
    double[][] sum = {{1, 1}, {1, 1}};
    SmallMatrix.addOuter(sum, new double[] {2, 3, 99}, 2);
    assertArrayEquals(new double[] {9, 13}, sum[0]);
    assertArrayEquals(new double[] {13, 19}, sum[1]);
  }

  @Test
  void theInverseIsTheAdjugateOverTheDeterminant() {
    // det = 4 * 3 - 1 = 11
    double[][] inverse = SmallMatrix.inverse(A);
    assertArrayEquals(new double[] {3 / 11.0, -1 / 11.0}, inverse[0], 1e-15);
    assertArrayEquals(new double[] {-1 / 11.0, 4 / 11.0}, inverse[1], 1e-15);
  }

  @Test
  void aMatrixThatIsNotPositiveHasNoInverse() {
    assertThrows(
        MathRuntimeException.class, () -> SmallMatrix.inverse(new double[][] {{1, 2}, {2, 1}}));
  }

  @Test
  void productsAreTheLibrarys() {
    assertArrayEquals(
        new double[] {4 * 5 + 7, 5 + 3 * 7}, SmallMatrix.times(A, new double[] {5, 7}));
    double[][] middle = {{2, -1, 50}, {-1, 5, 50}, {50, 50, 50}};
    double[][] expected =
        MatrixUtils.createRealMatrix(A)
            .multiply(MatrixUtils.createRealMatrix(new double[][] {{2, -1}, {-1, 5}}))
            .multiply(MatrixUtils.createRealMatrix(A))
            .getData();
    double[][] sandwich = SmallMatrix.sandwich(A, middle);
    assertArrayEquals(expected[0], sandwich[0], 1e-12);
    assertArrayEquals(expected[1], sandwich[1], 1e-12);
  }
}
