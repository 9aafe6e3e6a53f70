// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.Locale;
import java.util.OptionalDouble;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.raftgauge.core.leastsquares.FitOutcome;
import org.raftgauge.core.leastsquares.Interval;
import org.raftgauge.core.leastsquares.MeanFunction;
import org.raftgauge.core.leastsquares.NonlinearFit;
import org.raftgauge.core.leastsquares.Points;
import org.raftgauge.core.leastsquares.ProfileInterval;
import org.raftgauge.core.leastsquares.Solved;

/** Finds the day on which a fitted curve reaches a size. */
final class FindTarget {
  private final Fitted fit;
  private final double targetCm2;

  FindTarget(Fitted fit, double targetCm2) {
    if (!(targetCm2 > 0) || Double.isInfinite(targetCm2)) {
      throw new IllegalArgumentException("targetCm2 must be finite and > 0, got " + targetCm2);
    }
    this.fit = fit;
    this.targetCm2 = targetCm2;
  }

  TargetDay find() {
    double first = fit.firstDat();
    double farthest = fit.farthestDat();
    double ln = Math.log(targetCm2);
    if (fit.curve().lnArea(first) >= ln) {
      return new TargetDay.NotReached(said("was larger than %.4g cm2 from the first photo on"));
    }
    if (!(fit.curve().lnArea(farthest) >= ln)) {
      return new TargetDay.NotReached(whyNot(farthest));
    }
    double dat =
        new BrentSolver(1e-14, 1e-11)
            .solve(200, day -> fit.curve().lnArea(day) - ln, first, farthest);
    return new TargetDay.ReachedOn(fit.targetEstimate(dat), fit.targetProfile(targetCm2, dat));
  }

  private String whyNot(double farthest) {
    OptionalDouble asymptote = fit.asymptoteCm2();
    if (asymptote.isPresent() && asymptote.getAsDouble() <= targetCm2) {
      return String.format(
          Locale.ROOT,
          "the curve levels off at %.4g cm2, under %.4g cm2",
          asymptote.getAsDouble(),
          targetCm2);
    }
    String limit = fit.asymptoteDoubt().map(doubt -> " (" + doubt + ")").orElse("");
    return String.format(
        Locale.ROOT,
        "%.4g cm2 is not reached by day %.1f, the farthest that the photos carry the curve%s",
        targetCm2,
        farthest,
        limit);
  }

  private String said(String text) {
    return String.format(Locale.ROOT, text, targetCm2);
  }

  /**
   * Returns the profile interval of the first parameter; open where the curve is not found again.
   */
  static Interval profile(MeanFunction through, Points points, double[] start) {
    FitOutcome again = NonlinearFit.of(through, points, start);
    return again instanceof Solved solved
        ? ProfileInterval.of(through, points, solved, 0)
        : new Interval(OptionalDouble.empty(), OptionalDouble.empty());
  }
}
