// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;

class ShrinkClosedTest {
  private static final OffsetDateTime FIRST = OffsetDateTime.parse("2027-03-01T08:00Z");

  /** Weighs plants of {@code ln w = -2.3 + 1.2 ln A + off} with 5 % scatter. */
  private static List<Weighed> weighed(int n, Regime regime, double off, long days) {
    Random random = new Random(n + (regime == Regime.OPEN ? 0 : 1));
    List<Weighed> all = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double area = regime == Regime.OPEN ? 60 + 8 * i : 300 + 9 * i;
      OptionalDouble curve =
          regime == Regime.OPEN ? OptionalDouble.empty() : OptionalDouble.of(area);
      double ln = -2.3 + 1.2 * Math.log(area) + off + 0.05 * random.nextGaussian();
      all.add(
          new Weighed(
              i + 2,
              "R",
              new SiteId(i, 0),
              FIRST.plusDays(days),
              Math.exp(ln),
              new Traits("", OptionalDouble.of(area), OptionalDouble.empty(), curve),
              regime,
              "photo"));
    }
    return all;
  }

  private static RegimeFit open() {
    return FitRegime.fit(
        weighed(24, Regime.OPEN, 0, 0),
        List.of(Term.of(), Term.of(Size.AREA)),
        Estimator.LEAST_SQUARES);
  }

  private static RegimeFit closed(List<Weighed> weighed) {
    return FitRegime.fit(weighed, List.of(Term.of(), Term.of(Size.CURVE)), Estimator.LEAST_SQUARES);
  }

  private static Prediction told(RegimeFit fit, double area) {
    return fit.predict(
            new Traits("", OptionalDouble.of(300), OptionalDouble.empty(), OptionalDouble.of(area)))
        .orElseThrow();
  }

  @Test
  void weighingsOfOneCycleMoveTheLevelInPart() {
    List<Weighed> one = weighed(16, Regime.CLOSED, 0.10, 0);
    RegimeFit shrunk = ShrinkClosed.of(Optional.of(open()), closed(one), one);

    // The open line's room is 10 % and its own error; one cohort's common error 1.25 * 6 % = 7.5 %:
    // of an offset of 10 % some 0.01 / (0.01 + 0.0056) = 0.64 is taken over.
    double offset = told(shrunk, 370).lnMedian() - (-2.3 + 1.2 * Math.log(370));
    assertEquals(0.064, offset, 0.025);
  }

  @Test
  void itsErrorIsThatOfACohortNotOfSixteenPlants() {
    List<Weighed> one = weighed(16, Regime.CLOSED, 0, 0);
    RegimeFit alone = closed(one);
    RegimeFit shrunk = ShrinkClosed.of(Optional.of(open()), alone, one);

    // 5 % over the root of 16 by least squares; 1 / (1 / 0.01 + 1 / 0.0056) = 6.0 % squared here.
    assertTrue(told(alone, 370).calibrationSd() < 0.02);
    assertEquals(0.060, told(shrunk, 370).calibrationSd(), 0.012);
  }

  @Test
  void moreCyclesMakeItSurer() {
    List<Weighed> one = weighed(12, Regime.CLOSED, 0, 0);
    List<Weighed> three = new ArrayList<>(one);
    three.addAll(weighed(12, Regime.CLOSED, 0, 40));
    three.addAll(weighed(12, Regime.CLOSED, 0, 80));

    double few = told(ShrinkClosed.of(Optional.of(open()), closed(one), one), 370).calibrationSd();
    double more =
        told(ShrinkClosed.of(Optional.of(open()), closed(three), three), 370).calibrationSd();
    assertTrue(more < 0.8 * few, more + " and " + few);
  }

  @Test
  void withoutAnOpenFitTheLevelIsThatOfTheWeighings() {
    List<Weighed> one = weighed(16, Regime.CLOSED, 0.10, 0);
    RegimeFit shrunk = ShrinkClosed.of(Optional.empty(), closed(one), one);

    // Nothing else is known of the level: the offset of 10 % stays whole, and the cohort's error
    // of 1.25 * 6 % with it.
    double offset = told(shrunk, 370).lnMedian() - (-2.3 + 1.2 * Math.log(370));
    assertEquals(0.10, offset, 0.03);
    assertEquals(0.075, told(shrunk, 370).calibrationSd(), 0.01);
  }

  @Test
  void aFitThatRestsOnHeightsStaysAsItIs() {
    RegimeFit open = open();
    assertSame(open, ShrinkClosed.of(Optional.empty(), open, List.of()));
  }
}
