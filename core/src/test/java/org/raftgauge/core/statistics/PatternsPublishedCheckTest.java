// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.statistics.Neighbours.Weighting;

/** Many tests at once, patterns over a board, agreement: against published or computed values. */
@Tag("published")
class PatternsPublishedCheckTest {
  // Benjamini and Hochberg 1995, section 3.3, 15 p values; q values by R 4.2.2
  // p.adjust(method="BH")
  private static final double[] P = {
    .0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528,
    .7590, 1
  };
  private static final double[] Q = {
    .0015,
    .003,
    .0095,
    .035625,
    .0603,
    .0638571428571429,
    .0638571428571429,
    .0645,
    .0765,
    .486,
    .581181818181818,
    .714875,
    .753230769230769,
    .813214285714286,
    1
  };

  // An invented 4 x 6 raft of the project's reference values (section F5), rows of columns 1..6
  private static final double[] RAFT = {
    5.1, 5.3, 4.9, 3.2, 3, 2.8, 5.6, 5.2, 4.7, 3.5, 3.1, 2.9, 5, 5.4, 4.4, 3.6, 3.3, 2.7, 4.8, 5.1,
    4.6, 3.9, 3.4, 3
  };

  @Test
  void qValuesAreThoseOfThePaper() {
    double[] q = BenjaminiHochberg.qValues(P);
    assertArrayEquals(Q, q, 1e-12);
    // The paper: at 5 % the first four are rejected
    assertEquals(4, Arrays.stream(q).filter(v -> v <= 0.05).count());
  }

  @Test
  void qValuesKeepTheOrderGiven() {
    double[] reversed = new double[P.length];
    double[] expected = new double[P.length];
    for (int i = 0; i < P.length; i++) {
      reversed[i] = P[P.length - 1 - i];
      expected[i] = Q[P.length - 1 - i];
    }
    assertArrayEquals(expected, BenjaminiHochberg.qValues(reversed), 1e-12);
    assertEquals(0, BenjaminiHochberg.qValues(new double[0]).length);
    assertEquals(
        "p must be in 0..1, got NaN",
        assertThrows(
                IllegalArgumentException.class,
                () -> BenjaminiHochberg.qValues(new double[] {Double.NaN}))
            .getMessage());
  }

  @Test
  void falseFlagsStayUnderTheirShare() {
    Random random = new Random(8);
    double share = 0;
    int nights = 400;
    for (int night = 0; night < nights; night++) {
      double[] p = new double[200];
      for (int i = 0; i < p.length; i++) {
        // The first twenty plants are truly sick: p values near 0.
        p[i] = random.nextDouble() * (i < 20 ? 1e-3 : 1);
      }
      double[] q = BenjaminiHochberg.qValues(p);
      double flags = Arrays.stream(q).filter(v -> v <= 0.05).count();
      double wrong = Arrays.stream(q, 20, 200).filter(v -> v <= 0.05).count();
      share += flags > 0 ? wrong / flags / nights : 0;
    }
    // Theorem 1 of the paper: expected share of false flags at most 0.05 * 180 / 200 = 0.045
    assertTrue(share < 0.055, "share " + share);
    assertTrue(share > 0.02, "the bound is nearly used: " + share);
  }

  @Test
  void moransIOfTheRaftIsThatOfSpdepAndApe() {
    // R spdep 1.2.7 and ape 5.7, rook neighbours, row-standardised; randomisation variance
    MoransI rook = raft(1.1, Weighting.ROW_STANDARDISED);
    assertEquals(0.865851231239, rook.i(), 1e-11);
    assertEquals(-0.04347826087, rook.expected(), 1e-11);
    assertEquals(0.02527452817, rook.variance(), 1e-10);
    assertEquals(5.719785577, rook.z(), 1e-8);
    assertEquals(1.0666e-8, rook.p(), 1e-12);
    assertEquals(0.822081280341, raft(1.1, Weighting.BINARY).i(), 1e-11);
    assertEquals(0.830500612665, raft(1.5, Weighting.ROW_STANDARDISED).i(), 1e-11);
    assertEquals(0.765772786695, raft(1.5, Weighting.BINARY).i(), 1e-11);
  }

  @Test
  void moransIDoesNotChangeWhenPlacesAreShuffled() {
    double[] x = columns();
    double[] y = rows();
    double[] v = RAFT.clone();
    Random random = new Random(3);
    for (int i = v.length - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      swap(x, i, j);
      swap(y, i, j);
      swap(v, i, j);
    }
    MoransI shuffled =
        MoransI.of(v, Neighbours.within(x, y, 1.1, Weighting.ROW_STANDARDISED)).orElseThrow();
    assertEquals(0.865851231239, shuffled.i(), 1e-11);
    assertEquals(0.02527452817, shuffled.variance(), 1e-10);
  }

  @Test
  void aBoardOfEqualPlantsHasNoPattern() {
    Neighbours grid = Neighbours.within(columns(), rows(), 1.1, Weighting.BINARY);
    assertEquals(Optional.empty(), MoransI.of(new double[24], grid));
    Neighbours lonely = Neighbours.within(columns(), rows(), 0.5, Weighting.ROW_STANDARDISED);
    assertEquals(Optional.empty(), MoransI.of(RAFT, lonely));
  }

  @Test
  void randomBoardsSeldomShowAPattern() {
    Random random = new Random(11);
    Neighbours grid = Neighbours.within(columns(), rows(), 1.1, Weighting.ROW_STANDARDISED);
    int found = 0;
    for (int board = 0; board < 2000; board++) {
      double[] v = random.doubles(24, -1, 1).toArray();
      found += MoransI.of(v, grid).orElseThrow().p() < 0.05 ? 1 : 0;
    }
    // 5 % of 2000, four binomial deviations of 9.7
    assertEquals(100, found, 39);
  }

