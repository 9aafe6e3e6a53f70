// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.LeftOut;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Size;
import org.raftgauge.core.grader.Term;
import org.raftgauge.core.grader.Validity;

/** A grader of one open line, weighed from 100 to 400 cm2 until 15 March 2027. */
final class OpenLine {
  private OpenLine() {}

  /**
   * Makes it.
   *
   * @param level of ln weight
   * @param slope with ln area
   * @param levelVariance of the level alone
   */
  static Grader grader(double level, double slope, double levelVariance) {
    RegimeFit fit =
        new RegimeFit(
            new RegimeFit.Numbers(
                List.of(Term.of(), Term.of(Size.AREA)),
                "least squares",
                0.1,
                28,
                1,
                30,
                new LeftOut(0, 0, 0),
                new RegimeFit.Limits(0, 0, 0, 1),
                new Validity(
                    new EnumMap<>(Map.of(Size.AREA, new Validity.Range(100, 400))),
                    10,
                    200,
                    Set.of(""))),
            new double[] {level, slope},
            new double[][] {{levelVariance, 0}, {0, 0}});
    Grader.Origin origin =
        new Grader.Origin(
            "2027-03-21T08:00Z",
            "test",
            "whole",
            "2027-03-01T08:00Z",
            "2027-03-15T08:00Z",
            24,
            "x");
    return new Grader("c", origin, Map.of(Regime.OPEN, fit), Map.of(), Optional.empty(), List.of());
  }
}
