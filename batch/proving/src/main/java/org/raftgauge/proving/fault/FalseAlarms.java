// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.station.CheckStation;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.core.station.StationFault;
import org.raftgauge.core.station.StationSign;

/**
 * Counts false alarms over station-years made of usual evenings.
 *
 * <p>Years are drawn by a moving-block bootstrap (Künsch 1989): blocks of a week of one station's
 * evenings running, each station's median taken out, so that scatter from evening to evening and
 * over a week stay as they were.
 */
final class FalseAlarms {
  private static final int BLOCK = 7;
  private static final int YEAR = 365;

  private final List<List<StationEvening>> usual;
  private final Random random;

  private FalseAlarms(List<List<StationEvening>> usual, Random random) {
    this.usual = usual;
    this.random = random;
  }

  /**
   * What was counted.
   *
   * @param years station-years
   * @param alarms times that anything was said after an evening on which nothing was
   * @param holds evenings whose photos were held
   * @param bySign alarms by sign
   */
  record Count(double years, int alarms, int holds, Map<String, Integer> bySign) {}

  /** Counts over drawn years. */
  static Count drawn(List<List<StationEvening>> usual, int years, long seed) {
    FalseAlarms alarms = new FalseAlarms(usual, new Random(seed));
    Count sum = new Count(0, 0, 0, new TreeMap<>());
    for (int year = 0; year < years; year++) {
      sum = count(alarms.year(), sum);
    }
    return sum;
  }

  /** Counts over the usual evenings themselves. */
  static Count rendered(List<List<StationEvening>> usual) {
    Count sum = new Count(0, 0, 0, new TreeMap<>());
    for (List<StationEvening> season : usual) {
      sum = count(season, sum);
    }
    return sum;
  }

  private static Count count(List<StationEvening> evenings, Count before) {
    int alarms = before.alarms();
    int holds = before.holds();
    Set<StationSign> last = new HashSet<>();
    for (List<StationFault> faults : CheckStation.byEvening(evenings).values()) {
      Set<StationSign> now = new HashSet<>();
      faults.forEach(f -> now.add(f.sign()));
      alarms += !now.isEmpty() && last.isEmpty() ? 1 : 0;
      now.stream()
          .filter(s -> !last.contains(s))
          .forEach(s -> before.bySign().merge(s.words(), 1, Integer::sum));
      holds += faults.stream().anyMatch(StationFault::holds) ? 1 : 0;
      last.clear();
      last.addAll(now);
    }
    double years = before.years() + (double) evenings.size() / YEAR;
    return new Count(years, alarms, holds, before.bySign());
  }

  private List<StationEvening> year() {
    List<StationEvening> year = new ArrayList<>();
    LocalDate day = LocalDate.of(2026, 1, 1);
    while (year.size() < YEAR) {
      List<StationEvening> season = usual.get(random.nextInt(usual.size()));
      int from = random.nextInt(season.size() - BLOCK + 1);
      Map<StationSign, Double> medians = medians(season);
      for (int i = from; i < from + BLOCK; i++) {
        year.add(centred(season.get(i), medians, day.plusDays(year.size())));
      }
    }
    return year.subList(0, YEAR);
  }

  /** Moves an evening to the first station's level, so that joined blocks do not step. */
  private StationEvening centred(
      StationEvening evening, Map<StationSign, Double> medians, LocalDate day) {
    Map<StationSign, Double> level = medians(usual.get(0));
    Map<StationSign, Double> values = new EnumMap<>(StationSign.class);
    evening.values().forEach((s, v) -> values.put(s, v - medians.get(s) + level.get(s)));
    double blur = medians.get(StationSign.EDGE_BLUR) / level.get(StationSign.EDGE_BLUR);
    List<OptionalDouble> cells =
        evening.blurCells().stream()
            .map(c -> c.isPresent() ? OptionalDouble.of(c.getAsDouble() / blur) : c)
            .toList();
    return new StationEvening(day, values, cells);
  }

  private static Map<StationSign, Double> medians(List<StationEvening> season) {
    Map<StationSign, Double> medians = new EnumMap<>(StationSign.class);
    for (StationSign sign : StationSign.values()) {
      double[] values =
          season.stream()
              .filter(e -> e.values().containsKey(sign))
              .mapToDouble(e -> e.values().get(sign))
              .toArray();
      Arrays.sort(values);
      medians.put(sign, values.length == 0 ? 0 : values[values.length / 2]);
    }
    return medians;
  }
}
