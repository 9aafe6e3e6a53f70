// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.core.growth.FitRule.Outliers;
import org.raftgauge.core.growth.FitRule.Scale;
import org.raftgauge.core.growth.TargetDay.NotReached;
import org.raftgauge.core.growth.TargetDay.ReachedOn;
import org.raftgauge.core.leastsquares.Interval;

/** The invented site of the project's reference values, section C2: R 4.2.2 nls and nlsLM. */
@Tag("published")
class LettuceSitePublishedCheckTest {
  private static final double[] DAT = {0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30, 33};
  private static final double[] AREA = {
    12.1, 19.8, 33.5, 53.0, 88.2, 139.6, 205.3, 284.9, 350.2, 401.7, 428.3, 447.9
  };

  @ParameterizedTest
  @CsvSource({
    // model, parameter, estimate, standard error, RSS, AICc
    "LOGISTIC, 0, 475.6086638, 4.173144524, 99.46734476, 73.14788348",
    "LOGISTIC, 1, 0.2070031455, 0.003989843528, 99.46734476, 73.14788348",
    "LOGISTIC, 2, 19.13762645, 0.1356844646, 99.46734476, 73.14788348",
    "GOMPERTZ, 0, 555.1563213, 33.80891798, 1385.391662, 104.7547887",
    "GOMPERTZ, 1, 0.1076132645, 0.01092162300, 1385.391662, 104.7547887",
    "RICHARDS, 0, 462.1452673, 2.525263176, 18.22166626, 59.06698108",
    "RICHARDS, 1, 0.2506711345, 0.008307226, 18.22166626, 59.06698108",
    "RICHARDS, 3, 1.435473236, 0.080215690, 18.22166626, 59.06698108",
    "EXPOLINEAR, 0, 18.34257597, 1.34279884, 4244.368143, 118.1901096",
    "EXPOLINEAR, 1, 0.4002252673, 0.2415019528, 4244.368143, 118.1901096",
    "EXPOLINEAR, 2, 6.541283131, 1.353092381, 4244.368143, 118.1901096",
    "EXPONENTIAL, 0, 54.03434233, 13.4552977, 26768.34245, 135.5753476",
    "EXPONENTIAL, 1, 0.06863064644, 0.008847690221, 26768.34245, 135.5753476"
  })
  void fitsOnAreaAreThoseOfR(
      CurveModel model, int i, double estimate, double error, double rss, double aicc) {
    Fitted fit = onArea(model);
    // R printed about eight digits, converged to five or six (the sheet's advice: 1e-6)
    assertEquals(1, fit.curve().parameters().get(i) / estimate, 1e-6);
    assertEquals(1, fit.standardError(i) / error, 2e-6);
    assertEquals(1, fit.working().rss() / rss, 1e-8);
    assertEquals(aicc, fit.working().aicc().getAsDouble(), 1e-6);
  }

  @Test
  void richardsIsChosenByAicc() {
    FitRule rule = new FitRule(Scale.AREA, FitRule.defaults().models(), Outliers.KEEP, 0);
    Fitted fit = assertInstanceOf(Fitted.class, FitGrowth.of(Series.of(DAT, AREA), rule));
    assertEquals(CurveModel.RICHARDS, fit.curve().model());
  }

  @Test
  void theMonomolecularAsymptoteIsNotIdentified() {
    // R: K 1.0342e5 with standard error 1.04e7
    GrowthFit fit = FitGrowth.of(Series.of(DAT, AREA), FitRule.onArea(CurveModel.MONOMOLECULAR));
    if (fit instanceof Fitted fitted) {
      assertTrue(fitted.asymptoteCm2().isEmpty());
      assertTrue(fitted.asymptoteDoubt().isPresent());
    } else {
      assertInstanceOf(NotFitted.class, fit);
    }
  }

  @ParameterizedTest
  @CsvSource({
    // Profile intervals: SciPy root search, the logistic's agree with R confint.nls to 5 digits
    "LOGISTIC, 0, 466.53065, 485.34446",
    "LOGISTIC, 1, 0.19808947, 0.21632295",
    "LOGISTIC, 2, 18.842011, 19.450204",
    "RICHARDS, 0, 456.56216, 468.25598",
    "RICHARDS, 1, 0.23225997, 0.27055136",
    "RICHARDS, 3, 1.2578709, 1.6270445",
    "GOMPERTZ, 0, 491.89486, 658.70121",
    "GOMPERTZ, 1, 0.08310616, 0.13676982"
  })
  void profileIntervalsAreThoseOfTheReference(CurveModel model, int i, double lo, double hi) {
    Interval got = onArea(model).profile(i);
    assertEquals(1, got.lo().getAsDouble() / lo, 1e-6);
    assertEquals(1, got.hi().getAsDouble() / hi, 1e-6);
  }

