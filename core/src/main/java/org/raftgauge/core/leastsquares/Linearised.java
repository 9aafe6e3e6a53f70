// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.util.Pair;

/** Residuals and Jacobian at a point, columns scaled to length 1 and decomposed (QR). */
final class Linearised {
  /**
   * Smallest diagonal of R, of columns of length 1, at which directions still count as distinct.
   */
  private static final double DISTINCT = 1e-12;

  private final double[] columnNorms;
  private final RealVector residuals;
  private final QRDecomposition qr;
  private final boolean singular;

  private Linearised(RealVector minusResiduals, RealMatrix jacobian) {
    int p = jacobian.getColumnDimension();
    columnNorms = new double[p];
    residuals = minusResiduals.mapMultiply(-1);
    boolean flat = false;
    for (int j = 0; j < p; j++) {
      RealVector column = jacobian.getColumnVector(j);
      columnNorms[j] = column.getNorm();
      flat |= !(columnNorms[j] > 0);
      jacobian.setColumnVector(j, column.mapDivide(flat ? 1 : columnNorms[j]));
    }
    qr = new QRDecomposition(jacobian);
    singular = flat || jacobian.getRowDimension() < p || smallestPivot(qr.getR(), p) < DISTINCT;
  }

  static Linearised at(double[] parameters, Residuals residuals) {
    Pair<RealVector, RealMatrix> value = residuals.value(new ArrayRealVector(parameters));
    return of(value.getFirst(), value.getSecond());
  }

  /** Decomposes; the Jacobian is used up. */
  static Linearised of(RealVector minusResiduals, RealMatrix jacobian) {
    return new Linearised(minusResiduals, jacobian);
  }

  boolean isSingular() {
    return singular;
  }

  double cost() {
    return residuals.dotProduct(residuals);
  }

  double[] gaussNewtonStep() {
    double[] step = qr.getSolver().solve(residuals).toArray();
    for (int j = 0; j < step.length; j++) {
      step[j] /= columnNorms[j];
    }
    return step;
  }

  /**
   * Returns how far the residuals still lean into the tangent plane, as a share of their length.
   *
   * <p>Source: Bates and Watts 1981, Technometrics 23:179-183 (relative offset).
   */
  double relativeOffset() {
    double length = residuals.getNorm();
    if (length == 0) {
      return 0;
    }
    double[] rotated = qr.getQT().operate(residuals).toArray();
    double tangent = 0;
    for (int j = 0; j < columnNorms.length; j++) {
      tangent += rotated[j] * rotated[j];
    }
    return Math.sqrt(tangent) / length;
  }

  /** Returns {@code (J'J)^-1}. */
  double[][] inverseInformation() {
    int p = columnNorms.length;
    RealMatrix r = qr.getR().getSubMatrix(0, p - 1, 0, p - 1);
    RealMatrix inverse = new QRDecomposition(r).getSolver().getInverse();
    double[][] out = inverse.multiply(inverse.transpose()).getData();
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        out[i][j] /= columnNorms[i] * columnNorms[j];
      }
    }
    return out;
  }

  private static double smallestPivot(RealMatrix r, int p) {
    double least = Double.POSITIVE_INFINITY;
    for (int j = 0; j < p; j++) {
      least = Math.min(least, Math.abs(r.getEntry(j, j)));
    }
    return least;
  }
}
