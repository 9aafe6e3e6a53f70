// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Measures the blur of a target's edges: along cuts across them, the distance between a quarter and
 * three quarters of the step in linear light, which for a normal blur is 1.349 standard deviations.
 * Of all cuts the third quartile counts, so that motion, which blurs one direction only, is seen.
 */
final class EdgeBlur {
  private static final int SAMPLES = 61;
  private static final int PLATEAU = 10;
  private static final double QUARTILES_PER_SD = 1.349;

  /** Steps smaller than that, in linear light, are no black on white. */
  private static final double LEAST_STEP = 0.04;

  private static final int LEAST_CUTS = 8;
  private static final double LEAST_REACH_PX = 3;

  private EdgeBlur() {}

  /** Returns the blur, px; empty where too few edges are large enough to tell. */
  static OptionalDouble of(RgbImage image, CalibrationTarget target, List<TargetPoint> points) {
    Optional<TargetMap> map = TargetMap.through(points);
    if (map.isEmpty()) {
      return OptionalDouble.empty();
    }
    LinearLight light = LinearLight.of(image);
    List<Double> widths = new ArrayList<>();
    for (TargetEdges.Cut cut : TargetEdges.of(target, points)) {
      widthPx(light, map.get(), cut).ifPresent(widths::add);
    }
    if (widths.size() < LEAST_CUTS) {
      return OptionalDouble.empty();
    }
    widths.sort(null);
    return OptionalDouble.of(widths.get(3 * widths.size() / 4) / QUARTILES_PER_SD);
  }

  private static OptionalDouble widthPx(LinearLight light, TargetMap map, TargetEdges.Cut cut) {
    PointPx from = map.toPhoto(cut.xMm() - cut.reachXMm(), cut.yMm() - cut.reachYMm());
    PointPx to = map.toPhoto(cut.xMm() + cut.reachXMm(), cut.yMm() + cut.reachYMm());
    double length = from.distancePx(to);
    if (!light.has(from) || !light.has(to) || length < 2 * LEAST_REACH_PX) {
      return OptionalDouble.empty();
    }
    double[] step = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double s = i / (SAMPLES - 1.0);
      step[i] =
          light.at(
              from.xPx() + s * (to.xPx() - from.xPx()), from.yPx() + s * (to.yPx() - from.yPx()));
    }
    double low = median(Arrays.copyOf(step, PLATEAU));
    double high = median(Arrays.copyOfRange(step, SAMPLES - PLATEAU, SAMPLES));
    if (Math.abs(high - low) < LEAST_STEP) {
      return OptionalDouble.empty();
    }
    double quarter = crossing(step, low + 0.25 * (high - low), high > low);
    double three = crossing(step, low + 0.75 * (high - low), high > low);
    return OptionalDouble.of(Math.abs(three - quarter) / (SAMPLES - 1) * length);
  }

  /** Returns where the step first reaches a level, in samples. */
  private static double crossing(double[] step, double level, boolean rises) {
    for (int i = 1; i < step.length; i++) {
      if (rises ? step[i] >= level : step[i] <= level) {
        double d = step[i] - step[i - 1];
        return d == 0 ? i : i - 1 + (level - step[i - 1]) / d;
      }
    }
    return step.length - 1;
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    return (values[(values.length - 1) / 2] + values[values.length / 2]) / 2;
  }
}
