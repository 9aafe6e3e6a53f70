// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealVector;
import org.raftgauge.core.growth.CurveModel;

/**
 * Ways of cycles as one normal distribution: {@code y_c(t) = f(t; theta_c) + s(t) + w_c(t) + e},
 * where cycles' parameters differ about a mean, s is what the curve misses alike in all cycles
 * (smooth), w is weather and e the error of an evening. Parameters are linearised about each
 * cycle's own, three times over. The last of the ways is tonight's.
 *
 * <p>Source of the method: Rasmussen and Williams 2006, Gaussian Processes for Machine Learning,
 * sections 2.2 and 2.7 (a parametric mean with a normal prior).
 */
final class PathModel {
  private static final int ROUNDS = 3;

  /** How far the mean parameters may lie off their start: ln size, ln rate, days. */
  private static final double[] MEAN_SD = {0.5, 0.5, 10};

  /**
   * How cycles differ: 15 % in size, 8 % in rate, a day in start; working values, which count only
   * as far as the ways of the cycles do not say more or less.
   */
  private static final double[] BETWEEN_SD = {0.15, 0.08, 1};

  /** Days over which what a curve misses is alike; a working value. */
  private static final double SMOOTH_DAYS = 8;

  private final Guess guess;
  private final List<CommonPath> paths;
  private final double[] start;
  private final double[][] theta;
  private final int[] cycle;
  private final double[] age;
  private final boolean[] weighed;
  private final double[] lnArea;
  private final double[] variance;
  private final double reference;
  private final double[][] slope;
  private double[] alpha;
  private CholeskyDecomposition root;
  private double logLikelihood;

  /**
   * What is taken for true.
   *
   * @param model of the curve
   * @param weather by covariance, of standard deviation 1
   * @param weatherSd of a day's growth, as a share of it
   * @param looseness by how much cycles differ, times the usual
   * @param missSd of what the curve misses, of ln area
   */
  record Guess(
      CurveModel model, WeatherWalk weather, double weatherSd, double looseness, double missSd) {}

  /**
   * Conditions on the ways.
   *
   * @param guess what is taken for true
   * @param start working parameters about which the cycles' lie
   * @param paths of past cycles, and tonight's last
   */
  PathModel(Guess guess, double[] start, List<CommonPath> paths) {
    this.guess = guess;
    this.paths = paths;
    this.start = start;
    int n = paths.stream().mapToInt(p -> p.size() + p.weighed().size()).sum();
    this.cycle = new int[n];
    this.age = new double[n];
    this.slope = new double[n][];
    this.weighed = new boolean[n];
    this.lnArea = new double[n];
    this.variance = new double[n];
    this.reference =
        paths.stream()
            .flatMap(p -> p.weighed().stream())
            .mapToDouble(ScalePoint::lnArea)
            .average()
            .orElse(0);
    this.theta = new double[paths.size()][];
    int k = 0;
    for (int c = 0; c < paths.size(); c++) {
      theta[c] = start.clone();
      for (int i = 0; i < paths.get(c).size(); i++) {
        cycle[k] = c;
        lnArea[k] = paths.get(c).lnArea(i);
        variance[k] = paths.get(c).variance(i);
        age[k++] = paths.get(c).age(i);
      }
      for (ScalePoint point : paths.get(c).weighed()) {
        cycle[k] = c;
        weighed[k] = true;
        lnArea[k] = point.lnArea();
        variance[k] = point.variance();
        age[k++] = point.age();
      }
    }
    for (int round = 0; round < ROUNDS; round++) {
      solve();
      if (round < ROUNDS - 1) {
        move();
      }
    }
  }

  private void solve() {
    int n = age.length;
    double[] off = new double[n];
    double[][] v = new double[n][n];
    for (int k = 0; k < n; k++) {
      slope[k] = new double[start.length];
      off[k] = lnArea[k] - mean(cycle[k], age[k], slope[k]);
      v[k][k] = variance[k];
    }
    PathPlace[] at = new PathPlace[n];
    for (int a = 0; a < n; a++) {
      at[a] = at(a);
      for (int b = 0; b <= a; b++) {
        v[a][b] += covariance(at[a], at[b]);
        v[b][a] = v[a][b];
      }
    }
    root = new CholeskyDecomposition(new Array2DRowRealMatrix(v, false), 1e-9, 0);
    RealVector solved = root.getSolver().solve(new ArrayRealVector(off, false));
    alpha = solved.toArray();
    double sum = 0;
    for (int a = 0; a < n; a++) {
      sum += off[a] * alpha[a] / 2 + Math.log(root.getL().getEntry(a, a));
    }
    logLikelihood = -sum;
  }

