// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.core.reference.LeaveGroupOut.Others;
import org.raftgauge.core.reference.ThermalTime.Axis;
import org.raftgauge.core.reference.ThermalTime.AxisChoice;

/** References: published LMS values, and known medians found again in seeded histories. */
class ReferenceTest {
  @ParameterizedTest
  @CsvSource({
    // y 300, M 250, S 0.18: the project's reference values G, from Cole's formulas by R
    "-0.6, 250, 0.18, 300, 0.9594617521",
    "0, 250, 0.18, 300, 1.012897538",
    "1, 250, 0.18, 300, 1.111111111",
    // CDC example, boys' weight: z 0.2074 (inputs as published, computed by R)
    "-0.1600954, 9.476500305, 0.11218624, 9.7, 0.2073994119"
  })
  void lmsGivesThePublishedDeviations(double l, double m, double s, double y, double z) {
    assertEquals(z, new Lms(l, m, s).z(y), 1e-9);
    assertEquals(y, new Lms(l, m, s).size(z), 1e-7);
  }

  @ParameterizedTest
  @CsvSource({
    // centiles 3, 10, 50, 90, 97 of L -0.6, M 250, S 0.18 (reference values G)
    "-1.8807936082, 183.6911909",
    "-1.2815515655, 201.4236142",
    "0, 250",
    "1.2815515655, 320.4573352",
    "1.8807936082, 364.9978585"
  })
  void lmsGivesThePublishedCentiles(double z, double size) {
    assertEquals(size, new Lms(-0.6, 250, 0.18).size(z), 5e-7);
  }

  @Test
  void lmsRefusesSizesThatCannotBe() {
    assertEquals(
        "1 + l s z must be > 0, got -0.5",
        assertThrows(IllegalArgumentException.class, () -> new Lms(-0.5, 250, 0.3).size(10))
            .getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Lms(0, 0, 0.2));
  }

  /** The median of the invented history: a logistic in ln area. */
  private static double truth(double dat) {
    return Math.log(450 / (1 + Math.exp(-0.21 * (dat - 17))));
  }

  /** A cycle of 30 plants photographed daily; sick ones stop at day 8. */
  private static PastCycle cycle(double shift, int sick, Random random) {
    List<double[]> points = new ArrayList<>();
    for (int plant = 0; plant < 30; plant++) {
      double own = 0.15 * random.nextGaussian();
      for (int day = 0; day <= 30; day++) {
        double grown = plant < sick ? Math.min(day, 8) : day;
        points.add(new double[] {day, truth(grown) + shift + own + 0.03 * random.nextGaussian()});
      }
    }
    return PastCycle.of(
        points.stream().mapToDouble(p -> p[0]).toArray(),
        points.stream().mapToDouble(p -> p[1]).toArray());
  }

  private static SmoothReference history(int sick) {
    Random random = new Random(17);
    return SmoothReference.of(
            List.of(
                cycle(0.12, sick, random),
                cycle(-0.12, sick, random),
                cycle(0.04, sick, random),
                cycle(-0.04, sick, random)))
        .orElseThrow();
  }

  @Test
  void theMedianAndSpreadOfHistoryAreFoundAgain() {
    SmoothReference reference = history(0);
    for (double dat = 0; dat <= 30; dat += 2.5) {
      // 120 plants of sd 0.15, median error about 0.017, shifts balanced to 0
      assertEquals(truth(dat), reference.lnArea(dat).orElseThrow(), 0.06, "day " + dat);
      assertEquals(0.153, reference.at(dat).orElseThrow().s(), 0.035, "day " + dat);
      double rate = 0.21 / (1 + Math.exp(0.21 * (dat - 17)));
      assertEquals(rate, reference.rgrPerDay(dat).orElseThrow(), 0.02, "day " + dat);
    }
    // Shifts 0.12, -0.12, 0.04, -0.04: sd 0.103, give or take the plants' 0.15 / sqrt(30)
    assertEquals(0.103, reference.shiftSd(), 0.05);
    assertTrue(reference.shapeError() < 0.03, "all cycles have one shape");
    assertEquals(4, reference.cycles());
  }

  @Test
  void sickPlantsOfThePastHardlyPullTheMedian() {
    double clean = history(0).lnArea(28).orElseThrow();
    double sick = history(4).lnArea(28).orElseThrow();
    // 13 % of plants stop at day 8, at ln area 4.8 less 6.0: the mean would fall by 0.13 * 1.7 =
    // 0.2
    assertTrue(truth(28) - truth(8) > 1.6);
    assertEquals(clean, sick, 0.06);
  }

  @Test
  void tonightsCommonShiftIsReportedWithItsError() {
    Random random = new Random(23);
    SmoothReference reference = history(0);
    int inside = 0;
    for (int trial = 0; trial < 100; trial++) {
      double[] dat = new double[80];
      double[] ln = new double[80];
      for (int i = 0; i < 80; i++) {
        dat[i] = 11 + random.nextInt(3);
        ln[i] = reference.lnArea(dat[i]).orElseThrow() - 0.2 + 0.15 * random.nextGaussian();
      }
      CommonShift shift = reference.shiftOf(dat, ln).orElseThrow();
      assertEquals(0.15 * Math.sqrt(Math.PI / 2 / 80), shift.error(), 0.012);
      inside += Math.abs(shift.lnShift() + 0.2) < 1.96 * shift.error() ? 1 : 0;
    }
    assertEquals(95, inside, 9);
    assertEquals(Optional.empty(), reference.shiftOf(new double[] {99}, new double[] {1}));
  }

