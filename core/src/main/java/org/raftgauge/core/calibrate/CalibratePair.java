// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;

/**
 * Finds how two cameras stand to each other from photos of the same flat target, taken by both at
 * the same moments: least squares of the distances between points seen and foretold in both
 * pictures, over where the second camera stands and where the target was each time; both lenses are
 * held. {@link CalibrateTogether} goes on from there.
 *
 * <p>Source: Hartley and Zisserman 2004, section 18.1 (bundle adjustment); Levenberg-Marquardt of
 * Hipparchus 4. Standard error: {@code s^2 (J'J)^-1}.
 */
public final class CalibratePair {
  private static final int POSE = 6;
  private static final int LEAST_PAIRS = 3;
  private static final double[] STEP = {1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3};

  private final Lens first;
  private final Lens second;
  private final List<Both> both;
  private final int residuals;

  /** The target as both cameras saw it at one moment: the points that both saw, in one order. */
  record Both(Moment moment, List<TargetPoint> first, List<TargetPoint> second) {}

  private CalibratePair(Lens first, Lens second, List<Both> both) {
    this.first = first;
    this.second = second;
    this.both = both;
    this.residuals = 4 * both.stream().mapToInt(b -> b.first.size()).sum();
  }

  /**
   * The same moment seen by both cameras.
   *
   * @param first what the first camera's photo shows of the target
   * @param second what the second camera's photo shows of it
   */
  public record Moment(TargetSighting first, TargetSighting second) {}

  /**
   * Fits.
   *
   * @param first the first camera's lens
   * @param second the second camera's lens
   * @param moments moments at which both cameras photographed the target
   * @return how the cameras stand; nothing with under three moments at which both saw it, or where
   *     they do not tell it
   */
  public static Optional<PairFit> fit(Lens first, Lens second, List<Moment> moments) {
    return held(first, second, moments).map(Held::fit);
  }

