// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.List;
import org.raftgauge.core.growth.CurveModel;

/**
 * How a cohort's curve is fitted.
 *
 * @param models candidates for the cohort's curve; a prior's model goes before them
 * @param persistentFraction standard deviation, as a fraction of the area, of the part of a site's
 *     area error that is the same in all its photos (height, pose)
 */
public record CohortRule(List<CurveModel> models, double persistentFraction) {
  /** Checks the parts. */
  public CohortRule {
    models = List.copyOf(models);
    if (models.isEmpty()) {
      throw new IllegalArgumentException("models must not be empty");
    }
    if (!(persistentFraction >= 0) || persistentFraction > 1) {
      throw new IllegalArgumentException(
          "persistentFraction must be in 0..1, got " + persistentFraction);
    }
  }

  /** Returns the usual rule; 2 % of persistent error is a working value for a well-set station. */
  public static CohortRule defaults() {
    return new CohortRule(
        List.of(
            CurveModel.LOGISTIC, CurveModel.GOMPERTZ, CurveModel.EXPOLINEAR, CurveModel.RICHARDS),
        0.02);
  }

  /** Returns the same rule with other candidates. */
  public CohortRule withModels(CurveModel... candidates) {
    return new CohortRule(List.of(candidates), persistentFraction);
  }

  /** Returns the same rule with another persistent error. */
  public CohortRule withPersistentFraction(double fraction) {
    return new CohortRule(models, fraction);
  }
}
