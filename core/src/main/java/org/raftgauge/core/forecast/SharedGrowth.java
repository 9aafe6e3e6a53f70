// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.PlantCurve;

/**
 * The growth that a cohort's plants share from when they were last seen open.
 *
 * <p>Weather so far bends a curve and with it what it foretells, mostly downwards, for a curve that
 * levels off can do so early but not accelerate. So the growth by the plants' own curves counts as
 * one cycle beside past cycles' growth between the same ages, and the mean is taken. Its error is
 * how cycles differ in that growth, weather included, pooled with 12 % of the growth, which counts
 * for four cycles: working values, for three cycles tell little of a spread. Without past cycles
 * the curve's own error stands, and weather comes on top.
 */
final class SharedGrowth {
  private static final double USUAL_SHARE = 0.12;
  private static final double USUAL_CYCLES = 4;

  private final CohortCurve curve;
  private final List<PlantCurve> plants;
  private final double open;
  private final Optional<Planting> planting;

  /**
   * Prepares.
   *
   * @param curve of the cohort
   * @param plants their own curves
   * @param open age at which they were last seen open, on average
   * @param planting tells which past cycles; nothing for plants that grow again after a cut
   */
  SharedGrowth(
      CohortCurve curve, List<PlantCurve> plants, double open, Optional<Planting> planting) {
    this.curve = curve;
    this.plants = plants;
    this.open = open;
    this.planting = planting;
  }

  boolean hasHistory(FinishedCycles past) {
    return !cycles(past, open + 1).isEmpty();
  }

  private List<Double> cycles(FinishedCycles past, double age) {
    return planting.map(p -> past.growth(p, open, age)).orElse(List.of());
  }

  /** Returns what is added to the plants' own curves at an age. */
  double shift(FinishedCycles past, double age) {
    List<Double> cycles = cycles(past, age);
    if (cycles.isEmpty() || age <= open) {
      return 0;
    }
    double own =
        plants.stream()
            .mapToDouble(p -> p.lnArea(age).mean() - p.lnArea(open).mean())
            .average()
            .orElse(0);
    return (mean(cycles) - own) * cycles.size() / (cycles.size() + 1);
  }

  /** Returns the standard deviation of the shared growth up to an age. */
  double sd(FinishedCycles past, double age) {
    if (age <= open) {
      return 0;
    }
    List<Double> cycles = cycles(past, age);
    if (cycles.isEmpty()) {
      return curve.lnGrowth(open, age).sd();
    }
    double mean = mean(cycles);
    double usual = USUAL_SHARE * mean;
    double squares = cycles.stream().mapToDouble(g -> (g - mean) * (g - mean)).sum();
    double n = cycles.size();
    double variance = (squares + USUAL_CYCLES * usual * usual) / (n - 1 + USUAL_CYCLES);
    return Math.sqrt(variance * (1 + 1 / n));
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(v -> v).average().orElse(0);
  }
}
