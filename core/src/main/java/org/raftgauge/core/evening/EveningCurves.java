// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.CohortFit;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.cohort.FitCohort;
import org.raftgauge.core.cohort.NoCohortCurve;
import org.raftgauge.core.cohort.PlantCurve;
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
import org.raftgauge.core.track.Verdict;

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

  private final CropBook book;
  private final CyclePriors past;
  private final Set<String> departing = new HashSet<>();
  private final List<CurveRow> rows = new ArrayList<>();

  private EveningCurves(Tonight tonight) {
    this.book = tonight.book();
    this.past = CyclePriors.of(tonight.plants());
    for (Judged row : tonight.verdicts()) {
      if (row.scope() == Judged.Scope.SITE && row.verdict() != Verdict.ON_TRACK) {
        departing.add(row.place().plant());
      }
    }
  }

  /**
   * Fits.
   *
   * @param tonight plants, past cycles and verdicts
   * @return a row for each raft and each plant that stands, rafts first
   */
  static List<CurveRow> of(Tonight tonight) {
    EveningCurves curves = new EveningCurves(tonight);
    GroupCohorts.of(tonight.plants().standing()).forEach(curves::cohort);
    curves.rows.sort(ORDER);
    return curves.rows;
  }

  /** A cohort's curve, and whether it leans on past cycles: then one photo moves it sanely. */
  private record Leaned(CohortFit fit, boolean onPast) {
    int fewestOpen() {
      return onPast ? 1 : FEWEST_OPEN;
    }
  }

  private void cohort(List<PlantSeries> plants) {
    List<Series> series = plants.stream().map(AreaSeries::of).toList();
    List<Series> sample = sample(series.stream().filter(s -> s.size() > 0).toList());
    Leaned fit =
        past.prior(plants.get(0))
            .map(prior -> new Leaned(FitCohort.of(sample, CohortRule.defaults(), prior), true))
            .orElseGet(() -> new Leaned(fit(sample), false));
    Map<String, List<PlantSeries>> rafts = new TreeMap<>();
    for (int i = 0; i < plants.size(); i++) {
      PlantSeries plant = plants.get(i);
      rafts.computeIfAbsent(plant.planting().raft(), r -> new ArrayList<>()).add(plant);
      CurveRow.Place place = place(plant.planting(), Optional.of(plant.site()), plant.plant());
      boolean own = departing.contains(plant.plant());
      rows.add(row(place, series.get(i), own, fit));
    }
    rafts.forEach(
        (raft, on) ->
            rows.add(
                row(
                    place(on.get(0).planting(), Optional.empty(), ""),
                    AreaSeries.median(on),
                    true,
                    fit)));
  }

  private static CurveRow.Place place(Planting planting, Optional<SiteId> site, String plant) {
    return new CurveRow.Place(planting.pond(), planting.raft(), site, plant, planting.crop());
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

  private static List<Series> sample(List<Series> all) {
    int most = Math.min(COHORT_PLANTS, all.size());
    List<Series> sample = new ArrayList<>(most);
    for (int i = 0; i < most; i++) {
      sample.add(all.get((int) ((long) i * all.size() / most)));
    }
    return sample;
  }

  private CurveRow row(CurveRow.Place place, Series series, boolean own, Leaned cohort) {
    String why = "";
    if (own && open(series) < FEWEST_OWN) {
      why = "no curve of its own: " + open(series) + " open photos are too few";
    } else if (own) {
      GrowthFit fit = FitGrowth.of(series, FitRule.defaults());
      if (fit instanceof Fitted fitted) {
        return row(
            place,
            Optional.of(OneCurve.fitted(fitted, series)),
            fitted.asymptoteDoubt().orElse(""),
            basis(series, fitted.discountedDat()));
      }
      why = "no curve of its own: " + ((NotFitted) fit).reason();
    }
    return shrunk(place, series, cohort, why);
  }

  private CurveRow shrunk(CurveRow.Place place, Series series, Leaned cohort, String why) {
    if (open(series) < cohort.fewestOpen()) {
      return row(place, Optional.empty(), tooFew(series), basis(series, List.of()));
    }
    if (cohort.fit() instanceof NoCohortCurve) {
      String reason = "its cohort has too few evenings for a curve";
      return row(place, Optional.empty(), joined(why, reason), basis(series, List.of()));
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
        basis(series, plant.discountedDat()));
  }

  private static String tooFew(Series series) {
    if (series.size() == 0) {
      return "no canopy was measured yet";
    }
    return open(series) == 0
        ? "every photo is a lower bound: the plant is closed"
        : "one open photo is too few";
  }

  private static int open(Series series) {
    int open = 0;
    for (int i = 0; i < series.size(); i++) {
      open += series.isClosed(i) ? 0 : 1;
    }
    return open;
  }

  private static CurveRow.Basis basis(Series series, List<Double> discounted) {
    int n = series.size();
    OptionalDouble last = n == 0 ? OptionalDouble.empty() : OptionalDouble.of(series.dat(n - 1));
    return new CurveRow.Basis(n, n - open(series), last, discounted);
  }

  private CurveRow row(
      CurveRow.Place place, Optional<CurveRow.Curve> curve, String reason, CurveRow.Basis basis) {
    return new CurveRow(
        place.site().isPresent() ? Judged.Scope.SITE : Judged.Scope.RAFT,
        place,
        curve,
        reason,
        new CurveRow.Target(OptionalDouble.empty(), noTarget(place)),
        basis);
  }

  /** Says why no day of harvest is foretold. */
  private String noTarget(CurveRow.Place place) {
    boolean harvest =
        book.crops().values().stream()
            .anyMatch(c -> c.name().equals(place.crop()) && c.harvest().isPresent());
    return harvest
        ? "the harvest is set as a weight; an area for it needs a grader"
        : "crops.yaml sets no harvest for " + place.crop();
  }

  private static String joined(String a, String b) {
    return a.isEmpty() || b.isEmpty() ? a + b : a + "; " + b;
  }
}
