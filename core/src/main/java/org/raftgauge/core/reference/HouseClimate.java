// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.book.ClimateDay;

/**
 * The house's daily temperatures as degree-days: of the rows of a day those of the whole house, or
 * else the mean over its ponds.
 */
public final class HouseClimate {
  /** A book without temperatures. */
  public static final HouseClimate NONE = new HouseClimate(LocalDate.EPOCH, new double[0]);

  /** Temperature under which leafy greens do not grow, degrees C; common practice, no source. */
  private static final double BASE_C = 4;

  /**
   * Days over which the last temperature stands in for those not written; a verdict's yardstick is
   * made anew as often.
   */
  private static final long LONGEST_GAP_DAYS = 7;

  private final LocalDate first;

  /** Degree-days from the first day to the start of each; missing days add nothing. */
  private final double[] sums;

  /** Missing days before each. */
  private final int[] gaps;

  private HouseClimate(LocalDate first, double[] meanC) {
    this.first = first;
    double[] known = new double[meanC.length];
    this.gaps = new int[meanC.length + 1];
    for (int i = 0; i < meanC.length; i++) {
      boolean missing = Double.isNaN(meanC[i]);
      known[i] = missing ? BASE_C : meanC[i];
      gaps[i + 1] = gaps[i] + (missing ? 1 : 0);
    }
    this.sums = new double[meanC.length + 1];
    System.arraycopy(ThermalTime.degreeDays(known, BASE_C), 0, sums, 1, known.length);
  }

  /**
   * Takes the days that have a temperature.
   *
   * @param days any order
   */
  public static HouseClimate of(List<ClimateDay> days) {
    NavigableMap<LocalDate, Double> mean = means(days);
    if (mean.isEmpty()) {
      return NONE;
    }
    LocalDate from = mean.firstKey();
    long length = ChronoUnit.DAYS.between(from, mean.lastKey()) + 1 + LONGEST_GAP_DAYS;
    double[] meanC = new double[(int) length];
    for (int i = 0; i < meanC.length; i++) {
      LocalDate day = from.plusDays(i);
      Map.Entry<LocalDate, Double> last = mean.floorEntry(day);
      boolean near = !last.getKey().plusDays(LONGEST_GAP_DAYS).isBefore(day);
      meanC[i] = near ? last.getValue() : Double.NaN;
    }
    return new HouseClimate(from, meanC);
  }

  private static NavigableMap<LocalDate, Double> means(List<ClimateDay> days) {
    NavigableMap<LocalDate, List<ClimateDay>> told = new TreeMap<>();
    for (ClimateDay day : days) {
      if (day.meanAirC().isPresent()) {
        told.computeIfAbsent(day.date(), d -> new ArrayList<>()).add(day);
      }
    }
    NavigableMap<LocalDate, Double> mean = new TreeMap<>();
    told.forEach(
        (date, rows) -> {
          boolean house = rows.stream().anyMatch(r -> r.pond().isEmpty());
          mean.put(
              date,
              rows.stream()
                  .filter(r -> !house || r.pond().isEmpty())
                  .mapToDouble(r -> r.meanAirC().getAsDouble())
                  .average()
                  .orElseThrow());
        });
    return mean;
  }

  /**
   * Returns the degree-days of a plant over 4 degrees C.
   *
   * @param since the day that its age counts from
   * @param ageDays its age, days, at least 0
   * @return K d; empty where a day of its life has no temperature, nor one of the seven before it
   */
  public Optional<Double> degreeDays(LocalDate since, double ageDays) {
    long from = ChronoUnit.DAYS.between(first, since);
    double to = from + ageDays;
    if (from < 0 || ageDays < 0 || to >= sums.length - 1) {
      return Optional.empty();
    }
    int day = (int) to;
    boolean whole = gaps[day + 1] == gaps[(int) from];
    double sum = sums[day] + (to - day) * (sums[day + 1] - sums[day]);
    return whole ? Optional.of(sum - sums[(int) from]) : Optional.empty();
  }
}
