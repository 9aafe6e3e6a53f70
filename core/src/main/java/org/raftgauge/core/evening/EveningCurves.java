// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.CohortFit;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.cohort.FitCohort;
import org.raftgauge.core.cohort.NoCohortCurve;
import org.raftgauge.core.cohort.PlantCurve;
import org.raftgauge.core.cohort.SomePlants;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.FitGrowth;
import org.raftgauge.core.growth.FitRule;
import org.raftgauge.core.growth.Fitted;
import org.raftgauge.core.growth.GrowthFit;
import org.raftgauge.core.growth.NotFitted;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.GroupCohorts;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Spread;

/**
 * Gives rafts and sites their curves. A raft's median plant and a site that is not on track get a
 * curve of their own where their photos carry one; every other plant, and where they do not, the
 * cohort's curve shrunk to the plant's photos.
 */
final class EveningCurves {
  /** Plants from which a cohort's curve comes: more take time and hardly move it. */
  private static final int COHORT_PLANTS = 60;

  private static final int FEWEST_OPEN = 2;

  /** Open photos that the least demanding curve needs when it is the only candidate. */
  private static final int FEWEST_OWN = 4;

  private static final Comparator<CurveRow> ORDER =
      Comparator.comparing((CurveRow r) -> r.scope())
          .thenComparing(r -> r.place().raft())
          .thenComparing(r -> r.place().site().orElse(new SiteId(0, 0)))
          .thenComparing(r -> r.place().plant())
          .thenComparing(r -> r.place().crop());

  private final TargetSizes sizes;
  private final CyclePriors past;
  private final DrawnGrowth drawn;
  private final Set<String> departing = new HashSet<>();
  private final List<CurveRow> rows = new ArrayList<>();
  private final Spread spread;

  private EveningCurves(Tonight tonight, Map<String, Grader> graders, Spread spread) {
    this.spread = spread;
    this.sizes = new TargetSizes(tonight.book(), graders);
    this.past = CyclePriors.of(tonight.plants());
    this.drawn = new DrawnGrowth(tonight);
    for (Judged row : tonight.verdicts()) {
      if (row.scope() == Judged.Scope.SITE && !row.verdict().isCalm()) {
        departing.add(row.place().plant());
      }
    }
  }

  /**
   * Fits.
   *
   * @param tonight plants, past cycles and verdicts
   * @param graders by crop, none that knows more than the evening
   * @param spread fits many curves
   * @return a row for each raft and each plant that stands, rafts first; and rafts to be drawn
   */
  static Curves of(Tonight tonight, Map<String, Grader> graders, Spread spread) {
    EveningCurves curves = new EveningCurves(tonight, graders, spread);
    GroupCohorts.of(tonight.plants().standing()).forEach(curves::cohort);
    curves.rows.sort(ORDER);
    return new Curves(curves.rows, curves.drawn.rafts());
  }

  /** Curves as rows, and rafts to be drawn. */
  record Curves(List<CurveRow> rows, List<RaftGrowth> rafts) {}

  /** A cohort's curve, and whether it leans on past cycles: then one photo moves it sanely. */
  private record Leaned(CohortFit fit, boolean onPast) {
    int fewestOpen() {
      return onPast ? 1 : FEWEST_OPEN;
    }
  }

  private void cohort(List<PlantSeries> plants) {
    List<Series> series = spread.map(plants, AreaSeries::of);
    List<Series> sample =
        SomePlants.evenly(series.stream().filter(s -> s.size() > 0).toList(), COHORT_PLANTS);
    Leaned fit =
        past.prior(plants.get(0))
            .map(prior -> new Leaned(FitCohort.of(sample, CohortRule.defaults(), prior), true))
            .orElseGet(() -> new Leaned(fit(sample), false));
    drawn.cohort(plants, fit.fit(), spread);
    List<Wanted> wanted = new ArrayList<>();
    Map<String, List<PlantSeries>> rafts = new TreeMap<>();
    for (int i = 0; i < plants.size(); i++) {
      PlantSeries plant = plants.get(i);
      rafts.computeIfAbsent(plant.planting().raft(), r -> new ArrayList<>()).add(plant);
      Of place = of(plant, Optional.of(plant.site()), plant.plant());
      boolean own = departing.contains(plant.plant());
      wanted.add(new Wanted(place, series.get(i), own));
    }
    List<List<PlantSeries>> together = List.copyOf(rafts.values());
    List<Series> medians = spread.map(together, AreaSeries::median);
    for (int i = 0; i < medians.size(); i++) {
      Of place = of(together.get(i).get(0), Optional.empty(), "");
      wanted.add(new Wanted(place, medians.get(i), true));
    }
    rows.addAll(spread.map(wanted, w -> row(w.of, w.series, w.own, fit)));
  }

