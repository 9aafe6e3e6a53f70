// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.reference.HouseClimate;

/**
 * Goes through the farm's evenings in order and follows every plant; what it knows after an evening
 * rests on that evening and those before.
 */
final class FarmPass {
  private static final double SUDDEN_LOSS = 0.12;
  private static final double SUDDEN_GAIN = 0.25;
  private static final double SAME_AGAIN = 0.1;
  private static final int FEWEST_OTHERS = 3;

  private final TrackRules rules;
  private final Spread spread;
  private final List<Follow> plants;
  private final NavigableSet<LocalDate> evenings = new TreeSet<>();
  private final FindPatches patches = new FindPatches();
  private final StationWatch stations = new StationWatch();
  private final PondWatch ponds;

  private FarmPass(List<Follow> plants, TrackRules rules, Spread spread) {
    this.plants = plants;
    this.rules = rules;
    this.spread = spread;
    this.ponds = new PondWatch(rules);
    Set<LocalDate> seen = new HashSet<>();
    for (Follow plant : plants) {
      plant.series().sights().forEach(sight -> seen.add(sight.evening()));
    }
    evenings.addAll(seen);
  }

  /**
   * Follows every plant through all evenings.
   *
   * @param book the crop book: limits by crop, the house's temperatures
   * @param series what was seen of each plant
   * @param rules how departures are judged
   * @param spread goes through the rafts of an evening
   * @return where all stand after the last evening
   */
  static FarmPass through(
      CropBook book, List<PlantSeries> series, TrackRules rules, Spread spread) {
    Function<PlantSeries, Optional<Crop>> crops = s -> book.crop(s.planting());
    HouseClimate climate = HouseClimate.of(book.diary().climate());
    IdentityHashMap<PlantSeries, Cohort> cohorts = FindCohorts.of(series, crops, climate);
    List<Follow> plants =
        series.stream()
            .map(
                s ->
                    new Follow(
                        s,
                        cohorts.get(s),
                        crops.apply(s).map(Crop::limits).orElse(Crop.Limits.defaults()),
                        rules))
            .toList();
    FarmPass pass = new FarmPass(plants, rules, spread);
    pass.evenings.forEach(pass::evening);
    return pass;
  }

  /** Returns the last evening on which anything was seen. */
  Optional<LocalDate> lastEvening() {
    return evenings.isEmpty() ? Optional.empty() : Optional.of(evenings.last());
  }

  /** Returns the plants. */
  List<Follow> plants() {
    return plants;
  }

  /** Returns the patches that have been seen. */
  List<Patch> patches() {
    return patches.all();
  }

  StationWatch stations() {
    return stations;
  }

  PondWatch ponds() {
    return ponds;
  }

  private void evening(LocalDate evening) {
    List<Seen> seen = new ArrayList<>();
    plants.forEach(p -> p.next(evening).ifPresent(sight -> seen.add(new Seen(p, sight))));
    Map<Patch, PatchSights> sights = patches.of(seen);
    List<PatchSights> rafts = List.copyOf(sights.values());
    List<Cohort.Level> tonight =
        spread.map(rafts, r -> r.level(stations, rules)).stream()
            .flatMap(Optional::stream)
            .toList();
    byCohort(tonight).forEach(Cohort::refresh);
    if (!rules.off().contains(TrackRules.Part.STATION_WATCH)) {
      stations.evening(tonight);
    }
    List<Cohort.Level> judged = tonight.stream().map(this::corrected).map(this::doubt).toList();
    List<Cohort.Level> good = judged.stream().filter(l -> !l.level().doubtful()).toList();
    byCohort(good).forEach(Cohort::learnRate);
    judged.forEach(l -> l.patch().add(l.level()));
    ponds.take(good);
    good.forEach(l -> l.patch().faulty(ponds.lags(l.patch())));
    spread.each(judged.stream().map(l -> said(l, sights.get(l.patch()))).toList(), Runnable::run);
    double common = common(spread.map(rafts, PatchSights::innovations));
    spread.each(rafts, r -> r.close(common));
  }

  private static Map<Cohort, List<Cohort.Level>> byCohort(List<Cohort.Level> levels) {
    Map<Cohort, List<Cohort.Level>> cohorts = new LinkedHashMap<>();
    levels.forEach(l -> cohorts.computeIfAbsent(l.patch().cohort(), c -> new ArrayList<>()).add(l));
    return cohorts;
  }

  private Cohort.Level corrected(Cohort.Level level) {
    String station = level.level().station();
    StationStep step = stations.steps().get(station);
    if (step == null) {
      return level;
    }
    PatchLevel now =
        stations.unsettled(station) ? level.level().doubted() : level.level().shifted(-step.ln());
    return new Cohort.Level(level.patch(), now);
  }

  /** Doubts a level that no growth explains, unless the photo before was doubted and agrees. */
  private Cohort.Level doubt(Cohort.Level level) {
    Optional<Double> surprise =
        level.patch().surprise(level.level()).or(() -> againstOthers(level));
    double days = level.days();
    double rate = level.patch().cohort().rate();
    double slack =
        2 * level.patch().cohort().rateSdAhead(days) * days + 3 * level.level().standardError();
    boolean sudden =
        surprise
            .filter(
                s -> s < -Math.max(0, rate) * days - SUDDEN_LOSS - slack || s > SUDDEN_GAIN + slack)
            .isPresent();
    boolean again =
        level
            .patch()
            .lastDoubted()
            .filter(
                before ->
                    Math.abs(
                            level.level().lnArea()
                                - before.lnArea()
                                - rate * (level.level().age() - before.age()))
                        < SAME_AGAIN + slack)
            .isPresent();
    boolean believed = rules.off().contains(TrackRules.Part.RAFT_DOUBT);
    return sudden && !again && !believed
        ? new Cohort.Level(level.patch(), level.level().doubted())
        : level;
  }

  /** A first level is held against the other rafts of its cohort, where there are some. */
  private static Optional<Double> againstOthers(Cohort.Level level) {
    Cohort cohort = level.patch().cohort();
    return cohort.patches().size() <= FEWEST_OTHERS
        ? Optional.empty()
        : cohort
            .expected(level.patch().raft(), level.level().age())
            .map(e -> level.level().lnArea() - e.lnArea());
  }

  /** Says what becomes of a patch's sights, by what all patches told. */
  private Runnable said(Cohort.Level level, PatchSights sights) {
    String station = level.level().station();
    if (level.level().doubtful()) {
      String why = why(station);
      return () -> sights.doubt(why);
    }
    Patch patch = level.patch();
    double offset = stations.offset(station);
    Optional<Expected> expected = patch.cohort().expected(patch.raft(), level.level().age());
    return () -> expected.ifPresent(e -> sights.take(offset, e));
  }

  /** Returns what an evening's plants have in common, weather mostly; 0 where there are none. */
  private static double common(List<double[]> innovations) {
    double[] all = innovations.stream().flatMapToDouble(Arrays::stream).toArray();
    return all.length == 0 ? 0 : RobustCentre.median(all);
  }

  private String why(String station) {
    return stations.unsettled(station)
        ? stations.steps().get(station).words() + "; check camera and pond"
        : "the whole raft departs from its own growth in one photo";
  }
}
