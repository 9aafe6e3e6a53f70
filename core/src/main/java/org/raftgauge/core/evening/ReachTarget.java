// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import org.raftgauge.core.cohort.PlantCurve;
import org.raftgauge.core.growth.Fitted;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.growth.TargetDay;

/** Finds the days from a plant's last photo to a size. */
final class ReachTarget {
  /** Days ahead that are looked at; a cycle or two. */
  private static final double FARTHEST_DAYS = 60;

  private static final double STEP_DAYS = 0.05;

  private ReachTarget() {}

  /** Finds them by a curve of the plant's own, with the interval of the profile likelihood. */
  static CurveRow.Target by(Fitted fit, Series series, double areaCm2) {
    double last = series.dat(series.size() - 1);
    TargetDay day = fit.dayOf(areaCm2);
    if (day instanceof TargetDay.ReachedOn on) {
      return reached(
          new CurveRow.Days(
              ahead(on.dat().value(), last),
              on.profile().lo().isPresent()
                  ? OptionalDouble.of(ahead(on.profile().lo().getAsDouble(), last))
                  : OptionalDouble.of(0),
              on.profile().hi().isPresent()
                  ? OptionalDouble.of(ahead(on.profile().hi().getAsDouble(), last))
                  : OptionalDouble.empty()),
          areaCm2);
    }
    return CurveRow.Target.none(OptionalDouble.of(areaCm2), ((TargetDay.NotReached) day).reason());
  }

  private static double ahead(double dat, double last) {
    return Math.max(0, dat - last);
  }

  /**
   * Finds them by a curve shrunk to the cohort's: the interval is from the day on which the upper
   * end of the forecast of its area reaches the size to that on which the lower end does.
   */
  static CurveRow.Target by(PlantCurve plant, Series series, double areaCm2) {
    double last = series.dat(series.size() - 1);
    double ln = Math.log(areaCm2);
    OptionalDouble days = first(d -> plant.lnArea(last + d).mean() >= ln);
    if (days.isEmpty()) {
      return CurveRow.Target.none(
          OptionalDouble.of(areaCm2),
          String.format(
              Locale.ROOT, "%.4g cm2 is not reached in %.0f days", areaCm2, FARTHEST_DAYS));
    }
    return reached(
        new CurveRow.Days(
            days.getAsDouble(),
            first(d -> plant.lnArea(last + d).hi95() >= ln),
            first(d -> plant.lnArea(last + d).lo95() >= ln)),
        areaCm2);
  }

  private static CurveRow.Target reached(CurveRow.Days days, double areaCm2) {
    return new CurveRow.Target(
        Optional.of(days),
        OptionalDouble.of(areaCm2),
        days.days() == 0 ? "reached by the last photo" : "");
  }

  private static OptionalDouble first(DoublePredicate reached) {
    for (int step = 0; step * STEP_DAYS <= FARTHEST_DAYS; step++) {
      if (reached.test(step * STEP_DAYS)) {
        return OptionalDouble.of(step * STEP_DAYS);
      }
    }
    return OptionalDouble.empty();
  }
}