  @Test
  void theDayOf400HasTheIntervalsOfR() {
    // tau 27.18529967, delta 26.908922-27.461677, profile 26.912731-27.468398 (R confint.nls)
    ReachedOn day = assertInstanceOf(ReachedOn.class, onArea(CurveModel.LOGISTIC).dayOf(400));
    assertEquals(27.18529967, day.dat().value(), 5e-8);
    assertEquals(0.12217446, day.dat().standardError(), 5e-8);
    assertEquals(26.908922, day.dat().lo95(), 1e-6);
    assertEquals(27.461677, day.dat().hi95(), 1e-6);
    // R's profile interpolates by spline: good to about 5 digits
    assertEquals(26.912731, day.profile().lo().getAsDouble(), 5e-5);
    assertEquals(27.468398, day.profile().hi().getAsDouble(), 5e-5);
  }

  @Test
  void rgrAndAreaHaveTheErrorsOfR() {
    Fitted fit = onArea(CurveModel.LOGISTIC);
    // R, delta method, day 18: area 209.93248039 (1.73736318), RGR 0.11563247 (0.001818543)
    Estimate rgr = fit.rgrPerDay(18).orElseThrow();
    assertEquals(0.11563247, rgr.value(), 5e-9);
    assertEquals(0.001818543, rgr.standardError(), 1e-9);
    Estimate ln = fit.lnArea(18).orElseThrow();
    assertEquals(209.93248039, Math.exp(ln.value()), 5e-7);
    assertEquals(1.73736318 / 209.93248039, ln.standardError(), 1e-9);
  }

  @Test
  void onLnAreaTheLogisticIsThatOfR() {
    // Log-scale logistic: A 508.4655964 (14.764449), k 0.1857810076, tm 20.23572138, RSS
    // 0.01118751757
    FitRule rule =
        new FitRule(Scale.LN_AREA, java.util.List.of(CurveModel.LOGISTIC), Outliers.KEEP, 0);
    Fitted fit = assertInstanceOf(Fitted.class, FitGrowth.of(Series.of(DAT, AREA), rule));
    assertEquals(1, fit.curve().parameters().get(0) / 508.4655964, 1e-6);
    assertEquals(1, fit.standardError(0) / 14.764449, 2e-6);
    assertEquals(1, fit.curve().parameters().get(1) / 0.1857810076, 1e-6);
    assertEquals(1, fit.curve().parameters().get(2) / 20.23572138, 1e-6);
    assertEquals(1, fit.working().rss() / 0.01118751757, 1e-7);
  }

  @Test
  void beforeTheInflectionTheForecastIsWithheld() {
    // The trap: eight points give A 602.9 (23.6) and 536 cm2 on day 33, observed 447.9
    Series young = Series.of(DAT, AREA).upTo(21);
    Fitted fit =
        assertInstanceOf(Fitted.class, FitGrowth.of(young, FitRule.onArea(CurveModel.LOGISTIC)));
    assertEquals(1, fit.curve().parameters().get(0) / 602.9018258, 1e-6);
    assertTrue(fit.asymptoteCm2().isEmpty());
    assertEquals(
        "asymptote not identified: the last open photo (day 21.0) is before the inflection"
            + " (day 21.6)",
        fit.asymptoteDoubt().orElseThrow());
    assertTrue(fit.lnArea(33).isEmpty(), "no area is read twelve days ahead");
    assertEquals(
        "500.0 cm2 is not reached by day 26.3, the farthest that the photos carry the curve"
            + " (asymptote not identified: the last open photo (day 21.0) is before the inflection"
            + " (day 21.6))",
        assertInstanceOf(NotReached.class, fit.dayOf(500)).reason());
  }

  @Test
  void aTargetOverTheAsymptoteIsNotReached() {
    assertEquals(
        "the curve levels off at 475.6 cm2, under 480.0 cm2",
        assertInstanceOf(NotReached.class, onArea(CurveModel.LOGISTIC).dayOf(480)).reason());
    assertEquals(
        "was larger than 5.000 cm2 from the first photo on",
        assertInstanceOf(NotReached.class, onArea(CurveModel.LOGISTIC).dayOf(5)).reason());
  }

  private static Fitted onArea(CurveModel model) {
    return assertInstanceOf(
        Fitted.class, FitGrowth.of(Series.of(DAT, AREA), FitRule.onArea(model)));
  }
}
