// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.raftgauge.core.agreement.LinearFitPublishedCheckTest.near;

import java.io.IOException;
import java.util.Arrays;
import java.util.OptionalInt;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Holds the comparison of methods to printed examples. */
@Tag("published")
class AgreementPublishedCheckTest {

  @Test
  void limitsOfAgreementAreThoseOfBlandAndAltman1986() throws IOException {
    ReferenceTable peak = ReferenceTable.read("bland_altman_1986_pefr.csv");
    BlandAltman found = BlandAltman.of(peak.column("wright1"), peak.column("mini1"));

    // Bland and Altman 1986 print bias -2.1 and SD 38.8; more digits worked with R 4.2.2.
    assertEquals(-2.1, found.bias(), 0.05);
    assertEquals(38.8, found.sd(), 0.05);
    near(-2.1176470588, found.bias(), 1e-10);
    near(38.7651298736, found.sd(), 1e-11);
    near(-78.09730161, found.lower(), 1e-9);
    near(73.86200749, found.upper(), 1e-9);
    near(-22.048838, found.biasLo95(), 1e-7);
    near(17.813544, found.biasHi95(), 1e-7);
    near(16.2846118, found.limitSe(), 1e-8);
    near(0.02868744515, found.trend(), 1e-9);
    near(0.7495, found.trendP(), 1e-4);
    // The paper's repeatability, 2 sqrt(mean d^2), worked with R.
    near(
        43.29379795,
        BlandAltman.repeatability(peak.column("wright1"), peak.column("wright2")),
        1e-9);
    near(56.31633344, BlandAltman.repeatability(peak.column("mini1"), peak.column("mini2")), 1e-9);
  }

  @Test
  void biasThatGrowsWithSizeShowsAsATrend() throws IOException {
    ReferenceTable giavarina = ReferenceTable.read("giavarina_2015.csv");
    BlandAltman found = BlandAltman.of(giavarina.column("A"), giavarina.column("B"));

    // Giavarina 2015, Biochemia Medica 25:141-151, the example; worked with R 4.2.2.
    near(-27.1666666667, found.bias(), 1e-11);
    near(34.8059480978, found.sd(), 1e-11);
    near(-95.38632494, found.lower(), 1e-9);
    near(41.05299161, found.upper(), 1e-9);
    near(-0.0450516556, found.trend(), 1e-8);
    near(0.01471652, found.trendP(), 1e-6);
  }

  @Test
  void concordanceIsThatOfLin1989() throws IOException {
    ReferenceTable peak = ReferenceTable.read("bland_altman_1986_pefr.csv");
    Concordance found = Concordance.of(peak.column("wright1"), peak.column("mini1"));

    // R package epiR 2.0.57 on the same data.
    near(0.9427424314, found.coefficient(), 1e-9);
    near(0.9432794469, found.correlation(), 1e-9);
    near(0.9994306931, found.bias(), 1e-9);
    near(0.85049187, found.lo95(), 1e-7);
    near(0.97872628, found.hi95(), 1e-7);
  }

  @Test
  void demingIsOrthogonalRegressionOnPearsonsData() throws IOException {
    ReferenceTable pearson = ReferenceTable.read("pearson_york.csv");
    Line line = Deming.fit(pearson.column("x"), pearson.column("y"), 1);

    // Pearson 1901 prints -0.546 and 5.784; more digits and jackknife errors worked with R.
    near(-0.5455611975, line.slope(), 1e-9);
    near(5.784043775, line.intercept(), 1e-9);
    near(0.0368004164, line.slopeSe(), 1e-8);
    near(0.1630915528, line.interceptSe(), 1e-8);
  }

  @Test
  void yorkIsThatOf1966() throws IOException {
    ReferenceTable york = ReferenceTable.read("pearson_york.csv");
    York found = York.fit(york.column("x"), york.column("y"), york.column("wx"), york.column("wy"));

    // York 1966: slope -0.4805, intercept 5.4799; more digits worked with SciPy.
    near(-0.4805334074, found.line().slope(), 1e-9);
    near(5.479910224, found.line().intercept(), 1e-9);
    near(0.05798501, found.line().slopeSe(), 1e-6);
    near(0.29497074, found.line().interceptSe(), 1e-6);
    near(11.86635319, found.chiSquare(), 1e-9);
  }

