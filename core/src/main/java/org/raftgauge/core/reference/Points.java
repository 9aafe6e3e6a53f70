// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Medians, residuals and deviations of the photos of past cycles. */
final class Points {
  /** Parts of a cycle over which its shape is compared with the reference. */
  private static final int PARTS = 6;

  private Points() {}

  static DoubleStream days(PastCycle cycle) {
    return IntStream.range(0, cycle.size()).mapToDouble(cycle::dat);
  }

  static DoubleStream areas(PastCycle cycle) {
    return IntStream.range(0, cycle.size()).mapToDouble(cycle::lnArea);
  }

  static double[] residuals(PastCycle cycle, SmoothMedian median) {
    return IntStream.range(0, cycle.size())
        .mapToDouble(i -> cycle.lnArea(i) - median.at(cycle.dat(i)))
        .toArray();
  }

  /** Returns the median residual of each part of a cycle, its common shift taken out. */
  static List<Double> shape(PastCycle cycle, double[] off, double shift) {
    double lo = days(cycle).min().orElse(0);
    double width = Math.max(days(cycle).max().orElse(0) - lo, 1e-9) / PARTS;
    List<Double> out = new ArrayList<>();
    for (int part = 0; part < PARTS; part++) {
      double from = lo + part * width;
      double to = part == PARTS - 1 ? Double.POSITIVE_INFINITY : from + width;
      double[] inside =
          IntStream.range(0, off.length)
              .filter(i -> cycle.dat(i) >= from && cycle.dat(i) < to)
              .mapToDouble(i -> off[i] - shift)
              .toArray();
      if (inside.length > 0) {
        out.add(median(inside));
      }
    }
    return out;
  }

  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }

  static double sd(List<Double> values) {
    double mean = values.stream().mapToDouble(v -> v).average().orElse(0);
    double sum = values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
    return Math.sqrt(sum / Math.max(1, values.size() - 1));
  }

  static double rootMeanSquare(List<Double> values) {
    return Math.sqrt(values.stream().mapToDouble(v -> v * v).average().orElse(0));
  }
}
