// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.Forecast;
import org.raftgauge.core.cohort.PlantCurve;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.Estimate;
import org.raftgauge.core.growth.Fitted;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.growth.Series;

/** Puts a curve into the numbers of a row. */
final class OneCurve {

  private OneCurve() {}

  /** Returns a curve fitted to a series of its own. */
  static CurveRow.Curve fitted(Fitted fit, Series series) {
    int parameters = fit.curve().parameters().size();
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i < parameters; i++) {
      errors.add(fit.standardError(i));
    }
    Optional<Estimate> rate = fit.rgrPerDay(series.dat(series.size() - 1));
    return new CurveRow.Curve(
        fit.curve(),
        errors,
        fit.asymptoteCm2(),
        finite(fit.working().aicc()),
        OptionalDouble.of(fit.r2LnArea()),
        rate.map(r -> new CurveRow.Rate(r.value(), r.lo95(), r.hi95())));
  }

  /** A curve without any residual, as through areas that are all the same, has no likelihood. */
  private static OptionalDouble finite(OptionalDouble number) {
    return number.stream()
        .filter(Double::isFinite)
        .mapToObj(OptionalDouble::of)
        .findFirst()
        .orElse(OptionalDouble.empty());
  }

  /** Returns the cohort's curve, moved by what a plant's own photos say. */
  static CurveRow.Curve shrunk(CohortCurve cohort, PlantCurve plant, Series series) {
    CurveModel model = cohort.curve().model();
    double[] working = plant.working().stream().mapToDouble(Double::doubleValue).toArray();
    GrowthCurve curve = GrowthCurve.ofWorking(model, working);
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i < working.length; i++) {
      double sd = Math.sqrt(Math.max(0, plant.covariance(i, i)));
      errors.add(sd * model.parameterSlope(i, working));
    }
    boolean levelsOff = model.hasAsymptote() && cohort.asymptoteDoubt().isEmpty();
    Forecast rate = plant.rgrPerDay(series.dat(series.size() - 1));
    return new CurveRow.Curve(
        curve,
        errors,
        levelsOff ? OptionalDouble.of(curve.parameters().get(0)) : OptionalDouble.empty(),
        OptionalDouble.empty(),
        explained(curve, series),
        Optional.of(new CurveRow.Rate(rate.mean(), rate.lo95(), rate.hi95())));
  }

  /** Returns the share of the variance of ln(area) of open photos that a curve explains. */
  private static OptionalDouble explained(GrowthCurve curve, Series series) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < series.size(); i++) {
      if (!series.isClosed(i)) {
        sum += series.lnArea(i);
        n++;
      }
    }
    double left = 0;
    double total = 0;
    for (int i = 0; i < series.size(); i++) {
      if (!series.isClosed(i)) {
        left += Math.pow(series.lnArea(i) - curve.lnArea(series.dat(i)), 2);
        total += Math.pow(series.lnArea(i) - sum / n, 2);
      }
    }
    return n > 2 && total > 0 ? OptionalDouble.of(1 - left / total) : OptionalDouble.empty();
  }
}
