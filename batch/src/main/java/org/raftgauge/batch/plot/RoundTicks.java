// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * The ends of an axis in round numbers, so that its marks are round, also where all values are one.
 *
 * @param min the lower end
 * @param max the upper end, above the lower
 */
record RoundTicks(double min, double max) {
  /** Marks on an axis, about. */
  private static final double MARKS = 8;

  private static final double[] ROUND = {1, 2, 5, 10};

  /** Finds the ends for values; those that are not finite do not count. */
  static RoundTicks of(Chart.Scale scale, List<Double> values) {
    double least = finite(values).min().orElse(1);
    double most = finite(values).max().orElse(1);
    return switch (scale) {
      case LINEAR -> linear(least, most);
      case LOG -> new RoundTicks(below(least), above(most));
    };
  }

  private static DoubleStream finite(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).filter(Double::isFinite);
  }

  private static RoundTicks linear(double least, double most) {
    double step = above((most - least) / MARKS);
    if (most - least < 1e-9) {
      step = above(Math.max(Math.abs(most), 1) / 4);
    }
    double min = Math.floor(least / step + 1e-9) * step;
    double max = Math.ceil(most / step - 1e-9) * step;
    return new RoundTicks(min, max > min ? max : min + step);
  }

  /** Returns the least 1, 2 or 5 times a power of ten that is not under a value above 0. */
  private static double above(double value) {
    if (!(value > 0)) {
      return 1;
    }
    double ten = Math.pow(10, Math.floor(Math.log10(value) + 1e-9));
    for (double round : ROUND) {
      if (round * ten >= value * (1 - 1e-9)) {
        return round * ten;
      }
    }
    return 10 * ten;
  }

  /** Returns the largest such number under a value. */
  private static double below(double value) {
    double ten = Math.pow(10, Math.floor(Math.log10(value) + 1e-9));
    double found = ten / 2;
    for (double round : ROUND) {
      found = round * ten < value * (1 - 1e-9) ? round * ten : found;
    }
    return found;
  }

  /** Words a mark of a logarithmic axis: 1, 2 and 5 times powers of ten have numbers. */
  static String ofLog(double value) {
    double share = value / Math.pow(10, Math.floor(Math.log10(value) + 1e-9));
    for (double round : ROUND) {
      if (Math.abs(share - round) < 1e-6) {
        return plain(value);
      }
    }
    return " ";
  }

  /** Words a number without an exponent and without noise in its last digits. */
  static String plain(double value) {
    return new BigDecimal(value).round(new MathContext(9)).stripTrailingZeros().toPlainString();
  }
}
