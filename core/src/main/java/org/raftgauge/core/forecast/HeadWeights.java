// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.HarvestTotal;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.Grown;
import org.raftgauge.core.history.WhoGrewWhere;

/**
 * What the scale said of a book's plants: single ones, and the heads of whole rafts. Once a canopy
 * has closed, nothing else tells how its plants went on.
 */
final class HeadWeights {
  /**
   * What a raft's tally may be off by: wet roots, torn leaves, a head miscounted; working value.
   */
  static final double TALLY_SD = 0.02;

  /** Share of a raft's plants under which a harvest is a part of it: the larger ones, mostly. */
  static final double WHOLE_SHARE = 0.9;

  /**
   * How long before its harvest a raft's plants are asked for: they may be off the book by then.
   */
  private static final Duration BEFORE = Duration.ofHours(24);

  private final Map<String, List<Single>> singles = new HashMap<>();
  private final List<Whole> wholes = new ArrayList<>();

  private record Single(double age, double lnWeight, String state) {}

  private record Whole(List<String> plants, double age, double lnHead) {}

  /** A plant of a cycle. */
  record Grew(String plant, Series series) {}

  private HeadWeights() {}

  /**
   * Collects.
   *
   * @param book as known by the evening
   */
  static HeadWeights of(CropBook book) {
    HeadWeights all = new HeadWeights();
    WhoGrewWhere who = WhoGrewWhere.of(book);
    book.diary().weighings().forEach(w -> all.single(who, w));
    book.diary().harvests().forEach(h -> all.whole(who, h));
    return all;
  }

  private void single(WhoGrewWhere who, org.raftgauge.core.book.Weighing w) {
    Instant before = w.weighedAt().toInstant().minusSeconds(1);
    String state = w.state().map(s -> s.name().toLowerCase(Locale.ROOT)).orElse("unsaid");
    who.at(w.raft(), w.site(), before)
        .filter(g -> g.dat().isPresent() && g.dac().isEmpty())
        .ifPresent(
            g ->
                singles
                    .computeIfAbsent(g.plant(), p -> new ArrayList<>())
                    .add(new Single(g.dat().getAsDouble(), Math.log(w.freshWeightG()), state)));
  }

  private void whole(WhoGrewWhere who, HarvestTotal harvest) {
    Instant before = harvest.harvestedAt().toInstant().minus(BEFORE);
    List<String> plants = new ArrayList<>();
    OptionalDouble age = OptionalDouble.empty();
    for (SiteId site : who.plantedSites(harvest.raft(), before)) {
      Grown grown = who.at(harvest.raft(), site, before).orElseThrow();
      if (grown.dat().isPresent() && grown.dac().isEmpty()) {
        plants.add(grown.plant());
        age = grown.dat();
      }
    }
    boolean whole = age.isPresent() && harvest.heads() >= WHOLE_SHARE * plants.size();
    if (whole && harvest.totalWeightG() > 0) {
      double days = BEFORE.toMinutes() / (24.0 * 60);
      double lnHead = Math.log(harvest.totalWeightG() / harvest.heads());
      wholes.add(new Whole(plants, age.getAsDouble() + days, lnHead));
    }
  }

  /**
   * Tells sizes of a cycle's closed plants.
   *
   * @param plants of the cycle, in the order of the way
   * @param way of the cycle
   * @param line from weight to size
   * @return in the order of age, one a day
   */
  List<ScalePoint> of(List<Grew> plants, CommonPath way, Line line) {
    TreeMap<Long, List<ScalePoint>> days = new TreeMap<>();
    Map<String, Series> seen = new HashMap<>();
    plants.forEach(p -> seen.put(p.plant(), p.series()));
    for (Grew plant : plants) {
      OptionalDouble own = way.own(plant.series());
      for (Single single : singles.getOrDefault(plant.plant(), List.of())) {
        boolean alike = single.state().equals(line.state());
        if (alike && own.isPresent() && isClosed(plant.series(), single.age())) {
          single(single, own.getAsDouble(), line).ifPresent(p -> add(days, p));
        }
      }
    }
    for (Whole whole : wholes) {
      List<Double> owns = new ArrayList<>();
      int closed = 0;
      for (String plant : whole.plants()) {
        Optional<Series> series = Optional.ofNullable(seen.get(plant));
        OptionalDouble own = series.map(way::own).orElse(OptionalDouble.empty());
        if (own.isPresent()) {
          owns.add(own.getAsDouble());
          closed += isClosed(series.get(), whole.age()) ? 1 : 0;
        }
      }
      if (owns.size() >= WHOLE_SHARE * whole.plants().size() && 2 * closed > owns.size()) {
        whole(whole, owns, line).ifPresent(p -> add(days, p));
      }
    }
    return days.values().stream().map(HeadWeights::together).toList();
  }

  private static void add(Map<Long, List<ScalePoint>> days, ScalePoint point) {
    days.computeIfAbsent((long) Math.floor(point.age()), d -> new ArrayList<>()).add(point);
  }

  /** Says whether a plant was closed when last seen up to an age. */
  private static boolean isClosed(Series series, double age) {
    boolean closed = false;
    for (int i = 0; i < series.size() && series.dat(i) <= age; i++) {
      closed = series.isClosed(i);
    }
    return closed;
  }

  private static Optional<ScalePoint> single(Single single, double own, Line line) {
    OptionalDouble size = line.lnAreaOf(single.lnWeight());
    if (size.isEmpty()) {
      return Optional.empty();
    }
    double slope = line.at(size.getAsDouble()).orElseThrow().slope;
    double sd = line.fit().numbers().residualSd() / slope;
    return Optional.of(new ScalePoint(single.age(), size.getAsDouble() - own, sd * sd));
  }

  /** Finds the size at which the plants' mean weight is that of the scale. */
  private static Optional<ScalePoint> whole(Whole whole, List<Double> owns, Line line) {
    OptionalDouble size = line.lnAreaOf(whole.lnHead() - Math.log(line.fit().numbers().smearing()));
    if (size.isEmpty()) {
      return Optional.empty();
    }
    double slope = line.at(size.getAsDouble()).orElseThrow().slope;
    double spread =
        Math.log(owns.stream().mapToDouble(o -> Math.exp(slope * o)).average().orElseThrow());
    double sd = line.fit().numbers().residualSd() / Math.sqrt(owns.size());
    double variance = (sd * sd + TALLY_SD * TALLY_SD) / (slope * slope);
    return Optional.of(new ScalePoint(whole.age(), size.getAsDouble() - spread / slope, variance));
  }

  private static ScalePoint together(List<ScalePoint> points) {
    double weights = points.stream().mapToDouble(p -> 1 / p.variance()).sum();
    return new ScalePoint(
        points.stream().mapToDouble(p -> p.age() / p.variance()).sum() / weights,
        points.stream().mapToDouble(p -> p.lnArea() / p.variance()).sum() / weights,
        1 / weights);
  }
}
