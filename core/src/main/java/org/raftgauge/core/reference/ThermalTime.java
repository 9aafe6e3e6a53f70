// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Degree-days, and whether a crop's curves run better on them than on days. */
public final class ThermalTime {
  private ThermalTime() {}

  /** What a curve runs on. */
  public enum Axis {
    /** Days after transplant. */
    DAYS,
    /** Degree-days after transplant. */
    DEGREE_DAYS
  }

  /**
   * Which axis foretells a cycle better from the others.
   *
   * @param axis degree-days only where their error is the smaller
   * @param errorOnDays root mean square error of a left-out cycle's ln area on days
   * @param errorOnDegreeDays the same on degree-days
   */
  public record AxisChoice(Axis axis, double errorOnDays, double errorOnDegreeDays) {}

  /**
   * Sums degree-days.
   *
   * <p>{@code sum max(0, mean - base)}: averaging method, floor 0.
   *
   * @param meanC daily mean air temperature, degrees C, day 0 first
   * @param baseC temperature under which the crop does not grow, degrees C
   * @return degree-days (K d) at the end of each day, same length
   */
  public static double[] degreeDays(double[] meanC, double baseC) {
    double[] out = new double[meanC.length];
    double sum = 0;
    for (int i = 0; i < meanC.length; i++) {
      if (!Double.isFinite(meanC[i])) {
        throw new IllegalArgumentException("meanC must be finite, got " + meanC[i]);
      }
      sum += Math.max(0, meanC[i] - baseC);
      out[i] = sum;
    }
    return out;
  }

  /**
   * Chooses by leaving out one cycle after another.
   *
   * @param onDays past cycles on days
   * @param onDegreeDays the same cycles, the same photos in the same order, on degree-days
   * @return empty under three cycles
   */
  public static Optional<AxisChoice> choose(List<PastCycle> onDays, List<PastCycle> onDegreeDays) {
    if (onDays.size() != onDegreeDays.size()) {
      throw new IllegalArgumentException(
          "onDegreeDays must have " + onDays.size() + " cycles, got " + onDegreeDays.size());
    }
    if (onDays.size() < SmoothReference.FEWEST_CYCLES) {
      return Optional.empty();
    }
    double days = error(onDays);
    double degreeDays = error(onDegreeDays);
    Axis axis = degreeDays < days ? Axis.DEGREE_DAYS : Axis.DAYS;
    return Optional.of(new AxisChoice(axis, days, degreeDays));
  }

  private static double error(List<PastCycle> cycles) {
    double sum = 0;
    for (int left = 0; left < cycles.size(); left++) {
      List<PastCycle> others = new ArrayList<>(cycles);
      PastCycle out = others.remove(left);
      SmoothMedian median =
          SmoothMedian.of(
              others.stream().flatMapToDouble(Points::days).toArray(),
              others.stream().flatMapToDouble(Points::areas).toArray());
      double squares = 0;
      for (double r : Points.residuals(out, median)) {
        squares += r * r;
      }
      sum += squares / out.size();
    }
    return Math.sqrt(sum / cycles.size());
  }
}
