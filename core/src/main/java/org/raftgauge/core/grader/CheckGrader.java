// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.raftgauge.core.agreement.Cusum;
import org.raftgauge.core.agreement.LinearFit;
import org.raftgauge.core.agreement.Robust;
import org.raftgauge.core.grader.GraderCheck.Advice;

/**
 * Tests new weighings against a fitted grader. Its advice: keep it; fit it again, where it reads
 * credibly (95 %) more than 5 % heavy or light, or the CUSUM signals (k 0.5, h 5); investigate,
 * where more lie outside their 95 % intervals than 1 in 100 such samples would have or several are
 * suspects, or the bias is over 25 %, which no drift of plants explains; weigh plants, where there
 * are under 5 weighings. The bounds of 5, 25 % and 5 weighings are working values.
 */
public final class CheckGrader {
  private static final int FEWEST = 5;
  private static final double SMALL_BIAS = 0.05;
  private static final double LARGE_BIAS = 0.25;
  private static final double RARE = 0.01;

  /** Standard deviations beyond which a weighing counts no more in the drift: a working value. */
  private static final double WILD = 3;

  /** A weighing with its prediction; the row is kept as a list for the covariance. */
  private record Told(Weighed weighed, Prediction prediction, List<Double> row) {
    double off() {
      return Math.log(weighed.freshWeightG()) - prediction.lnMedian();
    }

    /** Says whether it lies outside its 95 % interval once what all are off by is taken out. */
    boolean outside(double common) {
      double shifted = weighed.freshWeightG() / Math.exp(common);
      return shifted < prediction.quantileG(0.025) || shifted > prediction.quantileG(0.975);
    }
  }

  private CheckGrader() {}

  /**
   * Checks one regime of a grader.
   *
   * @param fit the fit of the regime
   * @param fresh new weighings of the regime, none of which it was fitted on
   * @return what they say
   */
  public static GraderCheck check(RegimeFit fit, List<Weighed> fresh) {
    List<Told> told = new ArrayList<>();
    List<String> notTold = new ArrayList<>();
    fresh.stream()
        .sorted(
            Comparator.comparing((Weighed w) -> w.weighedAt().toInstant())
                .thenComparing(Weighed::line))
        .forEach(
            w -> {
              Optional<Prediction> prediction = fit.predict(w.traits());
              if (prediction.isPresent()) {
                told.add(told(fit, w, prediction.get()));
                fit.numbers()
                    .validity()
                    .beyond(w.traits())
                    .ifPresent(b -> notTold.add(w.label() + ": told, but " + b));
              } else {
                notTold.add(w.label() + ": a size is missing or its variety was never weighed");
              }
            });
    return told.isEmpty() ? nothing(notTold) : judged(fit, told, notTold);
  }

  private static Told told(RegimeFit fit, Weighed weighed, Prediction prediction) {
    List<Double> row = new ArrayList<>();
    for (double value : fit.design(weighed.traits()).orElseThrow()) {
      row.add(value);
    }
    return new Told(weighed, prediction, row);
  }

  private static GraderCheck nothing(List<String> notTold) {
    return new GraderCheck(
        Advice.WEIGH,
        notTold.isEmpty()
            ? "nothing to check yet: no weighing is newer than the fit"
            : "no new weighing could be told; weigh at least " + FEWEST + " plants",
        0,
        notTold,
        0,
        0,
        0,
        0,
        0,
        0,
        new Cusum(List.of(), List.of(), Cusum.Rule.standard().limit()),
        List.of());
  }

  private static GraderCheck judged(RegimeFit fit, List<Told> told, List<String> notTold) {
    int n = told.size();
    double mean = told.stream().mapToDouble(Told::off).average().orElseThrow();
    double squares = told.stream().mapToDouble(t -> (t.off() - mean) * (t.off() - mean)).sum();
    double own = n > 1 ? Math.sqrt(squares / (n - 1)) : fit.numbers().residualSd();
    double[] centre = new double[told.get(0).row().size()];
    for (Told t : told) {
      for (int j = 0; j < centre.length; j++) {
        centre[j] += t.row().get(j) / n;
      }
    }
    double s = fit.numbers().residualSd();
    double se = Math.sqrt(s * s / n + LinearFit.form(centre, fit.covariance(), centre));
    double reach =
        se
            * new TDistribution(fit.numbers().degreesOfFreedom())
                .inverseCumulativeProbability(0.975);
    Cusum drift =
        Cusum.of(
            told.stream().mapToDouble(t -> clipped(t.off() / t.prediction().sdLn())).toArray(),
            Cusum.Rule.standard());
    double common = Robust.median(told.stream().mapToDouble(Told::off).toArray());
    int outside = (int) told.stream().filter(t -> t.outside(common)).count();
    Interval bias =
        new Interval(Math.expm1(-mean), Math.expm1(-mean - reach), Math.expm1(-mean + reach));
    List<Suspect> suspects = ReviewWeighings.review(told.stream().map(Told::weighed).toList());
    Finding finding = finding(new Evidence(n, bias, outside, suspects.size(), drift));
    return new GraderCheck(
        finding.advice(),
        finding.why(),
        n,
        notTold,
        bias.at(),
        bias.low(),
        bias.high(),
        Math.expm1(-mean - 1.96 * own),
        Math.expm1(-mean + 1.96 * own),
        outside,
        drift,
        suspects);
  }

  /** Keeps a single wild weighing from being taken for a drift. */
  private static double clipped(double z) {
    return Math.max(-WILD, Math.min(WILD, z));
  }

  private record Interval(double at, double low, double high) {}

  private record Finding(Advice advice, String why) {}

  private record Evidence(int n, Interval bias, int outside, int suspects, Cusum drift) {}

  private static Finding finding(Evidence evidence) {
    int n = evidence.n();
    Interval bias = evidence.bias();
    int outside = evidence.outside();
    Cusum drift = evidence.drift();
    if (n < FEWEST) {
      return new Finding(
          Advice.WEIGH,
          n
              + (n == 1 ? " new weighing is" : " new weighings are")
              + " too few to tell; weigh at least "
              + FEWEST
              + " plants");
    }
    String reads =
        String.format(
            Locale.ROOT,
            "the grader reads %.0f %% too %s (95 %%: %+.0f to %+.0f %%)",
            100 * Math.abs(bias.at()),
            bias.at() > 0 ? "heavy" : "light",
            100 * bias.low(),
            100 * bias.high());
    boolean credible = bias.low() > 0 || bias.high() < 0;
    if (credible && Math.abs(bias.at()) > LARGE_BIAS) {
      return new Finding(
          Advice.INVESTIGATE,
          reads + ": more than plants drift; check scale, state (whole or trimmed), camera height");
    }
    double chance =
        1 - new BinomialDistribution(n, 0.05).cumulativeProbability(Math.max(-1, outside - 1));
    if (outside > 1 && (chance < RARE || evidence.suspects() > 1)) {
      return new Finding(
          Advice.INVESTIGATE,
          outside
              + " of "
              + n
              + " weighings scatter beyond their 95 % interval; look at the suspects first");
    }
    if (credible && Math.abs(bias.at()) > SMALL_BIAS) {
      return new Finding(Advice.REFIT, reads);
    }
    if (drift.firstSignal().isPresent()) {
      return new Finding(
          Advice.REFIT,
          reads
              + "; the sum of departures passes its limit at new weighing "
              + (drift.firstSignal().getAsInt() + 1));
    }
    return new Finding(Advice.KEEP, "it still holds: " + reads);
  }
}
