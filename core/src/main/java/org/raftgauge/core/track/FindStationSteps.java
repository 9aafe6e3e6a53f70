// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
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
    Optional<Double> common = weather(station);
    double weather = common.orElse(0.0);
    // Without others to tell it, weather alone may be behind as much.
    double unknown = common.isPresent() ? 0 : WORST_WEATHER;
    double[] surprises = levels.stream().mapToDouble(l -> surprise(l) - weather).toArray();
    RobustCentre centre = RobustCentre.of(surprises);
    double step = centre.centre();
    boolean big =
        Math.abs(step) > SMALLEST + unknown + growthInDoubt(levels)
            && Math.abs(step) > CREDIBLE * centre.standardError(LEAST_SD);
    return big && shows(levels, step) && together(surprises, step) && !leans(levels, surprises)
        ? Optional.of(
            new StationStep(station, step, days(levels), levels.size(), inAllPonds(levels, step)))
        : Optional.empty();
  }

  /** Says whether the station itself departs, not only those that it is held against. */
  private static boolean shows(List<Cohort.Level> levels, double step) {
    double own =
        RobustCentre.median(levels.stream().mapToDouble(FindStationSteps::surprise).toArray());
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

  /** Returns what rafts at other stations have in common, where there are enough of them. */
  private Optional<Double> weather(String station) {
    double[] elsewhere =
        byStation.entrySet().stream()
            .filter(e -> !e.getKey().equals(station) && !found.contains(e.getKey()))
            .flatMap(e -> e.getValue().stream())
            .mapToDouble(FindStationSteps::surprise)
            .toArray();
    return elsewhere.length < FEWEST_RAFTS
        ? Optional.empty()
        : Optional.of(
            Math.max(-WORST_WEATHER, Math.min(WORST_WEATHER, RobustCentre.median(elsewhere))));
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
            .mapToDouble(
                pond ->
                    RobustCentre.median(
                        pond.stream().mapToDouble(FindStationSteps::surprise).toArray()))
            .allMatch(median -> median / step > 0.5);
  }

  /** Says whether the surprises lean with size. */
  private static boolean leans(List<Cohort.Level> levels, double[] surprises) {
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < surprises.length; i++) {
      line.addData(levels.get(i).level().lnArea(), surprises[i]);
    }
    boolean told = line.getN() > 3 && line.getXSumSquares() > square(SIZES_DIFFER) * line.getN();
    double se =
        told
            ? Math.max(line.getSlopeStdErr(), LEAST_SD / Math.sqrt(line.getXSumSquares()))
            : Double.POSITIVE_INFINITY;
    return told && Math.abs(line.getSlope()) > LEANS * se;
  }

  private static double square(double x) {
    return x * x;
  }
}
