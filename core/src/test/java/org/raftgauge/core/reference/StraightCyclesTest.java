// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.reference.LeaveGroupOut.Others;
import org.raftgauge.core.reference.ThermalTime.Axis;
import org.raftgauge.core.reference.ThermalTime.AxisChoice;

/** References of cycles that grow along a straight line, where every answer is known by hand. */
class StraightCyclesTest {
  private static final double[] DAYS = IntStream.rangeClosed(3, 26).mapToDouble(d -> d).toArray();

  private static double line(double dat) {
    return 1 + 0.2 * dat;
  }

  private static PastCycle cycle(DoubleUnaryOperator off) {
    return PastCycle.of(
        DAYS, Arrays.stream(DAYS).map(d -> line(d) + off.applyAsDouble(d)).toArray());
  }

  @Test
  void threeCyclesAreEnoughAndGiveTheMiddleOne() {
    SmoothReference reference =
        SmoothReference.of(List.of(cycle(d -> -0.1), cycle(d -> 0), cycle(d -> 0.2))).orElseThrow();
    assertEquals(3, reference.firstDat());
    assertEquals(26, reference.lastDat());
    for (double dat : new double[] {3, 9.5, 26}) {
      assertEquals(line(dat), reference.lnArea(dat).orElseThrow(), 1e-3);
      assertEquals(0.2, reference.rgrPerDay(dat).orElseThrow(), 1e-3);
    }
    // Shifts -0.1, 0 and 0.2: mean 1/30, squares 0.0178 + 0.0011 + 0.0278 over 2; one shape
    assertEquals(0.1528, reference.shiftSd(), 1e-3);
    assertEquals(0, reference.shapeError(), 1e-3);
  }

  @Test
  void theErrorOfTheShapeIsThatOfAnotherCycle() {
    DoubleUnaryOperator bent = d -> d < 14.5 ? 0.06 : -0.06;
    SmoothReference reference =
        SmoothReference.of(List.of(cycle(bent), cycle(d -> -bent.applyAsDouble(d)), cycle(d -> 0)))
            .orElseThrow();
    // Of 18 sixths 12 are 0.06 off: root mean square 0.06 sqrt(2/3), times sqrt(1 + 1/3)
    assertEquals(0.06 * Math.sqrt(8.0 / 9), reference.shapeError(), 1e-3);
  }

  @Test
  void plantsOnTheFirstAndTheLastDayOfHistoryCount() {
    SmoothReference reference =
        SmoothReference.of(List.of(cycle(d -> 0), cycle(d -> 0), cycle(d -> 0))).orElseThrow();
    double[] dat = {2.9, 3, 10, 26, 26.1};
    double[] ln = {9, line(3) + 0.1, line(10) + 0.3, line(26) + 0.2, 9};
    CommonShift shift = reference.shiftOf(dat, ln).orElseThrow();
    assertEquals(3, shift.plants());
    assertEquals(0.2, shift.lnShift(), 1e-4);
    // Median absolute deviation 0.1, in normal deviations 0.14826; a median's error sqrt(pi/2) / n
    assertEquals(Math.sqrt(Math.PI / 6) * 0.14826, shift.error(), 1e-4);
    assertEquals(Optional.empty(), reference.shiftOf(new double[] {3, 10}, new double[] {1, 1}));
  }

  @Test
  void pastItsEndsTheSmoothMedianGoesOnStraight() {
    SmoothMedian median = SmoothMedian.of(DAYS, Arrays.stream(DAYS).map(d -> line(d)).toArray());
    for (double x : new double[] {-4, 2.9, 3, 26, 26.2, 40}) {
      assertEquals(line(x), median.at(x), 1e-3, "x " + x);
    }
  }

  @Test
  void noiseAboutALineIsSmoothedToNearlyALine() {
    Random random = new Random(61);
    double[] x = IntStream.range(0, 64).mapToDouble(i -> i / 2.0).toArray();
    double[] y = Arrays.stream(x).map(v -> line(v) + 0.3 * random.nextGaussian()).toArray();
    SmoothMedian median = SmoothMedian.of(x, y);
    double most = 0;
    for (double at = 2; at < 30; at += 1) {
      double bend = median.at(at - 1) - 2 * median.at(at) + median.at(at + 1);
      most = Math.max(most, Math.abs(bend));
    }
    // Noise of 0.3 itself bends by 0.3 sqrt(6) = 0.73.
    assertTrue(most < 0.02, "bend " + most);
  }

  @Test
  void eightOthersAreEnoughForAMedianAndItsError() {
    int[] group = {0, 1, 1, 1, 1, 1, 1, 1, 1, 2};
    double[] values = {90, 1, 2, 3, 4, 5, 6, 7, 8, 91};
    Others others =
        LeaveGroupOut.of(Arrays.copyOf(values, 9), Arrays.copyOf(group, 9)).get(0).orElseThrow();
    // Quartiles of 1..8 by line: 2.75 and 6.25
    assertEquals(4.5, others.median(), 1e-12);
    assertEquals(3.5 / 1.348979500392163, others.sd(), 1e-12);
    assertEquals(Math.sqrt(Math.PI / 2) * others.sd() / Math.sqrt(8), others.error(), 1e-12);
    assertEquals(Optional.empty(), LeaveGroupOut.of(Arrays.copyOf(values, 8), new int[8]).get(0));
    assertEquals(Optional.empty(), LeaveGroupOut.of(values, group).get(1));
  }

  @Test
  void choiceOfAxisGivesTheErrorOfTheCycleLeftOutAndKeepsDaysWhereBothAreEqual() {
    List<PastCycle> cycles = List.of(cycle(d -> 0), cycle(d -> 0), cycle(d -> 0), cycle(d -> 0.3));
    AxisChoice choice = ThermalTime.choose(cycles, cycles).orElseThrow();
    // Only the fourth is foretold wrongly, by 0.3: sqrt(0.09 / 4)
    assertEquals(0.15, choice.errorOnDays(), 1e-3);
    assertEquals(choice.errorOnDays(), choice.errorOnDegreeDays());
    assertEquals(Axis.DAYS, choice.axis());
    assertTrue(ThermalTime.choose(cycles.subList(0, 3), cycles.subList(0, 3)).isPresent());
    assertTrue(ThermalTime.choose(cycles.subList(0, 2), cycles.subList(0, 2)).isEmpty());
    assertEquals(
        "onDegreeDays must have 4 cycles, got 3",
        assertThrows(
                IllegalArgumentException.class,
                () -> ThermalTime.choose(cycles, cycles.subList(0, 3)))
            .getMessage());
  }

  @Test
  void sizesEndWhereTheDistributionDoes() {
    // 1 + L S z = 1 - 0.5 * 0.5 * 4 = 0
    assertEquals(
        "1 + l s z must be > 0, got 0.0",
        assertThrows(IllegalArgumentException.class, () -> new Lms(-0.5, 250, 0.5).size(4))
            .getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Lms(1, 250, 0));
  }

  @Test
  void houseWithoutTemperaturesHasNoDegreeDays() {
    assertEquals(HouseClimate.NONE, HouseClimate.of(List.of()));
  }
}
