// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;

/**
 * Fits a camera's pose to places of the deck seen in a photo: least squares of the reprojection
 * errors with Huber's weights and a weak prior on camera height and tilt.
 *
 * <p>Source: Levenberg-Marquardt of Hipparchus 4; weights: Huber 1964, Ann. Math. Stat. 35:73-101.
 */
final class FitPose {
  /** Huber's constant: 95 % efficiency for normal errors. */
  private static final double HUBER = 1.345;

  private static final int REWEIGHT_ROUNDS = 6;
  private static final double[] STEP = {1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3};

  private FitPose() {}

  /**
   * What is known of the camera before the photo is looked at.
   *
   * @param lens its lens
   * @param heightMm its height over the deck, mm
   * @param heightErrorFraction standard error of that, as a share of it
   * @param tiltErrorDeg standard deviation of its tilt about each axis, degrees
   */
  record Prior(Lens lens, double heightMm, double heightErrorFraction, double tiltErrorDeg) {

    /**
     * Returns the prior of a station: height to 2 % (water level, a tape measure), tilt 3 degrees
     * (design: up to 5).
     */
    static Prior of(Lens lens, double heightMm) {
      return new Prior(lens, heightMm, 0.02, 3);
    }
  }

  /** Something seen that pulls on the pose; residuals are in standard errors. */
  interface Pull {
    /** Returns how many residuals it gives. */
    int size();

    /** Writes its residuals into {@code out} from {@code at} on. */
    void residuals(CameraPose pose, double[] out, int at);
  }

  /** Pulls with a tie: two residuals. */
  static Pull pull(Tie tie) {
    return new Pull() {
      @Override
      public int size() {
        return 2;
      }

      @Override
      public void residuals(CameraPose pose, double[] out, int at) {
        PointPx p = pose.toPhoto(tie.deck());
        out[at] = (p.xPx() - tie.photo().xPx()) / tie.errorPx();
        out[at + 1] = (p.yPx() - tie.photo().yPx()) / tie.errorPx();
      }
    };
  }

  /**
   * Fits from a start.
   *
   * @param start a pose near the true one
   * @param pulls what was seen
   * @param prior what is known of the camera
   * @return the fit; the start itself, with a wide error, where the fit runs away
   */
  static PoseFit fit(CameraPose start, List<Pull> pulls, Prior prior) {
    int n = pulls.stream().mapToInt(Pull::size).sum();
    double[] weights = new double[n + 3];
    Arrays.fill(weights, 1);
    CameraPose pose = start;
    for (int round = 0; round < REWEIGHT_ROUNDS; round++) {
      pose = minimum(pose, pulls, prior, weights);
      double[] before = weights.clone();
      reweight(pulls, residuals(pose, pulls, prior, n), weights);
      if (Arrays.equals(before, weights)) {
        break; // the same weights have the same minimum
      }
    }
    double[] r = residuals(pose, pulls, prior, n);
    RealMatrix normal = normal(pose, pulls, prior, weights);
    return new PoseFit(pose, inverse(normal), varianceFactor(pulls, r, weights));
  }

  /** Weights the residuals of one pull alike, by the length of its residual. */
  private static void reweight(List<Pull> pulls, double[] r, double[] weights) {
    double scale = Math.max(1, robustScale(pulls, r));
    int at = 0;
    for (Pull pull : pulls) {
      double length = 0;
      for (int i = 0; i < pull.size(); i++) {
        length += r[at + i] * r[at + i] / pull.size();
      }
      length = Math.sqrt(length) / scale;
      for (int i = 0; i < pull.size(); i++) {
        weights[at + i] = length <= HUBER ? 1 : HUBER / length;
      }
      at += pull.size();
    }
  }

  /** Returns 1.4826 times the median residual: the scale of normal errors. */
  private static double robustScale(List<Pull> pulls, double[] r) {
    int n = pulls.stream().mapToInt(Pull::size).sum();
    double[] sizes = new double[n];
    for (int i = 0; i < n; i++) {
      sizes[i] = Math.abs(r[i]);
    }
    Arrays.sort(sizes);
    return n == 0 ? 1 : 1.4826 * sizes[n / 2];
  }

