// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Places on a target where black meets white, near the points that were seen. */
final class TargetEdges {
  /** Share of a shape's size, or of the gap beside it, that a cut reaches to each side. */
  private static final double REACH = 0.4;

  private TargetEdges() {}

  /**
   * A cut across an edge.
   *
   * @param xMm its middle, mm
   * @param yMm its middle, mm
   * @param reachXMm from its middle to its end, mm
   * @param reachYMm from its middle to its end, mm
   */
  record Cut(double xMm, double yMm, double reachXMm, double reachYMm) {}

  /** Returns the cuts across the edges next to some points. */
  static List<Cut> of(CalibrationTarget target, List<TargetPoint> points) {
    return switch (target.shape()) {
      case CHESSBOARD -> sides(points, target.sizeMm(), REACH * target.sizeMm());
      case SQUARES ->
          sides(
              points,
              target.sizeMm(),
              REACH * Math.min(target.sizeMm(), target.pitchMm() - target.sizeMm()));
      case CIRCLES -> circles(centres(points), target);
      case STAGGERED_CIRCLES -> circles(points.stream().map(TargetEdges::xy).toList(), target);
    };
  }

  /** Cuts across the middles of sides: between points that lie a side apart along x or y. */
  private static List<Cut> sides(List<TargetPoint> points, double sideMm, double reachMm) {
    List<Cut> cuts = new ArrayList<>();
    for (TargetPoint a : points) {
      for (TargetPoint b : points) {
        double dx = b.xMm() - a.xMm();
        double dy = b.yMm() - a.yMm();
        double x = (a.xMm() + b.xMm()) / 2;
        double y = (a.yMm() + b.yMm()) / 2;
        if (Math.abs(dx - sideMm) < 1e-6 * sideMm && Math.abs(dy) < 1e-6 * sideMm) {
          cuts.add(new Cut(x, y, 0, reachMm));
        } else if (Math.abs(dy - sideMm) < 1e-6 * sideMm && Math.abs(dx) < 1e-6 * sideMm) {
          cuts.add(new Cut(x, y, reachMm, 0));
        }
      }
    }
    return cuts;
  }

  private static double[] xy(TargetPoint p) {
    return new double[] {p.xMm(), p.yMm()};
  }

  /** A circle of the regular grid gives four points about its centre. */
  private static List<double[]> centres(List<TargetPoint> points) {
    Map<Integer, List<TargetPoint>> byCircle = new HashMap<>();
    points.forEach(p -> byCircle.computeIfAbsent(p.number() / 4, n -> new ArrayList<>()).add(p));
    return byCircle.values().stream()
        .filter(four -> four.size() == 4)
        .map(
            four ->
                new double[] {
                  four.stream().mapToDouble(TargetPoint::xMm).average().orElseThrow(),
                  four.stream().mapToDouble(TargetPoint::yMm).average().orElseThrow()
                })
        .toList();
  }

  private static List<Cut> circles(List<double[]> centres, CalibrationTarget target) {
    double radius = target.sizeMm() / 2;
    double reach = REACH * Math.min(radius, target.pitchMm() - target.sizeMm());
    List<Cut> cuts = new ArrayList<>();
    for (double[] c : centres) {
      for (int i = 0; i < 4; i++) {
        double cos = Math.cos(i * Math.PI / 2);
        double sin = Math.sin(i * Math.PI / 2);
        cuts.add(new Cut(c[0] + radius * cos, c[1] + radius * sin, reach * cos, reach * sin));
      }
    }
    return cuts;
  }
}
