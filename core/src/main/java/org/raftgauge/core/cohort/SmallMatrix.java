// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;

/** Sums and inverses of matrices of two to four rows. */
final class SmallMatrix {
  private SmallMatrix() {}

  static void add(double[] to, double[] what, double times) {
    for (int i = 0; i < to.length; i++) {
      to[i] += times * what[i];
    }
  }

  /** Adds a multiple of the leading block of {@code what}. */
  static void add(double[][] to, double[][] what, double times) {
    for (int i = 0; i < to.length; i++) {
      for (int j = 0; j < to.length; j++) {
        to[i][j] += times * what[i][j];
      }
    }
  }

  /** Adds a multiple of the outer square of the leading part of {@code v}. */
  static void addOuter(double[][] to, double[] v, double times) {
    for (int i = 0; i < to.length; i++) {
      for (int j = 0; j < to.length; j++) {
        to[i][j] += times * v[i] * v[j];
      }
    }
  }

  /** Returns the inverse of a symmetric positive definite matrix. */
  static double[][] inverse(double[][] symmetric) {
    return new CholeskyDecomposition(new Array2DRowRealMatrix(symmetric), 1e-6, 0)
        .getSolver()
        .getInverse()
        .getData();
  }

  /** Returns matrix times vector. */
  static double[] times(double[][] matrix, double[] v) {
    double[] out = new double[matrix.length];
    for (int i = 0; i < out.length; i++) {
      for (int j = 0; j < out.length; j++) {
        out[i] += matrix[i][j] * v[j];
      }
    }
    return out;
  }

  /** Returns {@code a m a} of symmetric matrices, of the leading block of {@code m}. */
  static double[][] sandwich(double[][] a, double[][] m) {
    int p = a.length;
    double[][] out = new double[p][p];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        for (int k = 0; k < p; k++) {
          for (int l = 0; l < p; l++) {
            out[i][j] += a[i][k] * m[k][l] * a[l][j];
          }
        }
      }
    }
    return out;
  }
}