  @Test
  void historyDoesNotSpeakOutsideItsDaysNorOfTooFewCycles() {
    SmoothReference reference = history(0);
    assertEquals(Optional.empty(), reference.lnArea(30.5));
    assertEquals(Optional.empty(), reference.at(-0.5));
    Random random = new Random(1);
    assertEquals(
        Optional.empty(), SmoothReference.of(List.of(cycle(0, 0, random), cycle(0, 0, random))));
  }

  @Test
  void theSmoothMedianHalvesThePoints() {
    Random random = new Random(2);
    double[] x = new double[1500];
    double[] y = new double[1500];
    for (int i = 0; i < x.length; i++) {
      x[i] = 30 * random.nextDouble();
      // Skewed noise of median 0: exponential less ln 2
      y[i] = Math.sin(x[i] / 5) + 0.3 * (-Math.log(random.nextDouble()) - Math.log(2));
    }
    SmoothMedian median = SmoothMedian.of(x, y);
    long above = IntStream.range(0, x.length).filter(i -> y[i] > median.at(x[i])).count();
    assertEquals(750.0, (double) above, 30.0);
    for (double at = 1; at < 30; at += 2) {
      assertEquals(Math.sin(at / 5), median.at(at), 0.1);
    }
  }

  @Test
  void leavingGroupsOutIsWhatSlowLoopsGive() {
    Random random = new Random(14);
    double[] values = new double[300];
    int[] group = new int[300];
    for (int i = 0; i < values.length; i++) {
      group[i] = random.nextInt(12);
      values[i] = Math.rint(20 * random.nextGaussian()) / 10;
    }
    List<Optional<Others>> fast = LeaveGroupOut.of(values, group);
    for (int g = 0; g < 12; g++) {
      int left = g;
      double[] others =
          IntStream.range(0, 300)
              .filter(i -> group[i] != left)
              .mapToDouble(i -> values[i])
              .toArray();
      Arrays.sort(others);
      Others got = fast.get(g).orElseThrow();
      assertEquals(others.length, got.others());
      assertEquals(quantile(others, 0.5), got.median(), 1e-12);
      double quartiles = quantile(others, 0.75) - quantile(others, 0.25);
      // Quartiles of the normal lie 1.349 deviations apart
      assertEquals(quartiles / 1.348979500392163, got.sd(), 1e-12);
    }
  }

  private static double quantile(double[] sorted, double share) {
    double rank = share * (sorted.length - 1);
    int below = (int) rank;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (rank - below) * (sorted[above] - sorted[below]);
  }

  @Test
  void aSlowRaftDoesNotHideInItsOwnReference() {
    double[] values = new double[40];
    int[] group = new int[40];
    for (int i = 0; i < 40; i++) {
      group[i] = i / 20;
      values[i] = i < 20 ? -1 : 0.01 * i;
    }
    List<Optional<Others>> others = LeaveGroupOut.of(values, group);
    assertEquals(0.295, others.get(0).orElseThrow().median(), 1e-12);
    assertEquals(-1, others.get(1).orElseThrow().median(), 1e-12);
  }

  @Test
  void aLoneRaftHasNoOthers() {
    assertEquals(List.of(Optional.empty()), LeaveGroupOut.of(new double[] {1, 2, 3}, new int[3]));
  }

  @Test
  void degreeDaysAreThoseOfTheAveragingMethod() {
    // Reference values C6: maxima 24 22 30 18 15, minima 18 16 20 10 3, base 4: 17 15 21 10 5 = 68
    double[] mean = {21, 19, 25, 14, 9};
    assertEquals(
        List.of(17.0, 32.0, 53.0, 63.0, 68.0),
        Arrays.stream(ThermalTime.degreeDays(mean, 4)).boxed().toList());
    assertEquals(0, ThermalTime.degreeDays(new double[] {-3, 2}, 4)[1]);
  }

  @Test
  void theAxisThatForetellsBetterIsChosen() {
    assertEquals(Axis.DEGREE_DAYS, choice(true).axis());
    assertEquals(Axis.DAYS, choice(false).axis());
    assertTrue(choice(true).errorOnDegreeDays() < 0.5 * choice(true).errorOnDays());
  }

  /** Six cycles in warm and cool weather; plants follow warmth, or the calendar. */
  private static AxisChoice choice(boolean followsWarmth) {
    Random random = new Random(6);
    List<PastCycle> days = new ArrayList<>();
    List<PastCycle> warmth = new ArrayList<>();
    for (int cycle = 0; cycle < 6; cycle++) {
      double[] mean = new double[31];
      Arrays.setAll(mean, day -> 16 + random.nextInt(3));
      for (int day = 0; day < 31; day++) {
        mean[day] += cycle % 3 * 3;
      }
      double[] sums = ThermalTime.degreeDays(mean, 4);
      double[] dat = new double[31];
      double[] ln = new double[31];
      for (int day = 0; day < 31; day++) {
        dat[day] = day;
        double age = followsWarmth ? sums[day] / 16 : day;
        ln[day] = truth(age) + 0.03 * random.nextGaussian();
      }
      days.add(PastCycle.of(dat, ln));
      warmth.add(PastCycle.of(sums, ln));
    }
    return ThermalTime.choose(days, warmth).orElseThrow();
  }
}
