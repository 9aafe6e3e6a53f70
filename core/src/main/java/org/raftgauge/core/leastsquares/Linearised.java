// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

/**
 * Residuals and Jacobian at a point, columns scaled to length 1 and decomposed by Householder's
 * reflections (Golub and Van Loan 2013, Matrix Computations, algorithm 5.2.1), on plain arrays: it
 * is done at every step of every curve of a farm.
 */
final class Linearised {
  /**
   * Smallest diagonal of R, of columns of length 1, at which directions still count as distinct.
   */
  private static final double DISTINCT = 1e-12;

  private final double[] columnNorms;
  private final double[][] columns;
  private final double[] rotated;
  private final double cost;
  private final boolean singular;

  private Linearised(double[] minusResiduals, double[][] jacobian) {
    int n = jacobian.length;
    int p = n == 0 ? 0 : jacobian[0].length;
    columnNorms = new double[p];
    rotated = new double[n];
    columns = new double[p][n];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < p; j++) {
        columns[j][i] = jacobian[i][j];
      }
      rotated[i] = -minusResiduals[i];
      sum += rotated[i] * rotated[i];
    }
    cost = sum;
    singular = !(n >= p && scaled(p) && reflected(p));
  }

  /** Linearises at parameters. */
  static Linearised at(double[] parameters, Residuals residuals) {
    residuals.evaluate(parameters);
    return of(residuals.minusResiduals(), residuals.jacobian());
  }

  /** Decomposes copies of minus the residuals and of their Jacobian, a row a point. */
  static Linearised of(double[] minusResiduals, double[][] jacobian) {
    return new Linearised(minusResiduals, jacobian);
  }

  /** Scales the columns to length 1; says whether none is 0. */
  private boolean scaled(int p) {
    for (int j = 0; j < p; j++) {
      columnNorms[j] = Math.sqrt(squares(j, 0));
      if (!(columnNorms[j] > 0) || Double.isInfinite(columnNorms[j])) {
        return false;
      }
      for (int i = 0; i < rotated.length; i++) {
        columns[j][i] /= columnNorms[j];
      }
    }
    return true;
  }

  private double squares(int column, int from) {
    double sum = 0;
    for (int i = from; i < rotated.length; i++) {
      sum += columns[column][i] * columns[column][i];
    }
    return sum;
  }

  /** Reflects column after column; says whether all are distinct. */
  private boolean reflected(int p) {
    double least = Double.POSITIVE_INFINITY;
    for (int j = 0; j < p; j++) {
      double length = Math.sqrt(squares(j, j));
      least = Math.min(least, length);
      if (!(length > 0)) {
        return false;
      }
      double[] own = columns[j];
      double head = own[j];
      double diagonal = head > 0 ? -length : length;
      double first = head - diagonal;
      // The reflection is I - v v' / (-diagonal first), v being the column below with this head.
      own[j] = first;
      for (int k = j + 1; k < p; k++) {
        reflect(columns[k], j, -diagonal * first);
      }
      reflect(rotated, j, -diagonal * first);
      own[j] = diagonal;
    }
    return least >= DISTINCT;
  }

  /** Reflects a column from row {@code j} on by what stands in column {@code j}. */
  private void reflect(double[] column, int j, double halfSquare) {
    double[] by = columns[j];
    double along = 0;
    for (int i = j; i < by.length; i++) {
      along += by[i] * column[i];
    }
    along /= halfSquare;
    for (int i = j; i < by.length; i++) {
      column[i] -= along * by[i];
    }
  }

  boolean isSingular() {
    return singular;
  }

  double cost() {
    return cost;
  }

  double[] gaussNewtonStep() {
    int p = columnNorms.length;
    double[] step = new double[p];
    for (int j = p - 1; j >= 0; j--) {
      double sum = rotated[j];
      for (int k = j + 1; k < p; k++) {
        sum -= columns[k][j] * step[k];
      }
      step[j] = sum / columns[j][j];
    }
    for (int j = 0; j < p; j++) {
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
    if (cost == 0) {
      return 0;
    }
    double tangent = 0;
    for (int j = 0; j < columnNorms.length; j++) {
      tangent += rotated[j] * rotated[j];
    }
    return Math.sqrt(tangent / cost);
  }

  /** Returns {@code (J'J)^-1}. */
  double[][] inverseInformation() {
    int p = columnNorms.length;
    double[][] inverse = new double[p][p];
    for (int c = 0; c < p; c++) {
      for (int j = c; j >= 0; j--) {
        double sum = j == c ? 1 : 0;
        for (int k = j + 1; k <= c; k++) {
          sum -= columns[k][j] * inverse[k][c];
        }
        inverse[j][c] = sum / columns[j][j];
      }
    }
    double[][] out = new double[p][p];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        double sum = 0;
        for (int k = Math.max(i, j); k < p; k++) {
          sum += inverse[i][k] * inverse[j][k];
        }
        out[i][j] = sum / (columnNorms[i] * columnNorms[j]);
      }
    }
    return out;
  }
}
