// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DeparturesTest {
  /** Plants with a size of their own, a walk and photo errors of known spread, every second day. */
  private static List<List<double[]>> plants(int count, double photoSd, double walkSd) {
    Random random = new Random(8);
    List<List<double[]>> plants = new ArrayList<>();
    for (int p = 0; p < count; p++) {
      double off = 0.2 * random.nextGaussian();
      List<double[]> plant = new ArrayList<>();
      for (int age = 4; age <= 26; age += 2) {
        plant.add(new double[] {age, off + photoSd * random.nextGaussian()});
        off += Math.sqrt(2) * walkSd * random.nextGaussian();
      }
      plants.add(plant);
    }
    return plants;
  }

  @Test
  void photoErrorAndWalkAreToldApart() {
    // The spreads put in; 400 plants leave some 5 % of each.
    Departures told = Departures.of(plants(400, 0.03, 0.02));

    assertEquals(0.03, told.photoSd(), 0.003);
    assertEquals(0.02, told.walkSd(), 0.002);
    assertEquals(2, told.usualGapDays(), 1e-12);
  }

  @Test
  void plantsThatDoNotWalkHaveNoWalk() {
    assertEquals(0, Departures.of(plants(400, 0.03, 0)).walkSd(), 0.003);
  }

  @Test
  void aBadPhotoDoesNotCount() {
    List<List<double[]>> plants = plants(100, 0.03, 0.02);
    for (int p = 0; p < 10; p++) {
      plants.get(p).get(5)[1] += 1;
    }

    assertEquals(0.03, Departures.of(plants).photoSd(), 0.006);
  }

  @Test
  void aMedianOfEveningsErrsByPhotosAndByTheWalkSince() {
    // By hand: pi/2 * 0.03^2 / 5 = 0.00028274; walk 0.02^2 * (7 + 2 * 2 days) = 0.0044.
    Departures told = new Departures(0.03, 0.02, 2);

    assertEquals(Math.sqrt(0.00028274 + 0.0044), told.sd(5, 7), 1e-6);
  }

  @Test
  void tooFewEveningsLeaveTheUsualSpreads() {
    assertEquals(new Departures(0.04, 0.015, 2), Departures.of(plants(2, 0.03, 0.02)));
  }
}
