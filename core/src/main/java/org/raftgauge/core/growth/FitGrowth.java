// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.growth.FitRule.Outliers;
import org.raftgauge.core.growth.FitRule.Scale;
import org.raftgauge.core.leastsquares.FitOutcome;
import org.raftgauge.core.leastsquares.MeanFunction;
import org.raftgauge.core.leastsquares.NonlinearFit;
import org.raftgauge.core.leastsquares.Points;
import org.raftgauge.core.leastsquares.Solved;
import org.raftgauge.core.leastsquares.Unsolved;

/** Fits growth curves to one series and takes the one that the points support best. */
public final class FitGrowth {
  /**
   * Largest shape of Richards' curve that is believed. At 20 a plant that grew by a tenth a day
   * falls from nine tenths to one tenth of that within 2.2 days (a working value).
   */
  private static final double MOST_SHAPE = 20;

  /** A shape of Richards' curve so small that it is Gompertz's to four digits, as its log. */
  private static final double LN_HARDLY_ANY_SHAPE = Math.log(1e-4);

  /** Relative difference of two sums of squares that are one; a working value. */
  private static final double SAME_SUM = 1e-3;

  private FitGrowth() {}

  /**
   * Fits the candidates of a rule and takes the one of least AICc.
   *
   * <p>A curve needs two more open points than parameters, and three more where it is one of
   * several candidates. Closed points enter as lower bounds of a censored normal likelihood.
   *
   * @param series areas over days
   * @param rule what to fit and how
   */
  public static GrowthFit of(Series series, FitRule rule) {
    Points points = points(series, rule);
    List<String> failures = new ArrayList<>();
    List<Candidate> candidates = candidates(points, rule, failures);
    List<Integer> bad =
        rule.outliers() == Outliers.DISCOUNT ? BadPhotos.of(points, rule, candidates) : List.of();
    if (!bad.isEmpty()) {
      points = without(points, bad);
      failures.clear();
      candidates = candidates(points, rule, failures);
    }
    Optional<Candidate> best = best(candidates, rule);
    if (best.isEmpty()) {
      return new NotFitted(String.join("; ", failures));
    }
    return new Fitted(best.get(), points, new Fitted.Data(series, rule.scale(), bad));
  }

  static Points points(Series series, FitRule rule) {
    int n = series.size();
    double[] x = new double[n];
    double[] y = new double[n];
    double[] weights = new double[n];
    boolean[] closed = new boolean[n];
    for (int i = 0; i < n; i++) {
      x[i] = series.dat(i);
      boolean ln = rule.scale() == Scale.LN_AREA;
      y[i] = ln ? series.lnArea(i) : series.areaCm2(i);
      double error = Math.hypot(series.errorFraction(i), rule.scatterFraction());
      double unit = ln ? 1 : series.areaCm2(i);
      weights[i] = error > 0 ? 1 / (error * error * unit * unit) : 1;
      closed[i] = series.isClosed(i);
    }
    return Points.of(x, y).withWeights(weights).withLowerBounds(closed);
  }

  private static List<Candidate> candidates(Points points, FitRule rule, List<String> failures) {
    List<Candidate> out = new ArrayList<>();
    int least = Integer.MAX_VALUE;
    for (CurveModel model : rule.models()) {
      int needed = model.parameterCount() + (rule.models().size() > 1 ? 3 : 2);
      if (points.observed() < needed) {
        least = Math.min(least, needed);
        continue;
      }
      if (model == CurveModel.RICHARDS && runsToGompertz(out, rule.scale(), points)) {
        failures.add(name(model) + ": no better than its limit, Gompertz's curve");
        continue;
      }
      FitOutcome outcome = fit(model, rule.scale(), points);
      if (outcome instanceof Solved solved && endsAtOnce(model, solved)) {
        failures.add(name(model) + ": growth would end from one day to the next");
      } else if (outcome instanceof Solved solved) {
        out.add(new Candidate(model, solved));
      } else if (outcome instanceof Unsolved unsolved) {
        failures.add(name(model) + ": " + unsolved.reason());
      }
    }
    if (least < Integer.MAX_VALUE) {
      failures.add(0, tooFew(points.observed(), least));
    }
    return out;
  }

