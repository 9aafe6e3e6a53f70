// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.LeftOut;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Size;
import org.raftgauge.core.grader.Term;
import org.raftgauge.core.grader.Validity;

/** Days until a head has the harvest's weight, by a grader: ln g = -3 + 1.3 ln cm2, 45 to 400. */
class GraderTargetTest {
  private static final int EVENING = 12;

  @TempDir Path folder;

  private static Grader grader(String fittedAt) {
    RegimeFit fit =
        new RegimeFit(
            new RegimeFit.Numbers(
                List.of(Term.of(), Term.of(Size.AREA)),
                "least squares",
                0.05,
                30,
                1,
                32,
                new LeftOut(0, 0, 0),
                new RegimeFit.Limits(0, 0, 0, 1),
                new Validity(
                    new EnumMap<>(Map.of(Size.AREA, new Validity.Range(45, 400))),
                    7,
                    120,
                    Set.of(""))),
            new double[] {-3, 1.3},
            new double[][] {{0.01, -0.002}, {-0.002, 0.0004}});
    Grader.Origin origin =
        new Grader.Origin(
            fittedAt, "test", "whole", "2027-02-01T00:00:00Z", "2027-02-02T00:00:00Z", 24, "here");
    return new Grader(
        "small", origin, Map.of(Regime.OPEN, fit), Map.of(), Optional.empty(), List.of());
  }

  private CurveRow.Target target(String weightG, String fittedAt) {
    SmallFarm farm =
        new SmallFarm(folder).harvest("head_weight_g: " + weightG + ", window_dat: [25, 30]");
    return CloseEvening.of(
            farm.book(),
            farm.seen(EVENING),
            SmallFarm.day(EVENING),
            Map.of("small", grader(fittedAt)))
        .curves()
        .stream()
        .filter(row -> row.place().raft().equals("R-3"))
        .filter(row -> row.place().site().equals(Optional.of(SiteId.parse("A2"))))
        .findFirst()
        .orElseThrow()
        .target();
  }

  @Test
  void daysToTargetRunToTheAreaThatWeighsAHead() {
    CurveRow.Target target = target("15", "2027-03-01T00:00:00Z");
    // By hand: exp((ln 15 + 3) / 1.3) = 80.7 cm2.
    assertEquals(80.7, target.areaCm2().orElseThrow(), 0.1);
    // 8 exp(0.12 t) has it at t = 19.26, 6.51 after day 12.75; the plant's own 14 % are 1.2 days.
    assertEquals(6.51, target.days().orElseThrow().days(), 1.8);
  }

  @Test
  void weightBeyondTheWeighingsHasNoTarget() {
    CurveRow.Target target = target("200", "2027-03-01T00:00:00Z");
    assertTrue(target.areaCm2().isEmpty());
    // By hand: exp((ln 200 + 3) / 1.3) = 592 cm2.
    assertEquals(
        "no weighing reaches 200 g: area_cm2 592 is beyond the weighings (45 to 400)",
        target.reason());
  }

  @Test
  void graderFittedAfterTheEveningIsNotKnownYet() {
    assertEquals(
        "the harvest is set as a weight; an area for it needs a grader or a growth_curve",
        target("15", "2027-03-20T00:00:00Z").reason());
  }
}
