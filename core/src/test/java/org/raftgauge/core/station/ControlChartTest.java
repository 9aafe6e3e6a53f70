// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ControlChartTest {
  private static final ControlRule RULE = ControlRule.usual(0.1);

  /** Normal values of level 10 and standard deviation 1. */
  private static double[] noise(int n, long seed) {
    Random random = new Random(seed);
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = 10 + random.nextGaussian();
    }
    return values;
  }

  private static double[] stepped(double[] values, int from, double by) {
    double[] stepped = values.clone();
    for (int i = from; i < stepped.length; i++) {
      stepped[i] += by;
    }
    return stepped;
  }

  private static int outs(List<ControlPoint> points) {
    return (int) points.stream().filter(p -> p.state().out()).count();
  }

  @Test
  void firstEightValuesAreOnlyLearntFrom() {
    List<ControlPoint> points = ControlChart.of(new double[] {1, 9, 1, 9, 1, 9, 1, 9, 5}, RULE);
    for (int i = 0; i < 8; i++) {
      assertEquals(ControlPoint.State.LEARNING, points.get(i).state());
    }
    assertEquals(ControlPoint.State.IN_CONTROL, points.get(8).state());
  }

  @Test
  void levelAndSpreadComeFromThePast() {
    ControlPoint point = ControlChart.of(new double[] {1, 2, 3, 4, 4, 5, 6, 7, 4}, RULE).get(8);
    assertEquals(4, point.level());
    // Distances from 4: 3 2 1 0 0 1 2 3, median 1.5, times 1.4826 is 2.22; root mean square
    // sqrt(28 / 8) = 1.87; the larger, times 1 + 3 / 8.
    assertEquals(1.5 * 1.4826 * 1.375, point.spread(), 1e-12);
    // Equal values scatter by the rule's least spread.
    assertEquals(0.1, ControlChart.of(new double[9], RULE).get(8).spread());
  }

  @Test
  void jumpIsSeenAtOnceAndItsSideSaid() {
    double[] up = stepped(noise(30, 1), 29, 12);
    double[] down = stepped(noise(30, 1), 29, -12);
    assertEquals(ControlPoint.State.HIGH, ControlChart.of(up, RULE).get(29).state());
    assertEquals(ControlPoint.State.LOW, ControlChart.of(down, RULE).get(29).state());
  }

  @Test
  void smallLastingShiftIsSeenWithinTenValuesMostTimes() {
    int seen = 0;
    for (int seed = 0; seed < 100; seed++) {
      List<ControlPoint> points = ControlChart.of(stepped(noise(40, seed), 30, 3), RULE);
      seen += outs(points.subList(30, 40)) > 0 ? 1 : 0;
    }
    // 94 of 100 when the rule was found by simulation with other numbers; binomial scatter 2.4.
    assertTrue(seen >= 86, seen + " of 100");
  }

  @Test
  void faultIsNotLearntHoweverLongItLasts() {
    List<ControlPoint> points = ControlChart.of(stepped(noise(120, 2), 30, 12), RULE);
    assertEquals(90, outs(points.subList(30, 120)));
  }

  @Test
  void repairedStationIsInControlAgain() {
    double[] values = stepped(stepped(noise(60, 3), 30, 12), 40, -12);
    List<ControlPoint> points = ControlChart.of(values, RULE);
    assertEquals(10, outs(points.subList(30, 40)));
    // The moving average still remembers the fault for some evenings.
    assertEquals(0, outs(points.subList(48, 60)));
  }

  @Test
  void slowGrowthIsFollowed() {
    double[] values = noise(100, 4);
    for (int i = 0; i < values.length; i++) {
      values[i] += 0.03 * i;
    }
    assertTrue(outs(ControlChart.of(values, RULE)) <= 1);
  }

  @Test
  void falseAlarmsAreRareOverStationYears() {
    int years = 60;
    int alarms = 0;
    for (int year = 0; year < years; year++) {
      boolean before = false;
      for (ControlPoint point : ControlChart.of(noise(365, 1000 + year), RULE)) {
        alarms += point.state().out() && !before ? 1 : 0;
        before = point.state().out();
      }
    }
    // Alarms (runs of points out) of one sign in years of pure normal scatter: 0.2 a year in a
    // simulation of 120 years with other numbers, 12 in 60 years; 27 is 4.3 standard deviations up.
    assertTrue(alarms <= 27, alarms + " alarms in " + years + " years");
  }

  @Test
  void ruleThatCannotBeIsNamed() {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> new ControlRule(14, 3, 0.3, 4, 5, 0.1));
    assertEquals(
        "rule needs 5 <= least <= window and 0 < lambda <= 1, got 3, 14, 0.3", e.getMessage());
  }
}
