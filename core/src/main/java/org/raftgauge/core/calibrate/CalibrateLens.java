// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.PointPx;

/**
 * Fits a lens to photos of a flat target: least squares of the distances between the points seen
 * and foretold, over the lens and the target's pose in every photo at once.
 *
 * <p>Source: Zhang 2000, IEEE PAMI 22:1330-1334, section 3.2, with Brown's terms in OpenCV's order;
 * Levenberg-Marquardt of Hipparchus 4. Standard errors: {@code s^2 (J'J)^-1}, s^2 the residual
 * variance.
 */
public final class CalibrateLens {
  private static final int LEAST_VIEWS = 3;
  private static final int POSE = 6;
  private static final double[] POSE_STEP = {1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3};
  private static final int ROUNDS = 2;

  private final List<TargetSighting> sightings;
  private final LensParameters parameters;
  private final int residuals;

  private CalibrateLens(List<TargetSighting> sightings, LensParameters parameters) {
    this.sightings = sightings;
    this.parameters = parameters;
    this.residuals = 2 * sightings.stream().mapToInt(s -> s.points().size()).sum();
  }

  /**
   * Fits a lens to every photo given.
   *
   * @param sightings photos of one size that show the target, at least three
   * @param terms what to fit besides fx, cx and cy
   * @return the lens, or why there is none
   */
  public static LensResult fit(List<TargetSighting> sightings, Set<LensTerm> terms) {
    if (sightings.size() < LEAST_VIEWS) {
      return new NoLens(
          (sightings.size() == 1
                  ? "there is 1 usable photo"
                  : "there are " + sightings.size() + " usable photos")
              + " of the target; take at least 10, from different sides");
    }
    Optional<StartLens> start = StartLens.of(sightings);
    if (start.isEmpty()) {
      return new NoLens("the target's points lie in line in a photo; take it again");
    }
    try {
      return new CalibrateLens(sightings, new LensParameters(terms)).fit(start.get());
    } catch (MathRuntimeException runsAway) {
      return new NoLens(
          "the photos are too alike to tell a lens by; hold the target at 30 to 45 degrees to the"
              + " camera in some of them");
    }
  }

  private LensFit fit(StartLens start) {
    Lens lens = start.lens();
    List<ViewPose> poses = start.poses();
    for (int round = 0; round < ROUNDS; round++) {
      double[] best = minimum(lens, poses);
      lens = parameters.lens(best);
      poses = moved(poses, best);
    }
    return result(lens, poses);
  }

  private double[] minimum(Lens lens, List<ViewPose> poses) {
    double[] start = new double[parameters.count() + POSE * poses.size()];
    System.arraycopy(parameters.of(lens), 0, start, 0, parameters.count());
    return new LevenbergMarquardtOptimizer()
        .optimize(
            new LeastSquaresBuilder()
                .start(start)
                .target(new double[residuals])
                .model(p -> model(poses, p.toArray()))
                .maxEvaluations(1000)
                .maxIterations(300)
                .build())
        .getPoint()
        .toArray();
  }

  private List<ViewPose> moved(List<ViewPose> poses, double[] values) {
    List<ViewPose> moved = new ArrayList<>();
    for (int v = 0; v < poses.size(); v++) {
      moved.add(poses.get(v).moved(values, parameters.count() + POSE * v));
    }
    return moved;
  }

  private Pair<RealVector, RealMatrix> model(List<ViewPose> poses, double[] at) {
    return new Pair<>(
        new ArrayRealVector(misses(poses, at), false),
        MatrixUtils.createRealMatrix(jacobian(poses, at)));
  }

  private double[] misses(List<ViewPose> poses, double[] at) {
    double[] out = new double[residuals];
    int row = 0;
    Lens lens = parameters.lens(at);
    List<ViewPose> now = moved(poses, at);
    for (int v = 0; v < poses.size(); v++) {
      double[] some = misses(now.get(v), lens, sightings.get(v));
      System.arraycopy(some, 0, out, row, some.length);
      row += some.length;
    }
    return out;
  }

  private static double[] misses(ViewPose pose, Lens lens, TargetSighting sighting) {
    double[] out = new double[2 * sighting.points().size()];
    int row = 0;
    for (TargetPoint p : sighting.points()) {
      PointPx q = pose.toPhoto(lens, p);
      out[row++] = q.xPx() - p.seen().xPx();
      out[row++] = q.yPx() - p.seen().yPx();
    }
    return out;
  }

