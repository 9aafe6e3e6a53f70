// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.core.pixels.PublishedTable;

/**
 * Certified fits of NIST StRD. Correct digits are {@code -log10(|got - certified| / |certified|)};
 * 11 are certified, and the sums of squares are compared with the same measure.
 */
@Tag("published")
class NistNonlinearPublishedCheckTest {
  @ParameterizedTest(name = "{0} from start {1}")
  @CsvSource({
    "Rat42, 1",
    "Rat42, 2",
    "Rat43, 1",
    "Rat43, 2",
    "MGH09, 1",
    "MGH09, 2",
    "MGH10, 1",
    "MGH10, 2",
    "MGH17, 1",
    "MGH17, 2",
    "Misra1a, 1",
    "Misra1a, 2",
    "Misra1b, 1",
    "Misra1b, 2",
    "Misra1d, 1",
    "Misra1d, 2",
    "BoxBOD, 1",
    "BoxBOD, 2",
    "DanWood, 1",
    "DanWood, 2",
    "Thurber, 1",
    "Thurber, 2",
    "Hahn1, 1",
    "Hahn1, 2",
    "Chwirut1, 1",
    "Chwirut1, 2",
    "Chwirut2, 1",
    "Chwirut2, 2",
    "Eckerle4, 1",
    "Eckerle4, 2",
    "Kirby2, 1",
    "Kirby2, 2",
    "Lanczos3, 1",
    "Lanczos3, 2",
    "Bennett5, 1",
    "Bennett5, 2",
    "Roszman1, 1",
    "Roszman1, 2"
  })
  void certifiedValuesAreReachedToEightDigits(String set, int start) {
    Solved fit = assertInstanceOf(Solved.class, fit(set, start), set);
    List<Map<String, String>> certified = parameters(set);
    for (int j = 0; j < certified.size(); j++) {
      double parameter = Double.parseDouble(certified.get(j).get("certified"));
      double deviation = Double.parseDouble(certified.get(j).get("certified_sd"));
      String name = set + " b" + (j + 1);
      assertTrue(digits(fit.parameter(j), parameter) >= 8, name + " got " + fit.parameter(j));
      // Deviations of ill-conditioned sets are certified from the same matrix: 6 digits suffice.
      assertTrue(digits(fit.standardError(j), deviation) >= 6, name + " sd");
    }
    Map<String, String> summary = row("summary.csv", "set", set).get(0);
    double rss = Double.parseDouble(summary.get("rss"));
    assertTrue(digits(fit.rss(), rss) >= 8, set + " RSS " + fit.rss() + ", certified " + rss);
    assertEquals(Integer.parseInt(summary.get("df")), fit.degreesOfFreedom(), set);
    assertTrue(digits(fit.sigma(), Double.parseDouble(summary.get("sigma"))) >= 8, set + " sigma");
  }

  @Test
  void rat43HasElevenDegreesOfFreedomThoughItsFilePrintsNine() {
    Solved fit = (Solved) fit("Rat43", 2);
    // 15 points less 4 parameters; certified sigma 2.8262414662E+01 = sqrt(8.7864049080E+03 / 11)
    assertEquals(11, fit.degreesOfFreedom());
    assertEquals(28.262414662, fit.sigma(), 5e-9);
  }

  @Test
  void logLikelihoodOfRat42IsThatOfR() {
    // R 4.2.2 logLik(nls): -12.2721055; AICc = 32.54421099 + 2*4*5/(9-4-1)
    Solved fit = (Solved) fit("Rat42", 1);
    assertEquals(-12.2721055, fit.logLikelihood(), 5e-8);
    assertEquals(32.54421099 + 10, fit.aicc().getAsDouble(), 1e-7);
    // R vcov: cov(b1, b2) -0.06974728900 (good to about 6 digits)
    assertEquals(-0.069747289, fit.covariance(0, 1), 1e-7);
  }

  @ParameterizedTest
  @CsvSource({
    // set, parameter, profile interval: the project's reference values C3 (SciPy root search;
    // Rat42 and Misra1a agree with R confint.nls to 5 digits)
    "Rat42, 0, 68.764765, 77.189139",
    "Rat42, 1, 2.415552, 2.8483754",
    "Rat42, 2, 0.059472183, 0.076003572",
    "Misra1a, 0, 233.19531, 245.01737",
    "Misra1a, 1, 0.00053431827, 0.0005660299",
    "Rat43, 0, 668.10154, 739.42799",
    "Rat43, 1, 0.44824245, 12.492167",
    "Rat43, 2, 0.45301818, 1.494572",
    "Rat43, 3, 0.10775493, 3.8436355"
  })
  void profileIntervalsAreThoseOfTheReference(String set, int index, double lo, double hi) {
    Interval got = ProfileInterval.of(NistModels.of(set), points(set), (Solved) fit(set, 2), index);
    assertEquals(lo, got.lo().getAsDouble(), 2e-6 * Math.abs(lo), set);
    assertEquals(hi, got.hi().getAsDouble(), 2e-6 * Math.abs(hi), set);
  }

  static FitOutcome fit(String set, int start) {
    double[] from =
        parameters(set).stream()
            .mapToDouble(row -> Double.parseDouble(row.get("start" + start)))
            .toArray();
    return NonlinearFit.of(NistModels.of(set), points(set), from);
  }

  static Points points(String set) {
    List<Map<String, String>> rows = PublishedTable.rows("nist-strd/" + set + ".csv");
    return Points.of(column(rows, "x"), column(rows, "y"));
  }

  private static double[] column(List<Map<String, String>> rows, String name) {
    return rows.stream().mapToDouble(row -> Double.parseDouble(row.get(name))).toArray();
  }

  private static List<Map<String, String>> parameters(String set) {
    return row("parameters.csv", "dataset", set);
  }

  private static List<Map<String, String>> row(String file, String column, String value) {
    return PublishedTable.rows("nist-strd/" + file).stream()
        .filter(row -> row.get(column).equals(value))
        .toList();
  }

  private static double digits(double got, double certified) {
    return got == certified ? 16 : -Math.log10(Math.abs(got - certified) / Math.abs(certified));
  }
}
