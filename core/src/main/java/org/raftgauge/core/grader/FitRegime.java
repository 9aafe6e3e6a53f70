// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.core.agreement.BlandAltman;
import org.raftgauge.core.agreement.LinearFit;
import org.raftgauge.core.agreement.Robust;

/** Fits the model of one regime. */
final class FitRegime {

  private FitRegime() {}

  /** Fits the best model that the weighings carry, or nothing where they carry none. */
  static Optional<RegimeFit> fit(List<Weighed> weighed, Set<Size> sizes) {
    return ChooseModel.among(weighed, sizes)
        .map(chosen -> fit(weighed, chosen.terms(), chosen.estimator()));
  }

  static RegimeFit fit(List<Weighed> weighed, List<Term> terms, Estimator estimator) {
    double[][] design = design(weighed, terms);
    double[] y = lnWeights(weighed);
    LinearFit fit = LinearFit.weighted(design, y, estimator.weights(design, y));
    double[] residuals = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      residuals[i] = y[i] - LinearFit.dot(design[i], fit.coefficients());
    }
    double variance = LinearFit.dot(residuals, residuals) / fit.degreesOfFreedom();
    double[][] covariance = fit.unscaledCovariance();
    for (double[] row : covariance) {
      for (int j = 0; j < row.length; j++) {
        row[j] *= variance;
      }
    }
    double[] leftOut = leftOut(design, y, estimator);
    RegimeFit.Numbers numbers =
        new RegimeFit.Numbers(
            terms,
            estimator.toString(),
            Math.sqrt(variance),
            fit.degreesOfFreedom(),
            Arrays.stream(residuals).map(Math::exp).average().orElseThrow(),
            y.length,
            errors(leftOut, y),
            limits(leftOut, y),
            Validity.of(weighed, used(terms)));
    return new RegimeFit(numbers, fit.coefficients(), covariance);
  }

  private static Set<Size> used(List<Term> terms) {
    Set<Size> used = EnumSet.noneOf(Size.class);
    terms.forEach(term -> used.addAll(term.sizes()));
    return used;
  }

  static double[] lnWeights(List<Weighed> weighed) {
    return weighed.stream().mapToDouble(w -> Math.log(w.freshWeightG())).toArray();
  }

  static double[][] design(List<Weighed> weighed, List<Term> terms) {
    return weighed.stream()
        .map(w -> Term.row(terms, w.traits()).orElseThrow())
        .toArray(double[][]::new);
  }

  /** Predicts each {@code ln w} from a fit to all the others, made anew. */
  private static double[] leftOut(double[][] design, double[] y, Estimator estimator) {
    double[] predicted = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      List<double[]> rows = new ArrayList<>(Arrays.asList(design));
      rows.remove(i);
      double[] rest = new double[y.length - 1];
      System.arraycopy(y, 0, rest, 0, i);
      System.arraycopy(y, i + 1, rest, i, rest.length - i);
      double[][] others = rows.toArray(double[][]::new);
      LinearFit fit = LinearFit.weighted(others, rest, estimator.weights(others, rest));
      predicted[i] = LinearFit.dot(design[i], fit.coefficients());
    }
    return predicted;
  }

  private static LeftOut errors(double[] predicted, double[] y) {
    double[] shares = new double[y.length];
    double squares = 0;
    for (int i = 0; i < y.length; i++) {
      shares[i] = Math.abs(Math.exp(predicted[i] - y[i]) - 1);
      squares += (predicted[i] - y[i]) * (predicted[i] - y[i]);
    }
    return new LeftOut(
        Arrays.stream(shares).average().orElseThrow(),
        Robust.median(shares),
        Math.sqrt(squares / y.length));
  }

  private static RegimeFit.Limits limits(double[] predicted, double[] y) {
    BlandAltman agreement = BlandAltman.of(predicted, y);
    return new RegimeFit.Limits(
        Math.expm1(agreement.bias()),
        Math.expm1(agreement.lower()),
        Math.expm1(agreement.upper()),
        agreement.trendP());
  }
}
