// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.LeftOut;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Size;
import org.raftgauge.core.grader.Term;
import org.raftgauge.core.grader.Validity;

class LineTest {
  private static Grader grader(double slope) {
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
            new double[] {-2, slope},
            new double[][] {{0, 0}, {0, 0}});
    Grader.Origin origin = new Grader.Origin("", "", "whole", "", "", 24, "");
    return new Grader("c", origin, Map.of(Regime.OPEN, fit), Map.of(), Optional.empty(), List.of());
  }

  private static Line line(double slope) {
    return Line.closed(grader(slope), "").orElseThrow();
  }

  @Test
  void withinTheWeighingsTheFitIsFollowed() {
    // By hand: -2 + 1.2 ln 200.
    assertEquals(-2 + 1.2 * Math.log(200), line(1.2).at(Math.log(200)).orElseThrow().lnWeight, 1e-9);
  }

  @Test
  void beyondTheWeighingsTheSlopeIsHeldToWhatPlantsCanDo() {
    // Slope 2 would double a plant's weight per area in no time: 1.5 at most from 400 cm2 on.
    double told = line(2).at(Math.log(800)).orElseThrow().lnWeight;

    assertEquals(-2 + 2 * Math.log(400) + 1.5 * Math.log(2), told, 1e-9);
  }

  @Test
  void theSizeOfAWeightHasThatWeight() {
    Line line = line(1.2);
    for (double grams : new double[] {5, 60, 150, 900}) {
      double size = line.lnAreaOf(Math.log(grams)).orElseThrow();
      assertEquals(Math.log(grams), line.at(size).orElseThrow().lnWeight, 1e-9);
    }
  }

  @Test
  void aWeightThatNoSizeHasIsNotTold() {
    assertTrue(line(1.2).lnAreaOf(-100).isEmpty());
  }
}
