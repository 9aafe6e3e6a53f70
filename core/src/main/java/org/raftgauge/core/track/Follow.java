// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;
import org.raftgauge.core.statistics.EwmaRule;
import org.raftgauge.core.table.Decimals;
import org.raftgauge.core.track.PlantTrack.ErrorOf;

/** One plant followed through the evenings: its belief, and what was credible before. */
final class Follow {
  private static final double DEFAULT_SE = 0.04;
  private static final double EDGE_CM2 = 0.2;
  private static final double CLOSED_SD = 0.1;

  /** Times what was foretold for tonight from which an area cannot be: a working value. */
  private static final double MOST_TIMES = 4;

  /** By how much a plant's growth rate may be mistaken, 1/day. */
  private static final double RATE_IN_DOUBT = 0.1;

  /** Two jumps within this factor of each other are the same. */
  private static final double SAME_TIMES = 1.5;

  /** Weight 0.2 and 3 sigma limits are usual for such charts (NIST/SEMATECH 6.3.2.4). */
  private static final EwmaRule CHART = new EwmaRule(0.2, 3);

  private final PlantSeries series;
  private final Cohort cohort;
  private final TrackRules rules;
  private final Crop.Limits limits;
  private final PlantTrack track;
  private int seen;
  private Optional<Expected> expected = Optional.empty();
  private String doubt = "";
  private double peakCm2;
  private final LagLimit lagLimit;
  private boolean takenTonight;
  private double innovation;
  private double charted;
  private double jumped;

  Follow(PlantSeries series, Cohort cohort, Crop.Limits limits, TrackRules rules) {
    this.series = series;
    this.cohort = cohort;
    this.limits = limits;
    this.rules = rules;
    this.track = new PlantTrack(rules);
    this.lagLimit = new LagLimit(rules);
  }

  PlantSeries series() {
    return series;
  }

  /** Returns its sight of an evening, evenings being asked for in order and none left out. */
  Optional<Sight> next(LocalDate evening) {
    List<Sight> sights = series.sights();
    if (seen == sights.size() || !sights.get(seen).evening().equals(evening)) {
      return Optional.empty();
    }
    return Optional.of(sights.get(seen++));
  }

  Cohort cohort() {
    return cohort;
  }

  Crop.Limits limits() {
    return limits;
  }

  PlantTrack track() {
    return track;
  }

  /** Returns what was expected of it when its area was last taken. */
  Optional<Expected> expected() {
    return expected;
  }

  /** Returns why the last sight is doubted, or an empty text. */
  String doubt() {
    return doubt;
  }

  /** Returns its largest area before the last sight, cm2. */
  double peakCm2() {
    return peakCm2;
  }

  /** Says whether its last sight was one with an area that was believed. */
  boolean takenTonight() {
    return takenTonight;
  }

  /** Says whether its last sight was believed and can be held against a forecast. */
  boolean foretold() {
    return takenTonight && track.sights() > 1;
  }

  /** Takes what all plants of the evening have in common off its innovation and charts it. */
  void chart(double common) {
    innovation = track.innovation() - common;
    charted = CHART.next(charted, innovation);
  }

  /** Returns the innovation without what the evening's plants have in common. */
  double innovation() {
    return innovation;
  }

  /** Returns the weighted average of its innovations, the newest weighing most. */
  double charted() {
    return charted;
  }

  void doubt(String why) {
    doubt = why;
  }

  /**
   * Takes a sight with an area.
   *
   * @param sight the sight
   * @param offset known offset of the station, ln(area)
   * @param expect what is expected of it
   * @param common by how much its raft's plants depart together: as much may be the photo's
   */
  void take(Sight sight, double offset, Expected expect, double common) {
    double fresh = Math.hypot(error(sight), rules.photoSd());
    double lasting = Math.hypot(expect.standardError(), rules.persistentSd());
    double y = departure(sight, offset, expect);
    if (sight.measure().closed()) {
      ErrorOf error = new ErrorOf(Math.hypot(fresh, CLOSED_SD), lasting, common);
      track.takeAtLeast(sight.ageDays(), y, error, expect.rate());
    } else {
      track.take(sight.ageDays(), y, new ErrorOf(fresh, lasting, common), expect.rate());
    }
    expected = Optional.of(expect);
    takenTonight = true;
  }

  private static double error(Sight sight) {
    return sight.measure().areaErrorFraction(Math.hypot(DEFAULT_SE * sight.areaCm2(), EDGE_CM2));
  }

  /**
   * Says that no plant can have grown to a sight's area, or nothing. Another sight that agrees with
   * one that could not be is believed: another plant stands there.
   *
   * @param sight the sight
   * @param offset known offset of the station, ln(area)
   * @param expect what is expected of it
   */
  Optional<String> impossible(Sight sight, double offset, Expected expect) {
    OptionalDouble jump = surprise(sight, offset, expect);
    double days = Math.max(0, sight.ageDays() - track.lastAge());
    double most = Math.log(MOST_TIMES) + RATE_IN_DOUBT * days + 3 * error(sight);
    boolean again = Math.abs(jump.orElse(0) - jumped) < Math.log(SAME_TIMES) && jumped > 0;
    boolean cannotBe = jump.isPresent() && jump.getAsDouble() > most && !again;
    jumped = cannotBe ? jump.getAsDouble() : 0;
    if (!cannotBe) {
      return Optional.empty();
    }
    track.noteFar(jumped);
    return Optional.of(
        String.format(
            Locale.ROOT,
            "this photo shows %s times the leaf that its photos before let expect, more than any"
                + " growth; photograph it again, and look whether another plant stands there",
            Decimals.words(Math.exp(jumped), 0)));
  }

  /** Returns by how much a sight departs from what the sights before foretold, ln(area). */
  OptionalDouble surprise(Sight sight, double offset, Expected expect) {
    return track.sights() == 0 || !sight.hasArea() || sight.measure().closed()
        ? OptionalDouble.empty()
        : OptionalDouble.of(departure(sight, offset, expect) - track.foretold(sight.ageDays()));
  }

  private static double departure(Sight sight, double offset, Expected expect) {
    return Math.log(sight.areaCm2()) - offset - expect.lnArea();
  }

  /** Ends an evening on which it was seen, well or badly. */
  void closeEvening(Sight sight) {
    if (takenTonight) {
      lagLimit.take(track);
    }
    // Not by looking at the last sight: on every evening of a large farm that takes its time.
    boolean last = seen == series.sights().size();
    if (!last) {
      peakCm2 = Math.max(peakCm2, sight.hasArea() && doubt.isEmpty() ? sight.areaCm2() : 0);
      takenTonight = false;
      doubt = "";
    }
  }

  double lagProbability() {
    return lag(lagLimit.now());
  }

  private double lag(Optional<Belief> belief) {
    return belief.map(b -> b.below(Math.log(limits.laggingShare()))).orElse(0.0);
  }

  double aheadProbability() {
    return ahead(lagLimit.now());
  }

  private double ahead(Optional<Belief> belief) {
    return belief.map(b -> 1 - b.below(Math.log(limits.aheadShare()))).orElse(0.0);
  }

  /** Returns the lowest ln(limit) by which it would be called lagging. */
  double laggingFrom() {
    return lagLimit.lnShare();
  }

  boolean lagging() {
    return credible(lagProbability(), lag(lagLimit.before()));
  }

  boolean ahead() {
    return credible(aheadProbability(), ahead(lagLimit.before()));
  }

  private boolean credible(double now, double before) {
    return now >= rules.believedAtOnce() || (now >= rules.believed() && before >= rules.believed());
  }
}
