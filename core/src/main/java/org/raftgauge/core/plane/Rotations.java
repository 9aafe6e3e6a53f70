// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

/** Turns with 3 x 3 rotation matrices, row by row. */
public final class Rotations {

  private Rotations() {}

  /**
   * Returns the rotation by a vector's length in radians about its direction.
   *
   * <p>Source: Rodrigues' formula.
   *
   * @param x of the vector
   * @param y of the vector
   * @param z of the vector
   * @return the matrix, row by row, 9 numbers
   */
  public static double[] about(double x, double y, double z) {
    double angle = Math.sqrt(x * x + y * y + z * z);
    double a = angle < 1e-9 ? 1 : Math.sin(angle) / angle;
    double b = angle < 1e-9 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle);
    return new double[] {
      1 - b * (y * y + z * z),
      -a * z + b * x * y,
      a * y + b * x * z,
      a * z + b * x * y,
      1 - b * (x * x + z * z),
      -a * x + b * y * z,
      -a * y + b * x * z,
      a * x + b * y * z,
      1 - b * (x * x + y * y)
    };
  }

  /**
   * Returns the product of two matrices.
   *
   * @param a row by row, 9 numbers
   * @param b row by row, 9 numbers
   * @return a b, row by row
   */
  public static double[] times(double[] a, double[] b) {
    double[] c = new double[9];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        c[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
      }
    }
    return c;
  }

  /** Returns the largest entry of {@code R R' - I}, or 2 where R mirrors. */
  static double defect(double[] r) {
    double worst = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double dot =
            r[3 * i] * r[3 * j] + r[3 * i + 1] * r[3 * j + 1] + r[3 * i + 2] * r[3 * j + 2];
        worst = Math.max(worst, Math.abs(dot - (i == j ? 1 : 0)));
      }
    }
    double det =
        r[0] * (r[4] * r[8] - r[5] * r[7])
            - r[1] * (r[3] * r[8] - r[5] * r[6])
            + r[2] * (r[3] * r[7] - r[4] * r[6]);
    return det < 0 ? 2 : worst;
  }
}