  /** Central differences; a view's residuals depend on the lens and its own pose only. */
  private double[][] jacobian(List<ViewPose> poses, double[] at) {
    double[][] j = new double[residuals][at.length];
    int row = 0;
    for (int v = 0; v < poses.size(); v++) {
      int first = parameters.count() + POSE * v;
      for (int c = 0; c < parameters.count(); c++) {
        column(new Cell(poses.get(v), v, row), at, new Step(c, parameters.step(c)), j);
      }
      for (int c = 0; c < POSE; c++) {
        column(new Cell(poses.get(v), v, row), at, new Step(first + c, POSE_STEP[c]), j);
      }
      row += 2 * sightings.get(v).points().size();
    }
    return j;
  }

  /** A view and the row of its first residual. */
  private record Cell(ViewPose pose, int view, int row) {}

  /** Which number is moved, and how far. */
  private record Step(int parameter, double by) {}

  private void column(Cell cell, double[] at, Step step, double[][] j) {
    TargetSighting sighting = sightings.get(cell.view());
    int first = parameters.count() + POSE * cell.view();
    double[] moved = at.clone();
    moved[step.parameter()] = at[step.parameter()] + step.by();
    double[] up = misses(cell.pose().moved(moved, first), parameters.lens(moved), sighting);
    moved[step.parameter()] = at[step.parameter()] - step.by();
    double[] down = misses(cell.pose().moved(moved, first), parameters.lens(moved), sighting);
    for (int i = 0; i < up.length; i++) {
      j[cell.row() + i][step.parameter()] = (up[i] - down[i]) / (2 * step.by());
    }
  }

  private LensFit result(Lens lens, List<ViewPose> poses) {
    double[] at = new double[parameters.count() + POSE * poses.size()];
    System.arraycopy(parameters.of(lens), 0, at, 0, parameters.count());
    double rss = 0;
    for (double r : misses(poses, at)) {
      rss += r * r;
    }
    List<ViewFit> views = new ArrayList<>();
    for (int v = 0; v < poses.size(); v++) {
      views.add(view(lens, poses.get(v), sightings.get(v)));
    }
    double mean =
        views.stream()
            .flatMap(v -> v.misses().stream())
            .mapToDouble(m -> m.seen().distancePx(m.foretold()))
            .average()
            .orElse(0);
    return new LensFit(
        lens,
        errors(jacobian(poses, at), rss),
        sightings.get(0).widthPx(),
        sightings.get(0).heightPx(),
        views,
        mean,
        Math.sqrt(2 * rss / residuals));
  }

  private LensErrors errors(double[][] jacobian, double rss) {
    RealMatrix j = MatrixUtils.createRealMatrix(jacobian);
    RealMatrix normal = j.transposeMultiply(j);
    int n = normal.getRowDimension();
    double[] scale = new double[n];
    for (int i = 0; i < n; i++) {
      scale[i] = 1 / Math.sqrt(normal.getEntry(i, i));
    }
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < n; k++) {
        normal.multiplyEntry(i, k, scale[i] * scale[k]);
      }
    }
    RealMatrix inverse = new CholeskyDecomposition(normal, 1e-9, 1e-13).getSolver().getInverse();
    double variance = rss / Math.max(1, residuals - n);
    double[] errors = new double[parameters.count()];
    for (int i = 0; i < errors.length; i++) {
      errors[i] = scale[i] * Math.sqrt(variance * inverse.getEntry(i, i));
    }
    return parameters.errors(errors);
  }

  private static ViewFit view(Lens lens, ViewPose pose, TargetSighting sighting) {
    List<ViewFit.Miss> misses = new ArrayList<>();
    double sum = 0;
    double squares = 0;
    for (TargetPoint p : sighting.points()) {
      PointPx foretold = pose.toPhoto(lens, p);
      double miss = foretold.distancePx(p.seen());
      misses.add(new ViewFit.Miss(p.seen(), foretold));
      sum += miss;
      squares += miss * miss;
    }
    int n = misses.size();
    return new ViewFit(
        sighting.photo(),
        sum / n,
        Math.sqrt(squares / n),
        pose.tiltDeg(),
        pose.distanceMm(),
        misses);
  }
}