  @Test
  void passingBablokFindsLineAndIntervalOfTheUntiedSet() throws IOException {
    ReferenceTable set = ReferenceTable.read("passing_bablok_set2.csv");
    PassingBablok found = PassingBablok.fit(set.column("x"), set.column("y"));

    // Worked by the paper's definition with R 4.2.2 on a public data set of 50 pairs.
    assertEquals(1218, found.slopes());
    assertEquals(28, found.offset());
    near(1.012121657361, found.slope(), 1e-11);
    near(-0.141522186306, found.intercept(), 1e-10);
    near(0.9777777778, found.slopeLo95(), 1e-9);
    near(1.0625, found.slopeHi95(), 1e-9);
    near(-0.665625, found.interceptLo95(), 1e-9);
    near(0.2344444444, found.interceptHi95(), 1e-9);
  }

  @Test
  void passingBablokAgreesOnTwoSmallSetsToo() throws IOException {
    ReferenceTable giavarina = ReferenceTable.read("giavarina_2015.csv");
    PassingBablok found = PassingBablok.fit(giavarina.column("A"), giavarina.column("B"));

    // As above: 434 slopes, 5 of them under -1.
    assertEquals(434, found.slopes());
    assertEquals(5, found.offset());
    near(1.055312195800, found.slope(), 1e-10);
    near(7.081855791962, found.intercept(), 1e-10);
    near(1.020481928, found.slopeLo95(), 1e-9);
    near(1.091463415, found.slopeHi95(), 1e-9);
  }

  @Test
  void grubbsFindsTheWildUraniumIsotope() {
    Grubbs found = Grubbs.test(199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57);

    // NIST/SEMATECH e-Handbook 1.3.5.17.1: G 2.4687; critical 2.032 one-sided. Digits from R.
    assertEquals(7, found.index());
    near(2.468764611, found.g(), 1e-9);
    near(2.126645087, found.critical(), 1e-9);
    near(2.031652002, Grubbs.critical(8, 0.05), 1e-9);
    assertTrue(found.outlier());
    assertFalse(Grubbs.test(199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18).outlier());
  }

  @Test
  void grubbsCriticalValuesAreThoseOfTheTable() throws IOException {
    ReferenceTable table = ReferenceTable.read("grubbs_critical.csv");
    double[] n = table.column("n");
    for (int i = 0; i < n.length; i++) {
      // Six printed decimals.
      assertEquals(table.column("g05_one")[i], Grubbs.critical((int) n[i], 0.05), 6e-7);
      assertEquals(table.column("g01_two")[i], Grubbs.critical((int) n[i], 0.005), 6e-7);
    }
  }

  @Test
  void modifiedZFlagsTheTwoWildWeights() {
    double[] x = {212, 220, 198, 205, 231, 225, 140, 216, 209, 222, 301, 218};
    double[] z = Robust.modifiedZ(x);

    // Worked with R from Iglewicz and Hoaglin's formula.
    assertEquals(217, Robust.median(x));
    near(11.8608, Robust.mad(x), 1e-5);
    near(-6.4920625, z[6], 1e-12);
    near(7.08225, z[10], 1e-12);
    near(-1.6019375, z[2], 1e-12);
    assertEquals(2, Arrays.stream(z).filter(v -> Math.abs(v) > 3.5).count());
  }

  @Test
  void cusumSignalsAtTheHandbooksFourteenthValue() throws IOException {
    double[] means = ReferenceTable.read("nist_cusum.csv").column("x");
    Cusum chart = Cusum.of(means, new Cusum.Rule(325, 0.3175, 4.1959));

    // NIST/SEMATECH e-Handbook 6.3.2.3: upper sum passes h at the 14th mean and ends at 19.035.
    assertEquals(OptionalInt.of(13), chart.firstSignal());
    assertEquals(4.94, chart.hi().get(13), 5e-5);
    assertEquals(19.035, chart.hi().get(19), 5e-5);
    assertEquals(0.715, chart.lo().get(7), 5e-5);
  }
}
