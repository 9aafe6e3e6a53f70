// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.List;

/**
 * How growth curves are fitted.
 *
 * @param scale what is fitted: ln area, or area itself
 * @param models candidates, of which the one of least AICc is taken; at least one
 * @param outliers whether points far off every candidate are left out and named
 * @param scatterFraction by how much a plant strays from a smooth curve, as a fraction of its area;
 *     added to the error of each area when points are weighted on ln area
 */
public record FitRule(
    Scale scale, List<CurveModel> models, Outliers outliers, double scatterFraction) {
  /** What is fitted. */
  public enum Scale {
    /** Least squares on ln area: errors are proportional to the area. */
    LN_AREA,
    /** Least squares on area: errors are the same at every size. */
    AREA
  }

  /** What is done with points far off the curve. */
  public enum Outliers {
    /** Every point counts. */
    KEEP,
    /** Points that a Huber fit puts more than 4.5 robust deviations off are left out and named. */
    DISCOUNT
  }

  /** Checks the parts. */
  public FitRule {
    models = List.copyOf(models);
    if (models.isEmpty()) {
      throw new IllegalArgumentException("models must not be empty");
    }
    if (!(scatterFraction >= 0) || Double.isInfinite(scatterFraction)) {
      throw new IllegalArgumentException(
          "scatterFraction must be finite and >= 0, got " + scatterFraction);
    }
  }

  /**
   * Returns the usual rule: all curves on ln area, bad photos discounted.
   *
   * <p>Scatter 3 %: working value, of the order of a good photo's own error.
   */
  public static FitRule defaults() {
    return new FitRule(Scale.LN_AREA, List.of(CurveModel.values()), Outliers.DISCOUNT, 0.03);
  }

  /** Returns plain least squares of one curve on area, as statistical packages fit it. */
  public static FitRule onArea(CurveModel model) {
    return new FitRule(Scale.AREA, List.of(model), Outliers.KEEP, 0);
  }

  /** Returns the same rule with other candidates. */
  public FitRule withModels(CurveModel... candidates) {
    return new FitRule(scale, List.of(candidates), outliers, scatterFraction);
  }

  /** Returns the same rule with outliers treated otherwise. */
  public FitRule withOutliers(Outliers treatment) {
    return new FitRule(scale, models, treatment, scatterFraction);
  }
}
