// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.FitGrowth;
import org.raftgauge.core.growth.FitRule;
import org.raftgauge.core.growth.FitRule.Outliers;
import org.raftgauge.core.growth.FitRule.Scale;
import org.raftgauge.core.growth.Fitted;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.growth.GrowthFit;
import org.raftgauge.core.growth.NotFitted;
import org.raftgauge.core.growth.Series;

/** Fits the curve of a cohort, to which its plants' short series are then shrunk. */
public final class FitCohort {
  /** Plants from which the curve is estimated: more tell nothing new, and cost time. */
  private static final int MOST_PLANTS = 300;

  /** With no history, parameters may lie this many times the usual differences off the start. */
  private static final double UNKNOWN = 10;

  /** AICc within which a curve fits nearly as well: Burnham and Anderson 2002, section 2.6. */
  private static final double NEARLY = 10;

  private FitCohort() {}

  /**
   * Fits a cohort's curve from its own photos alone.
   *
   * @param plants series of the cohort's plants, any lengths; empty ones are passed over
   * @param rule candidates and persistent error
   * @return the curve, or the reason: usually that the photos are too few for any candidate
   */
  public static CohortFit of(List<Series> plants, CohortRule rule) {
    List<Series> used = used(plants);
    if (used.isEmpty()) {
      return new NoCohortCurve("no plant has a photo");
    }
    Series typical = TypicalSeries.of(sample(used));
    GrowthFit first = FitGrowth.of(typical, typicalRule(rule.models()));
    if (first instanceof Fitted fitted) {
      CohortPrior loose = CohortPrior.ofCrop(fitted.curve(), UNKNOWN);
      return fitted(used, loose, rule.persistentFraction(), others(typical, fitted, rule));
    }
    return new NoCohortCurve(
        "its cohort as a whole has no curve (" + ((NotFitted) first).reason() + ")");
  }

  /**
   * Fits a cohort's curve from its photos and what is known of the crop, so that the first evening
   * has a curve, and extrapolation follows history until the cohort's own photos say otherwise.
   *
   * @param plants series of the cohort's plants; may be empty
   * @param rule persistent error; the curve is the prior's
   * @param prior what is known of the crop
   */
  public static CohortCurve of(List<Series> plants, CohortRule rule, CohortPrior prior) {
    return fitted(used(plants), prior, rule.persistentFraction(), Extrapolation.ofHistory());
  }

  /**
   * Makes what is known of a crop from whole past cycles: one model for all, and how they differ.
   *
   * @param cycles the plants' series of each past cycle of the same crop and variety
   * @param rule candidates and persistent error
   * @return empty where no candidate fits the cycles
   */
  public static Optional<CohortPrior> priorOf(List<List<Series>> cycles, CohortRule rule) {
    List<Series> all = cycles.stream().flatMap(List::stream).toList();
    if (!(of(all, rule) instanceof CohortCurve pooled)) {
      return Optional.empty();
    }
    List<CohortCurve> curves = new ArrayList<>();
    CohortPrior start = CohortPrior.ofCrop(pooled.curve(), UNKNOWN);
    for (List<Series> cycle : cycles) {
      if (!used(cycle).isEmpty()) {
        curves.add(of(cycle, rule, start));
      }
    }
    return Optional.of(CohortPrior.ofCycles(curves));
  }

  private static FitRule typicalRule(List<CurveModel> models) {
    return new FitRule(Scale.LN_AREA, models, Outliers.KEEP, 0.03);
  }

  /** Returns the candidates that fit the typical plant nearly as well as the chosen one. */
  private static Extrapolation others(Series typical, Fitted chosen, CohortRule rule) {
    List<GrowthCurve> others = new ArrayList<>();
    Optional<String> doubt = chosen.asymptoteDoubt();
    double least = chosen.working().aicc().orElse(0);
    for (CurveModel model : rule.models()) {
      GrowthFit fit = FitGrowth.of(typical, typicalRule(List.of(model)));
      if (fit instanceof Fitted other
          && model != chosen.curve().model()
          && other.working().aicc().orElse(Double.POSITIVE_INFINITY) < least + NEARLY) {
        others.add(other.curve());
        if (doubt.isEmpty() && other.asymptoteCm2().isEmpty()) {
          doubt = Optional.of("asymptote not identified: a curve without one fits about as well");
        }
      }
    }
    return new Extrapolation(others, doubt);
  }

  private static CohortCurve fitted(
      List<Series> used, CohortPrior prior, double persistent, Extrapolation extrapolation) {
    List<Series> sample = sample(used);
    Estimated estimated = new EstimateCohort(sample, prior, persistent).run(prior.theta());
    double first = Double.POSITIVE_INFINITY;
    double last = Double.NEGATIVE_INFINITY;
    for (Series plant : used) {
      first = Math.min(first, plant.dat(0));
      last = Math.max(last, plant.dat(plant.size() - 1));
    }
    first = used.isEmpty() ? 0 : first;
    last = used.isEmpty() ? 0 : last;
    return new CohortCurve(
        estimated, new CohortCurve.Basis(used.size(), first, last, persistent, extrapolation));
  }

  private static List<Series> used(List<Series> plants) {
    return plants.stream().filter(plant -> plant.size() > 0).toList();
  }

  /** Returns every so-manieth plant, the same ones each time. */
  private static List<Series> sample(List<Series> plants) {
    if (plants.size() <= MOST_PLANTS) {
      return plants;
    }
    List<Series> out = new ArrayList<>(MOST_PLANTS);
    for (int i = 0; i < MOST_PLANTS; i++) {
      out.add(plants.get((int) ((long) i * plants.size() / MOST_PLANTS)));
    }
    return out;
  }
}
