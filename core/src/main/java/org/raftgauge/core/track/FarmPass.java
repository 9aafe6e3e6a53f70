// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;
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

  /** Fewest plants of a raft that tell what they have in common. */
  private static final int FEWEST_TOGETHER = 5;

  /** By how much a raft's plants depart together, ln(area), without anything being amiss. */
  private static final double USUAL_TOGETHER = 0.05;

  private final TrackRules rules;
  private final List<Follow> plants;
  private final NavigableSet<LocalDate> evenings = new TreeSet<>();
  private final FindPatches patches = new FindPatches();
  private final StationWatch stations = new StationWatch();
  private final PondWatch ponds;

  private FarmPass(List<Follow> plants, TrackRules rules) {
    this.plants = plants;
    this.rules = rules;
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
   * @param series what was seen of each plant
   * @param crops what the book says of a plant's crop
   * @param climate the book's daily temperatures
   * @param rules how departures are judged
   * @return where all stand after the last evening
   */
  static FarmPass through(
      List<PlantSeries> series,
      Function<PlantSeries, Optional<Crop>> crops,
      HouseClimate climate,
      TrackRules rules) {
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
    FarmPass pass = new FarmPass(plants, rules);
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
    Map<Patch, List<Seen>> groups = patches.of(seen);
    List<Cohort.Level> tonight = new ArrayList<>();
    groups.forEach(
        (patch, of) -> level(of).ifPresent(l -> tonight.add(new Cohort.Level(patch, l))));
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
    judged.forEach(l -> follow(l, groups.get(l.patch())));
    chart(seen.stream().map(Seen::plant).filter(Follow::foretold).toList());
    seen.forEach(s -> s.plant().closeEvening(s.sight()));
  }

  private static Map<Cohort, List<Cohort.Level>> byCohort(List<Cohort.Level> levels) {
    Map<Cohort, List<Cohort.Level>> cohorts = new LinkedHashMap<>();
    levels.forEach(l -> cohorts.computeIfAbsent(l.patch().cohort(), c -> new ArrayList<>()).add(l));
    return cohorts;
  }

  private Optional<PatchLevel> level(List<Seen> seen) {
    List<Sight> usable = seen.stream().map(Seen::sight).filter(Sight::hasArea).toList();
    if (usable.isEmpty()) {
      return Optional.empty();
    }
    String station = usable.get(0).station();
    double offset = stations.offset(station);
    double[] ln = usable.stream().mapToDouble(s -> Math.log(s.areaCm2()) - offset).toArray();
    RobustCentre centre = RobustCentre.of(ln);
    double age = usable.stream().mapToDouble(Sight::ageDays).average().orElseThrow();
    double spread = ln.length < 4 ? rules.healthySd() : centre.spread();
    double se = Math.hypot(1.1 * spread / Math.sqrt(ln.length), rules.photoSd());
    return Optional.of(
        new PatchLevel(
            usable.get(0).evening(), age, centre.centre(), se, ln.length, station, false));
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

  private void follow(Cohort.Level level, List<Seen> seen) {
    Patch patch = level.patch();
    double offset = stations.offset(level.level().station());
    Optional<Expected> expected = patch.cohort().expected(patch.raft(), level.level().age());
    double common = expected.map(e -> common(seen, offset, e)).orElse(0.0);
    for (Seen each : seen) {
      if (level.level().doubtful()) {
        each.plant().doubt(why(level.level().station()));
      } else if (expected.isPresent() && each.sight().hasArea()) {
        each.plant().take(each.sight(), offset, expected.get(), common);
      }
    }
  }

  /**
   * Returns by how much a raft's plants depart together over what is usual, or 0 where they are too
   * few to tell.
   */
  private static double common(List<Seen> seen, double offset, Expected expected) {
    double[] surprises =
        seen.stream()
            .map(each -> each.plant().surprise(each.sight(), offset, expected))
            .flatMapToDouble(OptionalDouble::stream)
            .toArray();
    double together = surprises.length < FEWEST_TOGETHER ? 0 : RobustCentre.median(surprises);
    return Math.sqrt(Math.max(0, together * together - USUAL_TOGETHER * USUAL_TOGETHER));
  }

  /** Takes what an evening's plants have in common, weather mostly, off their innovations. */
  private static void chart(List<Follow> plants) {
    if (!plants.isEmpty()) {
      double common =
          RobustCentre.median(
              plants.stream().mapToDouble(plant -> plant.track().innovation()).toArray());
      plants.forEach(plant -> plant.chart(common));
    }
  }

  private String why(String station) {
    return stations.unsettled(station)
        ? stations.steps().get(station).words() + "; check camera and pond"
        : "the whole raft departs from its own growth in one photo";
  }
}
