// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class StationStepTest {
  @Test
  void fallOfTheOnlyPondAtAStationWithoutANameMayBeWilting() {
    StationStep fall = new StationStep("", Math.log(0.7), 1, 6, false);
    assertEquals(
        "all 6 rafts at the station stepped by -30 % off their own growth in one evening, whatever"
            + " their size: taken for the camera's and taken off until mended, for plants hardly do"
            + " so; yet see that they have not wilted",
        fall.words() + fall.whose());
  }

  @Test
  void riseAndWhatAllPondsShowAreTheCameras() {
    String camera = ": the camera, not the plants; taken off until mended";
    assertEquals(camera, new StationStep("bench", Math.log(1.3), 1, 6, false).whose());
    assertEquals(camera, new StationStep("bench", Math.log(0.7), 1, 6, true).whose());
  }
}