  /** Fits with both lenses held; nothing as {@link #fit}. */
  static Optional<Held> held(Lens first, Lens second, List<Moment> moments) {
    List<Both> both =
        moments.stream().map(CalibratePair::both).filter(b -> b.first.size() >= 6).toList();
    List<StartPair> agreed =
        StartPair.agreed(both.stream().flatMap(b -> StartPair.of(first, second, b)).toList());
    if (agreed.size() < LEAST_PAIRS) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new CalibratePair(first, second, agreed.stream().map(StartPair::both).toList())
              .fit(agreed));
    } catch (MathRuntimeException runsAway) {
      return Optional.empty();
    }
  }

  /** A fit with both lenses held: how the cameras stand, and the moments that agree on it. */
  record Held(PairFit fit, ViewPose between, List<Both> both) {

    private static Held of(Told told, List<Both> both) {
      return new Held(fit(told, both), told.between, both);
    }

    List<Moment> moments() {
      return both.stream().map(Both::moment).toList();
    }

    /** Returns what another fit of the same moments tells. */
    PairFit told(Told told) {
      return fit(told, both);
    }

    private static PairFit fit(Told told, List<Both> both) {
      RowErrors rows = new RowErrors(told.first, told.second, told.between);
      both.forEach(b -> rows.take(b.first, b.second));
      return new PairFit(
          told.first,
          told.second,
          told.between.turnDeg(),
          told.between.shiftMm(),
          told.baselineErrorMm,
          told.rmsErrorPx,
          rows.rmsPx(),
          rows.worstPx(),
          both.stream().map(b -> b.moment.first.photo()).toList());
    }
  }

  /** Lenses, how the cameras stand, the baseline's standard error, root mean square miss. */
  record Told(
      Lens first, Lens second, ViewPose between, double baselineErrorMm, double rmsErrorPx) {}

  private static Both both(Moment moment) {
    Map<Integer, TargetPoint> byNumber =
        moment.second.points().stream()
            .collect(Collectors.toMap(TargetPoint::number, p -> p, (a, b) -> a));
    List<TargetPoint> seen =
        moment.first.points().stream().filter(p -> byNumber.containsKey(p.number())).toList();
    return new Both(moment, seen, seen.stream().map(p -> byNumber.get(p.number())).toList());
  }

  private Held fit(List<StartPair> agreed) {
    List<ViewPose> starts = agreed.stream().map(StartPair::pose).toList();
    ViewPose between = agreed.get(0).between();
    double[] best = minimum(between, starts);
    return result(between.moved(best, 0), moved(starts, best));
  }

  private double[] minimum(ViewPose between, List<ViewPose> starts) {
    double[] zero = new double[POSE * (1 + both.size())];
    return new LevenbergMarquardtOptimizer()
        .optimize(
            new LeastSquaresBuilder()
                .start(zero)
                .target(new double[residuals])
                .model(p -> model(between, starts, p))
                .maxEvaluations(400)
                .maxIterations(200)
                .build())
        .getPoint()
        .toArray();
  }

  private Pair<RealVector, RealMatrix> model(
      ViewPose between, List<ViewPose> starts, RealVector p) {
    double[] at = p.toArray();
    return new Pair<>(
        new ArrayRealVector(misses(between.moved(at, 0), moved(starts, at)), false),
        jacobian(between, starts, at));
  }

  private List<ViewPose> moved(List<ViewPose> starts, double[] at) {
    List<ViewPose> moved = new ArrayList<>();
    for (int v = 0; v < starts.size(); v++) {
      moved.add(starts.get(v).moved(at, POSE * (1 + v)));
    }
    return moved;
  }

  private double[] misses(ViewPose between, List<ViewPose> poses) {
    double[] out = new double[residuals];
    int row = 0;
    for (int v = 0; v < poses.size(); v++) {
      double[] some = misses(between, poses.get(v), both.get(v));
      System.arraycopy(some, 0, out, row, some.length);
      row += some.length;
    }
    return out;
  }

  private double[] misses(ViewPose between, ViewPose pose, Both seen) {
    double[] out = new double[4 * seen.first.size()];
    ViewPose other = pose.then(between);
    for (int i = 0; i < seen.first.size(); i++) {
      PointPx a = pose.toPhoto(first, seen.first.get(i));
      PointPx b = other.toPhoto(second, seen.second.get(i));
      out[4 * i] = a.xPx() - seen.first.get(i).seen().xPx();
      out[4 * i + 1] = a.yPx() - seen.first.get(i).seen().yPx();
      out[4 * i + 2] = b.xPx() - seen.second.get(i).seen().xPx();
      out[4 * i + 3] = b.yPx() - seen.second.get(i).seen().yPx();
    }
    return out;
  }

  /** Central differences; a moment's residuals depend on the pair and its own pose only. */
  private RealMatrix jacobian(ViewPose between, List<ViewPose> starts, double[] at) {
    double[][] j = new double[residuals][at.length];
    int row = 0;
    for (int v = 0; v < starts.size(); v++) {
      int rows = 4 * both.get(v).first.size();
      for (int c = 0; c < 2 * POSE; c++) {
        int column = c < POSE ? c : POSE * v + c;
        double[] up = at.clone();
        double[] down = at.clone();
        up[column] += STEP[c % POSE];
        down[column] -= STEP[c % POSE];
        double[] more = misses(between.moved(up, 0), pose(starts, v, up), both.get(v));
        double[] less = misses(between.moved(down, 0), pose(starts, v, down), both.get(v));
        for (int i = 0; i < rows; i++) {
          j[row + i][column] = (more[i] - less[i]) / (2 * STEP[c % POSE]);
        }
      }
      row += rows;
    }
    return MatrixUtils.createRealMatrix(j);
  }

  private static ViewPose pose(List<ViewPose> starts, int view, double[] at) {
    return starts.get(view).moved(at, POSE * (1 + view));
  }

  private Held result(ViewPose between, List<ViewPose> poses) {
    double rss = Arrays.stream(misses(between, poses)).map(v -> v * v).sum();
    double[] zero = new double[POSE * (1 + both.size())];
    double variance = rss / Math.max(1, residuals - zero.length);
    RealMatrix jacobian = jacobian(between, poses, zero).scalarMultiply(1 / Math.sqrt(variance));
    Told told =
        new Told(
            first,
            second,
            between,
            BaselineError.of(jacobian, 0, between),
            Math.sqrt(2 * rss / residuals));
    return Held.of(told, both);
  }
}
