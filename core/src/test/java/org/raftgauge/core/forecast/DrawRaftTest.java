// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.LeftOut;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Size;
import org.raftgauge.core.grader.Term;
import org.raftgauge.core.grader.Validity;

/**
 * The sum of twelve plants, against numbers worked out with R 4 by the formula of correlated
 * lognormal numbers (shared test data, reference values F1).
 */
class DrawRaftTest {
  private static final double[] AREA_CM2 = {
    180, 200, 215, 230, 240, 250, 255, 262, 270, 281, 295, 310
  };
  private static final int DRAWS = 10_000;
  private static final Planting PLANTING =
      new Planting(
          "R",
          "",
          "",
          "lettuce",
          "",
          "",
          Set.of(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          "");

  /** Coefficients, residual spread and covariance of the worked allometry; smearing exp(s2 / 2). */
  private static Grader grader(int degreesOfFreedom) {
    double s = 0.05210483847;
    RegimeFit fit =
        new RegimeFit(
            new RegimeFit.Numbers(
                List.of(Term.of(), Term.of(Size.AREA)),
                "least squares",
                s,
                degreesOfFreedom,
                Math.exp(s * s / 2),
                12,
                new LeftOut(0, 0, 0),
                new RegimeFit.Limits(0, 0, 0, 1),
                new Validity(
                    new EnumMap<>(Map.of(Size.AREA, new Validity.Range(45, 400))),
                    7,
                    130,
                    Set.of(""))),
            new double[] {-2.956234028, 1.295123121},
            new double[][] {{0.012364501638, -0.002411864053}, {-0.002411864053, 0.000479235804}});
    Grader.Origin origin =
        new Grader.Origin("2027", "test", "whole", "2027", "2027", 24, "reference values");
    return new Grader(
        "lettuce", origin, Map.of(Regime.OPEN, fit), Map.of(), Optional.empty(), List.of());
  }

  private static RaftForecast forecast(int degreesOfFreedom) {
    ForecastRule rule = new ForecastRule(1, DRAWS, 7, 0);
    int days = rule.horizon() + 1;
    List<Double> none = Collections.nCopies(days, 0.0);
    CohortGrowth growth =
        new CohortGrowth(
            0, LocalDate.of(2027, 1, 1), 0.75, none, none, none, false, 0, Optional.empty(), 28);
    List<Outlook> plants = new ArrayList<>();
    for (double area : AREA_CM2) {
      Outlook.Size size = new Outlook.Size(Math.log(area), 0);
      plants.add(
          new Outlook(
              "p" + area, PLANTING, false, false, 20, growth, Collections.nCopies(days, size)));
    }
    RaftForecast.Who who =
        new RaftForecast.Who("R", "", "lettuce", "", "", 20, Optional.empty(), "test", 0);
    DrawRaft.Shared shared =
        new DrawRaft.Shared(
            new SharedDraws(rule),
            StandLoss.of(List.of(), Set.of(), Instant.EPOCH),
            rule.horizon());
    Optional<Weighing> weighing = Optional.of(new Weighing(grader(degreesOfFreedom)));
    return new DrawRaft(who, plants, weighing, shared).draw(rule.horizon());
  }

  @Test
  void theSumIsTheLognormalMeanWithParameterVariance() {
    // 796.4872206 g; 10 000 draws of a standard deviation of 15 g leave 0.15 g.
    assertEquals(796.4872206, forecast(1000).weightG(0).orElseThrow().mean(), 0.5);
  }

  @Test
  void theSharedErrorOfTheCalibrationDoesNotAverageOut() {
    Amount total = forecast(1000).weightG(0).orElseThrow();

    // SD of the total 19.21391879 g (12.19969806 if plants erred on their own), 80 %: 1.28155 SD
    // to each side; quantiles of 10 000 draws are known to about 0.4 g.
    assertEquals(2 * 1.2815515655 * 19.21391879, total.hi80() - total.lo80(), 1.6);
    assertEquals(2 * 1.959964 * 19.21391879, total.hi95() - total.lo95(), 2.6);
  }

  @Test
  void tenDegreesOfFreedomWidenTheSharedPart() {
    // t with 10 degrees of freedom has the variance 10 / 8; the plants' own part stays.
    double shared = 19.21391879 * 19.21391879 - 12.19969806 * 12.19969806;
    double sd = Math.sqrt(shared * 10 / 8 + 12.19969806 * 12.19969806);
    Amount total = forecast(10).weightG(0).orElseThrow();

    double told = (total.hi80() - total.lo80()) / (2 * 1.2815515655);
    // A t's quantiles at 80 % lie a little nearer than its standard deviation says.
    assertEquals(sd, told, 0.04 * sd);
  }
}
