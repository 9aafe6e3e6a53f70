// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.growth.GrowthCurve;

/**
 * What other curves, which fit a cohort's photos about as well, say beyond them.
 *
 * <p>Source of the idea: Burnham and Anderson 2002, Model Selection and Multimodel Inference,
 * section 4.3 (variance between models); here unweighted, since plants that err alike make weights
 * too sure.
 *
 * @param others curves within 10 of the least AICc
 * @param doubt why the asymptote is open; empty where it is not
 */
record Extrapolation(List<GrowthCurve> others, Optional<String> doubt) {
  Extrapolation {
    others = List.copyOf(others);
  }

  static Extrapolation ofHistory() {
    return new Extrapolation(List.of(), Optional.empty());
  }

  /** Returns the mean squared difference to the others, all brought together at the last photo. */
  double variance(GrowthCurve curve, double lastDat, double dat) {
    if (others.isEmpty() || dat <= lastDat) {
      return 0;
    }
    double sum = 0;
    for (GrowthCurve other : others) {
      double risen = other.lnArea(dat) - other.lnArea(lastDat);
      double ours = curve.lnArea(dat) - curve.lnArea(lastDat);
      sum += (risen - ours) * (risen - ours);
    }
    return sum / others.size();
  }
}
