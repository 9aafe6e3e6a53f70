// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import org.raftgauge.core.statistics.Ewma;
import org.raftgauge.core.statistics.EwmaRule;

/**
 * Puts values on a control chart: each against the median and spread of the values before it that
 * were in control, alone and as an exponentially weighted moving average.
 *
 * <p>A value is out where its distance from the level, in standard deviations, or the moving
 * average of these distances ({@link EwmaRule}) is over its limit. Values out of control never
 * enter the past, so that a fault is not learnt.
 *
 * <p>Source: NIST/SEMATECH e-Handbook, 6.3.2.4. Differs from it: a moving past, its level by the
 * median, so that slow growth of the crop is followed and one odd evening does not widen the
 * limits.
 */
public final class ControlChart {
  private static final double MAD_TO_SD = 1.4826;

  /** Widens limits told from n values by 1 + FEW / n; found by simulation of normal scatter. */
  private static final double FEW = 3;

  /** Standard deviations from the level within which a value is as it was. */
  private static final double STILL = 1;

  private final ControlRule rule;
  private final Deque<Double> past = new ArrayDeque<>();
  private Ewma average;

  private ControlChart(ControlRule rule) {
    this.rule = rule;
    this.average = new EwmaRule(rule.lambda(), rule.averageLimit()).start(0);
  }

  /**
   * Charts values.
   *
   * @param values in the order of time, finite
   * @param rule when a value is out of control
   * @return a point a value
   */
  public static List<ControlPoint> of(double[] values, ControlRule rule) {
    ControlChart chart = new ControlChart(rule);
    List<ControlPoint> points = new ArrayList<>();
    for (double value : values) {
      points.add(chart.next(value));
    }
    return points;
  }

  private ControlPoint next(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("value must be finite, got " + value);
    }
    if (past.size() < rule.least()) {
      past.add(value);
      return new ControlPoint(value, value, 0, ControlPoint.State.LEARNING);
    }
    double[] known = past.stream().mapToDouble(Double::doubleValue).toArray();
    double level = median(known);
    double spread = spread(known, level);
    double e = (value - level) / spread;
    average = average.next(e);
    // An average that still remembers a fault does not make a value near the level odd.
    boolean drifted = (average.isHigh(1) && e > STILL) || (average.isLow(1) && e < -STILL);
    if (!drifted) {
      average = held(average);
    }
    if (Math.abs(e) > rule.pointLimit() || drifted) {
      double side = Math.abs(e) > rule.pointLimit() ? e : average.average();
      average = held(average);
      ControlPoint.State state = side > 0 ? ControlPoint.State.HIGH : ControlPoint.State.LOW;
      return new ControlPoint(value, level, spread, state);
    }
    past.add(value);
    if (past.size() > rule.window()) {
      past.remove();
    }
    return new ControlPoint(value, level, spread, ControlPoint.State.IN_CONTROL);
  }

  /** Holds the average at its limit: one odd evening must not drag those after it over it. */
  private static Ewma held(Ewma average) {
    double limit = average.rule().halfWidth(average.n(), 1);
    double held = Math.max(-limit, Math.min(limit, average.average()));
    return new Ewma(average.rule(), average.target(), held, average.n());
  }

  /**
   * Returns the larger of two estimates of the standard deviation, by MAD and by the mean square,
   * widened for the number of values that it comes from: few values often scatter too little.
   */
  private double spread(double[] known, double level) {
    double[] off = Arrays.stream(known).map(v -> Math.abs(v - level)).toArray();
    double square = Arrays.stream(off).map(v -> v * v).average().orElse(0);
    double sd = Math.max(MAD_TO_SD * median(off), Math.sqrt(square));
    return Math.max(rule.leastSpread(), sd * (1 + FEW / known.length));
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }
}