  /** A row to make: what of, from which areas, and whether it gets a curve of its own. */
  private record Wanted(Of of, Series series, boolean own) {}

  /** What a row is about, and the size at which it is ready. */
  private record Of(CurveRow.Place place, TargetSizes.Size ready) {
    CurveRow.Target none(String why) {
      return CurveRow.Target.none(ready.areaCm2(), ready.reason().isEmpty() ? why : ready.reason());
    }
  }

  private Of of(PlantSeries like, Optional<SiteId> site, String plant) {
    Planting planting = like.planting();
    return new Of(
        new CurveRow.Place(planting.pond(), planting.raft(), site, plant, planting.crop()),
        sizes.of(like));
  }

  /** Fits a cohort; a young one, too young for a curve that levels off, exponentially. */
  private static CohortFit fit(List<Series> sample) {
    CohortFit fit = FitCohort.of(sample, CohortRule.defaults());
    if (fit instanceof NoCohortCurve) {
      CohortFit young =
          FitCohort.of(sample, CohortRule.defaults().withModels(CurveModel.EXPONENTIAL));
      return young instanceof CohortCurve ? young : fit;
    }
    return fit;
  }

  private CurveRow row(Of place, Series series, boolean own, Leaned cohort) {
    String why = "";
    if (own && CurveBasis.open(series) < FEWEST_OWN) {
      why = "no curve of its own: " + CurveBasis.open(series) + " open photos are too few";
    } else if (own) {
      GrowthFit fit = FitGrowth.of(series, FitRule.defaults());
      if (fit instanceof Fitted fitted) {
        return row(
            place,
            Optional.of(OneCurve.fitted(fitted, series)),
            fitted.asymptoteDoubt().orElse(""),
            new Said(
                own(place, fitted, series, cohort), CurveBasis.of(series, fitted.discountedDat())));
      }
      why = "no curve of its own: " + ((NotFitted) fit).reason();
    }
    return shrunk(place, series, cohort, why);
  }

  /**
   * Says when a plant with a curve of its own is ready; a raft's median plant, whose curve does not
   * carry so far, by its cohort's.
   */
  private static CurveRow.Target own(Of of, Fitted fitted, Series series, Leaned cohort) {
    if (of.ready().areaCm2().isEmpty()) {
      return of.none("");
    }
    double area = of.ready().areaCm2().getAsDouble();
    CurveRow.Target target = ReachTarget.by(fitted, series, area);
    boolean raft = of.place().site().isEmpty();
    return raft && target.days().isEmpty() && cohort.fit() instanceof CohortCurve curve
        ? ReachTarget.by(curve.forPlant(series), series, area)
        : target;
  }

  private CurveRow shrunk(Of place, Series series, Leaned cohort, String why) {
    if (CurveBasis.open(series) < cohort.fewestOpen()) {
      return without(place, CurveBasis.tooFew(series), series);
    }
    if (cohort.fit() instanceof NoCohortCurve) {
      String reason = "its cohort has too few evenings for a curve";
      return without(place, joined(why, reason), series);
    }
    CohortCurve curve = (CohortCurve) cohort.fit();
    PlantCurve plant = curve.forPlant(series);
    String reason =
        "shrunk to its cohort's curve" + (cohort.onPast() ? ", which leans on past cycles" : "");
    String doubt = curve.asymptoteDoubt().orElse("");
    return row(
        place,
        Optional.of(OneCurve.shrunk(curve, plant, series)),
        joined(joined(reason, why), doubt),
        new Said(
            place.ready().areaCm2().isPresent()
                ? ReachTarget.by(plant, series, place.ready().areaCm2().getAsDouble())
                : place.none(""),
            CurveBasis.of(series, plant.discountedDat())));
  }

  /** When a plant is ready, and what its curve rests on. */
  private record Said(CurveRow.Target target, CurveRow.Basis basis) {}

  private static CurveRow without(Of of, String reason, Series series) {
    return row(
        of, Optional.empty(), reason, new Said(of.none(reason), CurveBasis.of(series, List.of())));
  }

  private static CurveRow row(Of of, Optional<CurveRow.Curve> curve, String reason, Said said) {
    return new CurveRow(
        of.place().site().isPresent() ? Judged.Scope.SITE : Judged.Scope.RAFT,
        of.place(),
        curve,
        reason,
        said.target(),
        said.basis());
  }

  private static String joined(String a, String b) {
    return a.isEmpty() || b.isEmpty() ? a + b : a + "; " + b;
  }
}