  /**
   * Says whether Richards' curve, begun at its limit of shape 0 where Gompertz's fits best, fits
   * worse with any more shape: its shape would run to 0 and never settle.
   */
  private static boolean runsToGompertz(List<Candidate> fitted, Scale scale, Points points) {
    Optional<Candidate> gompertz =
        fitted.stream().filter(c -> c.model() == CurveModel.GOMPERTZ).findFirst();
    if (gompertz.isEmpty()) {
      return false;
    }
    double[] limit = Arrays.copyOf(gompertz.get().fit().parameters(), 4);
    limit[3] = LN_HARDLY_ANY_SHAPE;
    double sigma = gompertz.get().fit().sigma();
    double[] step =
        NonlinearFit.step(CurveMean.of(CurveModel.RICHARDS, scale), points, sigma, limit);
    return step.length > 0 && step[3] < 0;
  }

  /**
   * Says whether Richards' curve is exponential up to a corner and flat behind it. One low last
   * photo makes it so, and what it foretells is that no plant grows any more.
   */
  private static boolean endsAtOnce(CurveModel model, Solved fit) {
    return model == CurveModel.RICHARDS && fit.parameters()[3] > Math.log(MOST_SHAPE);
  }

  private static String tooFew(int open, int needed) {
    String photos = open == 1 ? "1 photo" : open + " photos";
    return photos + " before the plants closed, where a curve needs at least " + needed;
  }

  /**
   * Fits one curve from its best few starts, until two of them lead to the same curve, or to the
   * same sum without a curve.
   */
  private static FitOutcome fit(CurveModel model, Scale scale, Points points) {
    MeanFunction mean = CurveMean.of(model, scale);
    FitOutcome best = new Unsolved("no start gives areas above 0");
    double least = Double.POSITIVE_INFINITY;
    for (double[] start : SelfStart.of(model, scale, points)) {
      FitOutcome outcome = NonlinearFit.of(mean, points, start);
      if ((outcome instanceof Solved solved && Math.abs(solved.logLikelihood() + least) < 1e-7)
          || sameSum(best, outcome)) {
        break;
      }
      if (outcome instanceof Solved solved && -solved.logLikelihood() < least - 1e-9) {
        best = outcome;
        least = -solved.logLikelihood();
      } else if (!(best instanceof Solved)) {
        best = outcome;
      }
    }
    return best;
  }

  private static boolean sameSum(FitOutcome best, FitOutcome outcome) {
    return best instanceof Unsolved before
        && outcome instanceof Unsolved now
        && before.sum().isPresent()
        && now.sum().isPresent()
        && Math.abs(before.sum().getAsDouble() - now.sum().getAsDouble())
            < SAME_SUM * now.sum().getAsDouble();
  }

  private static Optional<Candidate> best(List<Candidate> candidates, FitRule rule) {
    if (rule.models().size() == 1) {
      return candidates.stream().findFirst();
    }
    Optional<Candidate> best = Optional.empty();
    double least = Double.POSITIVE_INFINITY;
    for (Candidate candidate : candidates) {
      OptionalDouble aicc = candidate.fit().aicc();
      if (aicc.isPresent() && aicc.getAsDouble() < least) {
        best = Optional.of(candidate);
        least = aicc.getAsDouble();
      }
    }
    return best;
  }

  private static Points without(Points points, List<Integer> bad) {
    double[] weights = new double[points.size()];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = bad.contains(i) ? 0 : points.weight(i);
    }
    return points.withWeights(weights);
  }

  private static String name(CurveModel model) {
    return model.name().toLowerCase(Locale.ROOT);
  }
}