  @Test
  void aPlaneIsFoundAgain() {
    double[] v = new double[24];
    for (int i = 0; i < 24; i++) {
      v[i] = 2 + 0.25 * columns()[i] - 0.5 * rows()[i];
    }
    PlaneTrend trend = PlaneTrend.of(columns(), rows(), v).orElseThrow();
    assertEquals(0.25, trend.xSlope(), 1e-12);
    assertEquals(-0.5, trend.ySlope(), 1e-12);
    assertEquals(2, trend.level(), 1e-12);
    assertEquals(1, trend.r2(), 1e-12);
    assertTrue(trend.p() < 1e-12);
  }

  @Test
  void theRaftFallsAlongItsColumns() {
    PlaneTrend trend = PlaneTrend.of(columns(), rows(), RAFT).orElseThrow();
    // On a full grid the slopes are those of simple regressions; by hand from sums of RAFT:
    // sum (col - 3.5) v / (4 * 17.5) and sum (row - 2.5) v / (6 * 5)
    double byColumn = 0;
    double byRow = 0;
    for (int i = 0; i < 24; i++) {
      byColumn += (columns()[i] - 3.5) * RAFT[i] / 70;
      byRow += (rows()[i] - 2.5) * RAFT[i] / 30;
    }
    assertEquals(byColumn, trend.xSlope(), 1e-12);
    assertEquals(byRow, trend.ySlope(), 1e-12);
    assertTrue(trend.xSlope() < -4 * trend.xSlopeError(), "falls along the columns");
    assertTrue(Math.abs(trend.ySlope()) < 2 * trend.ySlopeError(), "and not along the rows");
  }

  @Test
  void randomBoardsSeldomLean() {
    Random random = new Random(12);
    int found = 0;
    for (int board = 0; board < 2000; board++) {
      double[] v = random.ints(24, 0, 1000).asDoubleStream().toArray();
      found += PlaneTrend.of(columns(), rows(), v).orElseThrow().p() < 0.05 ? 1 : 0;
    }
    assertEquals(100, found, 39);
  }

  @Test
  void placesOnOneLineHaveNoPlane() {
    double[] line = {0, 1, 2, 3, 4, 5};
    assertEquals(Optional.empty(), PlaneTrend.of(line, line, new double[] {1, 2, 1, 2, 1, 3}));
  }

  @Test
  void kappaIsThatOfItsDefinition() {
    // 50 cases, 35 alike: po 0.7; margins 25/25 and 30/20: pe 0.5; kappa (0.7 - 0.5) / 0.5
    CohensKappa kappa = CohensKappa.of(new int[][] {{20, 5}, {10, 15}}).orElseThrow();
    assertEquals(0.4, kappa.kappa(), 1e-12);
    assertEquals(0.7, kappa.agreement(), 1e-12);
    // Fleiss, Cohen and Everitt 1969: (A + B - C) / (n (1 - pe)^2). Shares .4 .1 / .2 .3, first
    // judge's margins .5 .5, second's .6 .4; off the diagonal second's a meets first's b.
    double a = 0.4 * Math.pow(1 - (0.5 + 0.6) * 0.6, 2) + 0.3 * Math.pow(1 - (0.5 + 0.4) * 0.6, 2);
    double b = 0.36 * (0.1 * Math.pow(0.6 + 0.5, 2) + 0.2 * Math.pow(0.4 + 0.5, 2));
    double c = Math.pow(0.4 - 0.5 * 0.6, 2);
    assertEquals(Math.sqrt((a + b - c) / 50) / 0.5, kappa.standardError(), 1e-12);
    assertEquals(0.4 - 1.959963984540054 * kappa.standardError(), kappa.lo95(), 1e-12);
  }

  @Test
  void kappasIntervalCoversWhereJudgesAreDrawnAtRandom() {
    Random random = new Random(4);
    int covered = 0;
    for (int trial = 0; trial < 1000; trial++) {
      int[][] counts = new int[3][3];
      for (int i = 0; i < 200; i++) {
        int truth = random.nextInt(3);
        int second = random.nextDouble() < 0.7 ? truth : random.nextInt(3);
        counts[truth][second]++;
      }
      // Both judges use three words alike often: po = 0.7 + 0.3 / 3, pe = 1/3, kappa = 0.7
      CohensKappa kappa = CohensKappa.of(counts).orElseThrow();
      covered += kappa.lo95() <= 0.7 && kappa.hi95() >= 0.7 ? 1 : 0;
    }
    assertEquals(950, covered, 28);
  }

  @Test
  void judgesWhoOnlyEverSayOneWordHaveNoKappa() {
    assertEquals(Optional.empty(), CohensKappa.of(new int[][] {{9, 0}, {0, 0}}));
    assertEquals(Optional.empty(), CohensKappa.of(new int[2][2]));
    assertEquals(1.0, CohensKappa.of(new int[][] {{5, 0}, {0, 4}}).orElseThrow().kappa(), 1e-12);
  }

  private static MoransI raft(double distance, Weighting weighting) {
    return MoransI.of(RAFT, Neighbours.within(columns(), rows(), distance, weighting))
        .orElseThrow();
  }

  private static double[] columns() {
    double[] out = new double[24];
    Arrays.setAll(out, i -> i % 6 + 1);
    return out;
  }

  private static double[] rows() {
    double[] out = new double[24];
    Arrays.setAll(out, i -> i / 6 + 1);
    return out;
  }

  private static void swap(double[] v, int i, int j) {
    double kept = v[i];
    v[i] = v[j];
    v[j] = kept;
  }
}
