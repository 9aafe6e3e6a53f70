// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LineTest {
  private static Line line(double slope) {
    return Line.closed(OpenLine.grader(-2, slope, 0), "").orElseThrow();
  }

  @Test
  void withinTheWeighingsTheFitIsFollowed() {
    // By hand: -2 + 1.2 ln 200.
    assertEquals(
        -2 + 1.2 * Math.log(200), line(1.2).at(Math.log(200)).orElseThrow().lnWeight, 1e-9);
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
