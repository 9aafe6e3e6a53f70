// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.raftgauge.core.grader.RegimeFit;

/**
 * Draws of the errors that plants share, in pairs of opposite sign. Each name (raft, cohort) has a
 * stream of its own, so that taking a raft away leaves the draws of the others alone.
 */
final class SharedDraws {
  private final int draws;
  private final long seed;
  private final Map<String, double[]> named = new HashMap<>();
  private final IdentityHashMap<RegimeFit, Calibration> calibrations = new IdentityHashMap<>();

  /** Draws of a calibration: shifts of its numbers, and the factor of its variance. */
  static final class Calibration {
    final double[][] shift;
    final double[] spread2;

    Calibration(double[][] shift, double[] spread) {
      this.spread2 = Arrays.stream(spread).map(x -> x * x).toArray();
      this.shift = shift;
    }
  }

  SharedDraws(ForecastRule rule) {
    this.draws = rule.draws();
    this.seed = rule.seed();
  }

  int draws() {
    return draws;
  }

  /** Returns standard normal draws of a name. */
  double[] normals(String name) {
    return named.computeIfAbsent(
        name,
        n -> {
          Random random = new Random(seed + 1_000_003L * n.hashCode());
          double[] out = new double[draws];
          for (int s = 0; s < draws; s++) {
            out[s] = s % 2 == 1 ? -out[s - 1] : random.nextGaussian();
          }
          return out;
        });
  }

  /**
   * Returns draws of a fit's calibration: multivariate t with the fit's covariance and degrees of
   * freedom.
   */
  Calibration calibration(RegimeFit fit) {
    return calibrations.computeIfAbsent(fit, this::draw);
  }

  private Calibration draw(RegimeFit fit) {
    double[][] covariance = fit.covariance();
    int p = covariance.length;
    EigenDecompositionSymmetric eigen =
        new EigenDecompositionSymmetric(new Array2DRowRealMatrix(covariance));
    double[] spread = spread(fit.numbers().degreesOfFreedom());
    double[][] shift = new double[draws][p];
    for (int k = 0; k < p; k++) {
      double[] z = normals("calibration " + calibrations.size() + " " + k);
      double length = Math.sqrt(Math.max(0, eigen.getEigenvalue(k)));
      for (int s = 0; s < draws; s++) {
        for (int i = 0; i < p; i++) {
          shift[s][i] += length * eigen.getEigenvector(k).getEntry(i) * z[s] * spread[s];
        }
      }
    }
    return new Calibration(shift, spread);
  }

  /** Returns draws of the true spread over the estimated one: root of df over chi-squared. */
  private double[] spread(int degreesOfFreedom) {
    Random random = new Random(seed + degreesOfFreedom);
    double[] out = new double[draws];
    for (int s = 0; s < draws; s++) {
      double chi = 0;
      for (int k = 0; k < degreesOfFreedom; k++) {
        double z = random.nextGaussian();
        chi += z * z;
      }
      out[s] = s % 2 == 1 ? out[s - 1] : Math.sqrt(degreesOfFreedom / chi);
    }
    return out;
  }
}
