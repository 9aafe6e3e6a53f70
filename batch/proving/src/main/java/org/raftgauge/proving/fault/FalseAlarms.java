// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.raftgauge.core.station.CheckStation;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.core.station.StationFault;
import org.raftgauge.core.station.StationSign;

/**
 * Counts false alarms over station-years made of usual evenings.
 *
 * <p>Years are drawn by a moving-block bootstrap (Künsch 1989): blocks of a week of one station's
 * evenings running, each station's medians taken out, so that scatter from evening to evening and
 * over a week stay as they were.
 */
final class FalseAlarms {
  private static final int BLOCK = 7;
  private static final int YEAR = 365;

  private final List<List<StationEvening>> usual;
  private final List<Level> levels;
  private final Random random;

  private FalseAlarms(List<List<StationEvening>> usual, Random random) {
    this.usual = usual;
    this.levels = usual.stream().map(Level::of).toList();
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
      int which = random.nextInt(usual.size());
      List<StationEvening> season = usual.get(which);
      int from = random.nextInt(season.size() - BLOCK + 1);
      for (StationEvening evening : season.subList(from, from + BLOCK)) {
        year.add(levels.get(which).moved(evening, levels.get(0), day.plusDays(year.size())));
      }
    }
    return year.subList(0, YEAR);
  }

  /** Medians of a station's evenings: of its signs and of the blur of each part. */
  private record Level(Map<StationSign, Double> signs, List<OptionalDouble> parts) {

    static Level of(List<StationEvening> season) {
      Map<StationSign, Double> signs = new EnumMap<>(StationSign.class);
      for (StationSign sign : StationSign.values()) {
        Stream<Double> values = season.stream().map(e -> e.values().get(sign));
        signs.put(sign, median(values.filter(Objects::nonNull)).orElse(0));
      }
      List<OptionalDouble> parts = new ArrayList<>();
      int most = season.stream().mapToInt(e -> e.blurCells().size()).max().orElse(0);
      for (int part = 0; part < most; part++) {
        int at = part;
        parts.add(
            median(
                season.stream()
                    .filter(e -> !e.blurCells().isEmpty())
                    .flatMap(e -> e.blurCells().get(at).stream().boxed())));
      }
      return new Level(signs, parts);
    }

    /** Moves an evening to another station's level, so that joined blocks do not step. */
    StationEvening moved(StationEvening evening, Level to, LocalDate day) {
      Map<StationSign, Double> values = new EnumMap<>(StationSign.class);
      evening.values().forEach((s, v) -> values.put(s, v - signs.get(s) + to.signs.get(s)));
      List<OptionalDouble> cells = new ArrayList<>();
      for (int part = 0; part < evening.blurCells().size(); part++) {
        OptionalDouble seen = evening.blurCells().get(part);
        boolean both = seen.isPresent() && part < to.parts.size() && to.parts.get(part).isPresent();
        cells.add(
            both
                ? OptionalDouble.of(
                    seen.getAsDouble()
                        * to.parts.get(part).getAsDouble()
                        / parts.get(part).getAsDouble())
                : OptionalDouble.empty());
      }
      return new StationEvening(day, values, cells);
    }

    private static OptionalDouble median(Stream<Double> some) {
      double[] values = some.mapToDouble(Double::doubleValue).sorted().toArray();
      return values.length == 0
          ? OptionalDouble.empty()
          : OptionalDouble.of(values[values.length / 2]);
    }
  }
}
