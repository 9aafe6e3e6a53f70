// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.statistics.BenjaminiHochberg;

/** Judges the sites seen on an evening. */
final class JudgeSites {
  private static final double COLLAPSED = 0.35;
  private static final double ROOTED_CM2 = 1;
  private static final double SHOWS_CM2 = 3;
  private static final double LEAST_RATE = 0.02;
  private static final int LEAST_SIGHTS = 3;

  /** A stalled plant grows by less than this share of the expected rate. */
  private static final double SLOW_GROWTH = 0.55;

  private final CropBook book;
  private final List<Follow> plants;
  private final JudgeGroups groups;
  private final TrackRules rules;
  private final FindPale pale;
  private final Map<Follow, Double> qValues = new HashMap<>();

  JudgeSites(CropBook book, List<Follow> plants, JudgeGroups groups, TrackRules rules) {
    this.book = book;
    this.plants = plants;
    this.groups = groups;
    this.rules = rules;
    this.pale = new FindPale(plants);
    List<Follow> foretold = plants.stream().filter(Follow::foretold).toList();
    double[] q =
        BenjaminiHochberg.qValues(
            foretold.stream().mapToDouble(p -> Normal.twoSided(p.innovation())).toArray());
    for (int i = 0; i < q.length; i++) {
      qValues.put(foretold.get(i), q[i]);
    }
  }

  List<Judged> rows() {
    return plants.stream().map(this::row).toList();
  }

  private Judged row(Follow plant) {
    Set<Verdict> found = EnumSet.noneOf(Verdict.class);
    Sight sight = plant.series().last();
    if (held(plant)) {
      found.add(Verdict.HELD);
    } else {
      findDeadOrEmpty(plant, found);
      findGrowth(plant, found);
      if (pale.pale(plant)) {
        found.add(Verdict.PALE);
      }
    }
    List<Verdict> all = found.stream().sorted(Comparator.naturalOrder()).toList();
    boolean known = plant.takenTonight();
    Optional<Judged.Share> share =
        known ? plant.expected().map(e -> ShareOf.plant(plant, e, rules)) : Optional.empty();
    boolean told =
        share.filter(s -> Told.isTold(s, plant.limits())).isPresent()
            && !groups.slowedTogether(plant);
    Verdict verdict = !all.isEmpty() ? all.get(0) : told ? Verdict.ON_TRACK : Verdict.NOT_TOLD;
    Optional<Judged.Change> change =
        plant.foretold() ? Optional.of(change(plant)) : Optional.empty();
    return new Judged(
        Judged.Scope.SITE,
        place(plant, sight),
        verdict,
        all.isEmpty() ? List.of() : all.subList(1, all.size()),
        share,
        change,
        verdict.isCalm() ? Pattern.NONE : groups.pattern(plant),
        evidence(plant, verdict, share));
  }

  private boolean held(Follow plant) {
    return !plant.series().last().measure().held().isEmpty() || !plant.doubt().isEmpty();
  }

  private void findDeadOrEmpty(Follow plant, Set<Verdict> found) {
    Sight sight = plant.series().last();
    SiteMeasure measure = sight.measure();
    boolean brown = plant.series().brown();
    boolean grown = plant.peakCm2() >= ROOTED_CM2;
    boolean gone = grown && sight.areaCm2() < COLLAPSED * plant.peakCm2() && !measure.closed();
    if (brown || gone) {
      found.add(Verdict.DEAD);
    } else if (sight.bare() && !grown && due(plant)) {
      found.add(Verdict.EMPTY);
    }
  }

  /** Says whether canopy must show by now: after a cut, where that of the others shows again. */
  private boolean due(Follow plant) {
    PlantSeries series = plant.series();
    double age = series.last().ageDays();
    return switch (series.clock()) {
      case TRANSPLANT -> true;
      case CUT ->
          plant
              .cohort()
              .expected(series.last().raft(), age)
              .filter(e -> e.lnArea() > Math.log(SHOWS_CM2))
              .isPresent();
      case SOWING -> {
        OptionalDouble by =
            book.crop(series.planting()).map(Crop::emergedByDas).orElse(OptionalDouble.empty());
        yield by.isPresent() && age >= by.getAsDouble();
      }
    };
  }

  private void findGrowth(Follow plant, Set<Verdict> found) {
    if (!plant.takenTonight()) {
      return;
    }
    double rate = plant.expected().orElseThrow().rate();
    boolean stalled =
        plant.track().stallEvidence() >= rules.stallEvidence()
            && rate >= LEAST_RATE
            && plant.track().sights() >= LEAST_SIGHTS
            && rate + plant.track().rate() < SLOW_GROWTH * rate
            && !plant.series().last().measure().closed();
    if (stalled) {
      found.add(Verdict.STALLED);
    }
    if (plant.lagging()) {
      found.add(Verdict.LAGGING);
    }
    if (plant.ahead()) {
      found.add(Verdict.AHEAD);
    }
  }

  private Judged.Change change(Follow plant) {
    PlantTrack track = plant.track();
    double rate = plant.expected().orElseThrow().rate();
    return new Judged.Change(
        plant.innovation(),
        plant.charted(),
        rate + track.rate(),
        rate,
        Normal.twoSided(plant.innovation()),
        qValues.getOrDefault(plant, 1.0));
  }

  private static Judged.Place place(Follow plant, Sight sight) {
    PlantSeries series = plant.series();
    return new Judged.Place(
        sight.station(),
        series.planting().pond(),
        sight.raft(),
        Optional.of(sight.measure().site()),
        series.plant(),
        series.planting().crop(),
        Optional.of(sight.takenAt()),
        OptionalDouble.of(sight.ageDays()));
  }

  private String evidence(Follow plant, Verdict verdict, Optional<Judged.Share> share) {
    SiteMeasure measure = plant.series().last().measure();
    if (verdict == Verdict.HELD) {
      return measure.held().isEmpty() ? plant.doubt() : measure.held();
    }
    if (verdict == Verdict.DEAD) {
      return dead(plant);
    }
    if (verdict == Verdict.EMPTY) {
      return "planted, no canopy to be seen";
    }
    boolean alike = verdict == Verdict.NOT_TOLD && groups.slowedTogether(plant);
    String growth =
        share
            .map(
                s ->
                    alike
                        ? SlowingWords.ALL_SLOWED + GrowthWords.of(plant, s, Verdict.ON_TRACK)
                        : GrowthWords.of(plant, s, verdict))
            .orElse(verdict == Verdict.NOT_TOLD ? "no leaf shows, and none is due yet" : "");
    if (!pale.pale(plant)) {
      return growth;
    }
    return verdict == Verdict.PALE || growth.isEmpty()
        ? pale.words(plant)
        : growth + "; " + pale.words(plant);
  }

  /** Says which of the two it is: brown leaf, or leaf that is gone. */
  private static String dead(Follow plant) {
    Sight last = plant.series().last();
    if (!last.hasArea() || !plant.series().brown()) {
      return String.format(
          Locale.ROOT,
          "%.0f %% of its largest leaf area before is left",
          100 * last.areaCm2() / plant.peakCm2());
    }
    String now =
        String.format(Locale.ROOT, "%.0f %% of its leaf is brown", 100 * last.brownFraction());
    return last.brownFraction() >= PlantSeries.BROWN_FRACTION
        ? now
        : now + ", and more of it was on an evening before";
  }
}