  /**
   * Returns by how much the errors seen exceed those foretold, as a variance: the foretold ones
   * count as four observations, so that a few points neither hide nor invent errors.
   */
  private static double varianceFactor(List<Pull> pulls, double[] r, double[] weights) {
    int n = pulls.stream().mapToInt(Pull::size).sum();
    double rss = 0;
    for (int i = 0; i < n; i++) {
      rss += weights[i] * r[i] * r[i];
    }
    double freedom = Math.max(0, n - 6);
    return (4 + rss) / (4 + freedom);
  }

  private static CameraPose minimum(
      CameraPose start, List<Pull> pulls, Prior prior, double[] weights) {
    int n = weights.length - 3;
    try {
      Optimum best =
          new LevenbergMarquardtOptimizer()
              .optimize(
                  new LeastSquaresBuilder()
                      .start(new double[6])
                      .target(new double[n + 3])
                      .weight(new DiagonalMatrix(weights))
                      .model(p -> model(start, pulls, prior, p))
                      .maxEvaluations(200)
                      .maxIterations(60)
                      .build());
      return moved(start, best.getPoint().toArray());
    } catch (MathIllegalStateException | IllegalArgumentException e) {
      return start;
    }
  }

  private static Pair<RealVector, RealMatrix> model(
      CameraPose start, List<Pull> pulls, Prior prior, RealVector p) {
    int n = pulls.stream().mapToInt(Pull::size).sum();
    double[] at = p.toArray();
    double[] value = residuals(moved(start, at), pulls, prior, n);
    return new Pair<>(new ArrayRealVector(value, false), jacobian(start, at, pulls, prior));
  }

  private static RealMatrix jacobian(CameraPose start, double[] at, List<Pull> pulls, Prior prior) {
    int n = pulls.stream().mapToInt(Pull::size).sum();
    double[][] j = new double[n + 3][6];
    for (int c = 0; c < 6; c++) {
      double[] plus = at.clone();
      double[] minus = at.clone();
      plus[c] += STEP[c];
      minus[c] -= STEP[c];
      double[] up = residuals(moved(start, plus), pulls, prior, n);
      double[] down = residuals(moved(start, minus), pulls, prior, n);
      for (int i = 0; i < n + 3; i++) {
        j[i][c] = (up[i] - down[i]) / (2 * STEP[c]);
      }
    }
    return MatrixUtils.createRealMatrix(j);
  }

  private static double[] residuals(CameraPose pose, List<Pull> pulls, Prior prior, int n) {
    double[] out = new double[n + 3];
    int at = 0;
    for (Pull pull : pulls) {
      pull.residuals(pose, out, at);
      at += pull.size();
    }
    double[] r = pose.rotation();
    double tilt = Math.toRadians(prior.tiltErrorDeg());
    out[n] =
        (pose.heightMm() - prior.heightMm()) / (prior.heightErrorFraction() * prior.heightMm());
    out[n + 1] = r[6] / tilt;
    out[n + 2] = r[7] / tilt;
    return out;
  }

  private static RealMatrix normal(
      CameraPose pose, List<Pull> pulls, Prior prior, double[] weights) {
    RealMatrix j = jacobian(pose, new double[6], pulls, prior);
    return j.transposeMultiply(new DiagonalMatrix(weights).multiply(j));
  }

  private static RealMatrix inverse(RealMatrix normal) {
    return new LUDecomposition(normal, 1e-30).getSolver().getInverse();
  }

  /** Returns the pose after a small turn and shift. */
  static CameraPose moved(CameraPose pose, double[] step) {
    double[] turn = Rotations.about(step[0], step[1], step[2]);
    double[] t = pose.translationMm();
    for (int i = 0; i < 3; i++) {
      t[i] += step[3 + i];
    }
    return CameraPose.of(pose.lens(), Rotations.times(turn, pose.rotation()), t);
  }
}