  /** Moves each cycle's parameters to what its way says. */
  private void move() {
    for (int c = 0; c < theta.length; c++) {
      double[] next = start.clone();
      for (int a = 0; a < age.length; a++) {
        for (int j = 0; j < next.length; j++) {
          next[j] += parameterVariance(j, cycle[a] == c) * slope[a][j] * alpha[a];
        }
      }
      theta[c] = next;
    }
  }

  private PathPlace at(int k) {
    OptionalDouble size =
        weighed[k] ? OptionalDouble.of(lnArea[k] - reference) : OptionalDouble.empty();
    return new PathPlace(cycle[k], age[k], slope[k], size);
  }

  /** Returns tonight's place at an age, by area or by weight, with its expected value. */
  private double tonight(double at, boolean byWeight, PathPlace[] here) {
    double[] gradient = new double[start.length];
    double value = mean(paths.size() - 1, at, gradient);
    OptionalDouble size = byWeight ? OptionalDouble.of(value - reference) : OptionalDouble.empty();
    here[0] = new PathPlace(paths.size() - 1, at, gradient, size);
    return value;
  }

  private double mean(int c, double at, double[] gradient) {
    double value = guess.model().lnArea(at, theta[c], gradient);
    for (int j = 0; j < gradient.length; j++) {
      value += gradient[j] * (start[j] - theta[c][j]);
    }
    return value;
  }

  private double parameterVariance(int j, boolean sameCycle) {
    double between = guess.looseness() * BETWEEN_SD[j];
    return MEAN_SD[j] * MEAN_SD[j] + (sameCycle ? between * between : 0);
  }

  private double covariance(PathPlace a, PathPlace b) {
    boolean same = a.cycle == b.cycle;
    double sum = 0;
    for (int j = 0; j < start.length; j++) {
      sum += a.slope[j] * parameterVariance(j, same) * b.slope[j];
    }
    double apart = (a.age - b.age) / SMOOTH_DAYS;
    sum += guess.missSd() * guess.missSd() * Math.exp(-apart * apart / 2);
    if (a.weighedSize.isPresent() && b.weighedSize.isPresent()) {
      double sizes = a.weighedSize.getAsDouble() * b.weighedSize.getAsDouble();
      sum += LineDoubt.covariance(sizes, same);
    }
    return same
        ? sum + guess.weatherSd() * guess.weatherSd() * guess.weather().covariance(a.age, b.age)
        : sum;
  }

  double logLikelihood() {
    return logLikelihood;
  }

  /**
   * Returns the expected ln area, up to tonight's constant, at an age.
   *
   * @param at age, days
   * @param byWeight whether the size is meant at which the grader's line gives the weight
   */
  double lnArea(double at, boolean byWeight) {
    PathPlace[] here = new PathPlace[1];
    double value = tonight(at, byWeight, here);
    for (int a = 0; a < age.length; a++) {
      value += covariance(here[0], at(a)) * alpha[a];
    }
    return value;
  }

  /**
   * Returns the variance of the growth of tonight's plants between two ages.
   *
   * @param from age, days
   * @param to age, days
   * @param byWeight whether the size at the end is that at which the grader's line gives the weight
   */
  double growthVariance(double from, double to, boolean byWeight) {
    PathPlace[] here = new PathPlace[1];
    tonight(from, false, here);
    PathPlace a = here[0];
    tonight(to, byWeight, here);
    PathPlace b = here[0];
    double[] with = new double[age.length];
    for (int k = 0; k < with.length; k++) {
      PathPlace seen = at(k);
      with[k] = covariance(b, seen) - covariance(a, seen);
    }
    RealVector known = new ArrayRealVector(with, false);
    double told = known.dotProduct(root.getSolver().solve(known));
    return Math.max(0, covariance(a, a) + covariance(b, b) - 2 * covariance(a, b) - told);
  }
}
