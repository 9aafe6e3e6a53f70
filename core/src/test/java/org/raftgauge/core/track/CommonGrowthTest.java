// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Twelve plants on six evenings: each ln(area) is the plant's own value plus 0.1 an evening. */
class CommonGrowthTest {
  private static CommonGrowth.Look look(int plant, int day, double more) {
    return new CommonGrowth.Look(plant, day, day + 0.75, 0.07 * plant + 0.1 * day + more);
  }

  private static List<CommonGrowth.Look> looks() {
    List<CommonGrowth.Look> looks = new ArrayList<>();
    for (int day = 0; day < 6; day++) {
      for (int plant = 0; plant < 12; plant++) {
        looks.add(look(plant, day, 0));
      }
    }
    return looks;
  }

  private static void assertTenPercentAnEvening(List<CommonGrowth.Look> looks) {
    List<CommonGrowth.Point> points = CommonGrowth.of(looks, 4).points();
    assertEquals(6, points.size());
    for (int i = 1; i < 6; i++) {
      assertEquals(0.1, points.get(i).lnArea() - points.get(i - 1).lnArea(), 1e-3, "step " + i);
    }
  }

  @Test
  void whatPlantsHaveInCommonIsTheirGrowth() {
    assertTenPercentAnEvening(looks());
  }

  @Test
  void largePlantsThatAreMissingFromAnEveningOnMoveNothing() {
    List<CommonGrowth.Look> looks = looks();
    looks.removeIf(l -> l.day() >= 3 && l.plant() >= 6);
    assertTenPercentAnEvening(looks);
  }

  @Test
  void aQuarterOfPlantsThatStopMovesNothing() {
    List<CommonGrowth.Look> looks = new ArrayList<>();
    for (CommonGrowth.Look l : looks()) {
      double lost = l.plant() < 3 ? -0.1 * Math.max(0, l.day() - 2) : 0;
      looks.add(look(l.plant(), (int) l.day(), lost));
    }
    List<CommonGrowth.Point> points = CommonGrowth.of(looks, 4).points();
    // Biweights let the quarter in by a little.
    assertEquals(0.5, points.get(5).lnArea() - points.get(0).lnArea(), 0.03);
  }

  @Test
  void eveningOfTooFewPlantsIsLeftOut() {
    List<CommonGrowth.Look> looks = looks();
    looks.removeIf(l -> l.day() == 4 && l.plant() > 2);
    assertEquals(
        List.of(0.0, 1.0, 2.0, 3.0, 5.0),
        CommonGrowth.of(looks, 4).points().stream().map(CommonGrowth.Point::day).toList());
  }
}
