// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
 * Fits two lenses and how their cameras stand to each other at once, to all photos of a target that
 * either took: a moment that both saw tells of both lenses, so that the error of the baseline is
 * that of the lenses too.
 *
 * <p>Source: Hartley and Zisserman 2004, section 18.1 (bundle adjustment); Levenberg-Marquardt of
 * Hipparchus 4.
 */
public final class CalibrateTogether {
  private static final int POSE = 6;
  private static final double[] POSE_STEP = {1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3};

  private final LensParameters parameters;
  private final List<ViewPose> starts = new ArrayList<>();
  private final List<Block> blocks = new ArrayList<>();
  private ViewPose between;

  private CalibrateTogether(Set<LensTerm> terms) {
    this.parameters = new LensParameters(terms);
  }

  /**
   * What one camera saw, and the lens that it alone tells.
   *
   * @param lens the lens, to begin with
   * @param sightings the photos to fit to, each showing the target
   */
  public record Camera(Lens lens, List<TargetSighting> sightings) {

    /** Copies the list. */
    public Camera {
      sightings = List.copyOf(sightings);
    }
  }

  /** One photo: whose, of which place of the target, and its points. */
  private record Block(boolean ofSecond, int view, boolean moment, List<TargetPoint> points) {}

  /**
   * Fits.
   *
   * @param first the first camera
   * @param second the second camera
   * @param moments photos of both of the same moments
   * @param terms what to fit of each lens besides fx, cx and cy
   * @return both lenses and how the cameras stand; nothing with under three moments on which both
   *     agree, or where the photos do not tell it
   */
  public static Optional<PairFit> fit(
      Camera first, Camera second, List<CalibratePair.Moment> moments, Set<LensTerm> terms) {
    Optional<CalibratePair.Held> held = CalibratePair.held(first.lens, second.lens, moments);
    if (held.isEmpty()) {
      return Optional.empty();
    }
    CalibrateTogether all = new CalibrateTogether(terms);
    all.between = held.get().between();
    Map<TargetSighting, Integer> places = new HashMap<>();
    for (TargetSighting sighting : first.sightings) {
      StartPose.of(first.lens, sighting.points())
          .ifPresent(pose -> places.put(sighting, all.add(pose, false, sighting)));
    }
    for (TargetSighting sighting : second.sightings) {
      Optional<Integer> shared =
          held.get().moments().stream()
              .filter(m -> m.second().equals(sighting))
              .findFirst()
              .map(m -> places.get(m.first()));
      if (shared.isPresent()) {
        all.blocks.add(new Block(true, shared.get(), true, sighting.points()));
      } else {
        StartPose.of(second.lens, sighting.points())
            .ifPresent(pose -> all.add(pose, true, sighting));
      }
    }
    try {
      return Optional.of(all.fit(first.lens, second.lens, held.get()));
    } catch (MathRuntimeException runsAway) {
      return Optional.empty();
    }
  }

  private int add(ViewPose pose, boolean ofSecond, TargetSighting sighting) {
    starts.add(pose);
    blocks.add(new Block(ofSecond, starts.size() - 1, false, sighting.points()));
    return starts.size() - 1;
  }

  private PairFit fit(Lens first, Lens second, CalibratePair.Held held) {
    int n = parameters.count();
    double[] start = new double[2 * n + POSE * (1 + starts.size())];
    System.arraycopy(parameters.of(first), 0, start, 0, n);
    System.arraycopy(parameters.of(second), 0, start, n, n);
    double[] best =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(start)
                    .target(new double[residuals()])
                    .model(this::model)
                    .maxEvaluations(400)
                    .maxIterations(200)
                    .build())
            .getPoint()
            .toArray();
    double rss = Arrays.stream(misses(best)).map(v -> v * v).sum();
    double variance = rss / Math.max(1, residuals() - best.length);
    ViewPose stand = between.moved(best, 2 * n);
    return held.told(
        new CalibratePair.Told(
            lens(best, false),
            lens(best, true),
            stand,
            BaselineError.of(jacobian(best).scalarMultiply(1 / Math.sqrt(variance)), 2 * n, stand),
            Math.sqrt(2 * rss / residuals())));
  }

  private int residuals() {
    return 2 * blocks.stream().mapToInt(b -> b.points.size()).sum();
  }

  private Lens lens(double[] at, boolean ofSecond) {
    int n = parameters.count();
    return parameters.lens(ofSecond ? Arrays.copyOfRange(at, n, 2 * n) : at);
  }

  private Pair<RealVector, RealMatrix> model(RealVector p) {
    double[] at = p.toArray();
    return new Pair<>(new ArrayRealVector(misses(at), false), jacobian(at));
  }

  private double[] misses(double[] at) {
    double[] out = new double[residuals()];
    int row = 0;
    for (Block block : blocks) {
      double[] some = misses(block, at);
      System.arraycopy(some, 0, out, row, some.length);
      row += some.length;
    }
    return out;
  }

  private double[] misses(Block block, double[] at) {
    Lens lens = lens(at, block.ofSecond);
    ViewPose view = starts.get(block.view).moved(at, pose(block));
    ViewPose pose = block.moment ? view.then(between.moved(at, 2 * parameters.count())) : view;
    double[] out = new double[2 * block.points.size()];
    for (int i = 0; i < block.points.size(); i++) {
      PointPx q = pose.toPhoto(lens, block.points.get(i));
      out[2 * i] = q.xPx() - block.points.get(i).seen().xPx();
      out[2 * i + 1] = q.yPx() - block.points.get(i).seen().yPx();
    }
    return out;
  }

  private int pose(Block block) {
    return 2 * parameters.count() + POSE * (1 + block.view);
  }

  /** Central differences by the numbers that a photo depends on. */
  private RealMatrix jacobian(double[] at) {
    double[][] j = new double[residuals()][at.length];
    int n = parameters.count();
    int row = 0;
    for (Block block : blocks) {
      for (int c = 0; c < n; c++) {
        column(new Cell(block, row, (block.ofSecond ? n : 0) + c), at, parameters.step(c), j);
      }
      for (int c = 0; c < POSE; c++) {
        column(new Cell(block, row, pose(block) + c), at, POSE_STEP[c], j);
        if (block.moment) {
          column(new Cell(block, row, 2 * n + c), at, POSE_STEP[c], j);
        }
      }
      row += 2 * block.points.size();
    }
    return MatrixUtils.createRealMatrix(j);
  }

  /** A photo, the row of its first residual, and the number that is moved. */
  private record Cell(Block block, int row, int column) {}

  private void column(Cell cell, double[] at, double step, double[][] j) {
    double[] moved = at.clone();
    moved[cell.column] = at[cell.column] + step;
    double[] up = misses(cell.block, moved);
    moved[cell.column] = at[cell.column] - step;
    double[] down = misses(cell.block, moved);
    for (int i = 0; i < up.length; i++) {
      j[cell.row + i][cell.column] = (up[i] - down[i]) / (2 * step);
    }
  }
}
