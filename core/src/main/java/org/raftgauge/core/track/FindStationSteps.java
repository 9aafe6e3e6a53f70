// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.hipparchus.stat.regression.SimpleRegression;

/**
 * Finds stations at which everything stepped by one factor in one evening, big and small. What
 * other stations saw that evening (weather) is taken off first, as far as weather can go; the
 * station that steps most is taken first and left out when the others are looked at.
 */
final class FindStationSteps {
  private static final int FEWEST_RAFTS = 3;
  private static final double SMALLEST = 0.05;
  private static final double CREDIBLE = 4;
  private static final double LEAST_SD = 0.03;
  private static final double SAME_SIGN = 0.85;
  private static final double LEANS = 3;

  /** Spread of ln(area) from which a lean with size can be told. */
  private static final double SIZES_DIFFER = 0.2;

  /** Most by which one evening's weather moves ln(area) of all plants off their forecast. */
  private static final double WORST_WEATHER = 0.06;

  private final Map<String, List<Cohort.Level>> byStation;
  private final Set<String> found = new HashSet<>();

  /**
   * @param tonight tonight's levels; those of patches without an earlier one tell nothing
   */
  FindStationSteps(List<Cohort.Level> tonight) {
    this.byStation =
        tonight.stream()
            .filter(l -> l.patch().surprise(l.level()).isPresent())
            .collect(
                Collectors.groupingBy(l -> l.level().station(), TreeMap::new, Collectors.toList()));
  }

  /** Returns the steps, the largest first. */
  List<StationStep> find() {
    List<StationStep> steps = new ArrayList<>();
    for (Optional<StationStep> next = largest(); next.isPresent(); next = largest()) {
      steps.add(next.get());
      found.add(next.get().station());
    }
    return steps;
  }

  private Optional<StationStep> largest() {
    return byStation.keySet().stream()
        .filter(station -> !found.contains(station))
        .flatMap(station -> step(station).stream())
        .max(Comparator.comparingDouble(step -> Math.abs(step.ln())));
  }

  private Optional<StationStep> step(String station) {
    List<Cohort.Level> levels = byStation.get(station);
    if (levels.size() < FEWEST_RAFTS) {
      return Optional.empty();
    }
    List<Cohort.Level> elsewhere = elsewhere(station);
    Optional<Double> common = weather(elsewhere);
    double weather = common.orElse(0.0);
    // Without others to tell it, weather alone may be behind as much.
    double unknown = common.isPresent() ? 0 : WORST_WEATHER;
    double[] surprises = Arrays.stream(surprises(levels)).map(s -> s - weather).toArray();
    RobustCentre centre = RobustCentre.of(surprises);
    double step = centre.centre();
    boolean big =
        Math.abs(step) > SMALLEST + unknown + growthInDoubt(levels)
            && Math.abs(step) > CREDIBLE * centre.standardError(LEAST_SD);
    return big && shows(levels, step) && together(surprises, step) && !leans(levels, elsewhere)
        ? Optional.of(
            new StationStep(station, step, days(levels), levels.size(), inAllPonds(levels, step)))
        : Optional.empty();
  }

  /** Says whether the station itself departs, not only those that it is held against. */
  private static boolean shows(List<Cohort.Level> levels, double step) {
    double own = RobustCentre.median(surprises(levels));
    return own * Math.signum(step) > SMALLEST / 2;
  }

  private static double days(List<Cohort.Level> levels) {
    return RobustCentre.median(levels.stream().mapToDouble(Cohort.Level::days).toArray());
  }

  /** Returns what not knowing the growth rate yet can make of all surprises at once. */
  private static double growthInDoubt(List<Cohort.Level> levels) {
    return RobustCentre.median(
        levels.stream()
            .mapToDouble(l -> 2 * l.patch().cohort().rateSdAhead(l.days()) * l.days())
            .toArray());
  }

  private List<Cohort.Level> elsewhere(String station) {
    return byStation.entrySet().stream()
        .filter(e -> !e.getKey().equals(station) && !found.contains(e.getKey()))
        .flatMap(e -> e.getValue().stream())
        .toList();
  }

  /** Returns what rafts at other stations have in common, where there are enough of them. */
  private static Optional<Double> weather(List<Cohort.Level> elsewhere) {
    return elsewhere.size() < FEWEST_RAFTS
        ? Optional.empty()
        : Optional.of(
            Math.max(
                -WORST_WEATHER,
                Math.min(WORST_WEATHER, RobustCentre.median(surprises(elsewhere)))));
  }

  private static double[] surprises(List<Cohort.Level> levels) {
    return levels.stream().mapToDouble(FindStationSteps::surprise).toArray();
  }

  private static double surprise(Cohort.Level level) {
    return level.patch().surprise(level.level()).orElseThrow();
  }

  private static boolean together(double[] surprises, double step) {
    long same = 0;
    for (double s : surprises) {
      same += s * step > 0 ? 1 : 0;
    }
    return same >= SAME_SIGN * surprises.length;
  }

  /** Says whether two ponds or more were seen and each shows at least half of the step. */
  private static boolean inAllPonds(List<Cohort.Level> levels, double step) {
    Map<String, List<Cohort.Level>> ponds =
        levels.stream().collect(Collectors.groupingBy(l -> l.patch().pond()));
    return ponds.size() > 1
        && ponds.values().stream()
            .mapToDouble(pond -> RobustCentre.median(surprises(pond)))
            .allMatch(median -> median / step > 0.5);
  }

  /**
   * Says whether the surprises lean with size, and other than elsewhere: one evening's weather
   * leans too, since small plants grow more.
   */
  private static boolean leans(List<Cohort.Level> levels, List<Cohort.Level> elsewhere) {
    Lean here = lean(levels);
    Lean there = lean(elsewhere);
    return here.told()
        && Math.abs(here.slope()) > LEANS * here.se()
        && Math.abs(here.slope() - there.slope()) > LEANS * Math.hypot(here.se(), there.se());
  }

  private record Lean(boolean told, double slope, double se) {}

  private static Lean lean(List<Cohort.Level> levels) {
    SimpleRegression line = new SimpleRegression();
    levels.forEach(l -> line.addData(l.level().lnArea(), surprise(l)));
    boolean told = line.getN() > 3 && line.getXSumSquares() > square(SIZES_DIFFER) * line.getN();
    return told
        ? new Lean(
            true,
            line.getSlope(),
            Math.max(line.getSlopeStdErr(), LEAST_SD / Math.sqrt(line.getXSumSquares())))
        : new Lean(false, 0, 0);
  }

  private static double square(double x) {
    return x * x;
  }
}
