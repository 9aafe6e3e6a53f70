// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.agreement.LinearFit;

/** The fitted model of one regime. Holds arrays, so it is no record; it never changes. */
public final class RegimeFit {
  private final Numbers numbers;
  private final double[] coefficients;
  private final double[][] covariance;

  /**
   * The plain values of a fit.
   *
   * @param terms of {@code ln w}, one for each coefficient
   * @param estimator how the numbers were found: {@code least squares} or {@code bisquare}
   * @param residualSd spread of single plants, of {@code ln w}; all weighings count in it
   * @param degreesOfFreedom weighings minus parameters
   * @param smearing mean of {@code exp(residual)}, Duan 1983
   * @param weighings number of weighings
   * @param leftOut leave-one-out error
   * @param agreement of predicted (left out) with weighed, g
   * @param validity what the weighings covered
   */
  public record Numbers(
      List<Term> terms,
      String estimator,
      double residualSd,
      int degreesOfFreedom,
      double smearing,
      int weighings,
      LeftOut leftOut,
      Limits agreement,
      Validity validity) {

    /** Copies the terms. */
    public Numbers {
      terms = List.copyOf(terms);
    }
  }

  /**
   * Limits of agreement of predicted with weighed (Bland and Altman 1986), as shares: from {@code
   * ln predicted - ln weighed}, left out.
   *
   * @param biasShare mean: 0.02 reads 2 % heavy
   * @param lowerShare lower limit, such as -0.25
   * @param upperShare upper limit
   * @param trendP p-value of the bias changing with size
   */
  public record Limits(double biasShare, double lowerShare, double upperShare, double trendP) {}

  /**
   * Puts a fit together.
   *
   * @param numbers its plain values
   * @param coefficients one for each term
   * @param covariance of the coefficients
   */
  public RegimeFit(Numbers numbers, double[] coefficients, double[][] covariance) {
    int p = numbers.terms().size();
    if (coefficients.length != p || covariance.length != p) {
      throw new IllegalArgumentException(
          "coefficients and covariance must be as many as the terms, " + p);
    }
    this.numbers = numbers;
    this.coefficients = coefficients.clone();
    this.covariance = new double[p][];
    for (int i = 0; i < p; i++) {
      this.covariance[i] = covariance[i].clone();
    }
  }

  /** Returns its plain values. */
  public Numbers numbers() {
    return numbers;
  }

  /** Returns the coefficients, one for each term. */
  public double[] coefficients() {
    return coefficients.clone();
  }

  /** Returns the covariance of the coefficients. */
  public double[][] covariance() {
    double[][] copy = new double[covariance.length][];
    for (int i = 0; i < copy.length; i++) {
      copy[i] = covariance[i].clone();
    }
    return copy;
  }

  /**
   * Returns the values of the terms for a plant; what two plants share of the calibration's error
   * is {@code x_i' V x_j} with V the {@link #covariance}.
   *
   * @param traits of the plant
   * @return one for each term, or nothing where a size is not known or the variety was not weighed
   */
  public Optional<double[]> design(Traits traits) {
    boolean unknown =
        hasVarietyTerms() && !numbers.validity().varieties().contains(traits.variety());
    return unknown ? Optional.empty() : Term.row(numbers.terms(), traits);
  }

  /** Says whether varieties have numbers of their own. */
  public boolean hasVarietyTerms() {
    return numbers.terms().stream().anyMatch(t -> t.variety().isPresent());
  }

  /**
   * Tells a plant's weight.
   *
   * @param traits of the plant
   * @return the prediction, or nothing where a size is not known or the variety was not weighed
   */
  public Optional<Prediction> predict(Traits traits) {
    return design(traits)
        .map(
            x ->
                new Prediction(
                    LinearFit.dot(x, coefficients),
                    Math.sqrt(Math.max(0, LinearFit.form(x, covariance, x))),
                    numbers.residualSd(),
                    numbers.degreesOfFreedom(),
                    numbers.smearing()));
  }

  /**
   * Returns about how many weighings would bring the calibration's own share of the error of a
   * total down to a half width (95 %).
   *
   * @param halfWidthShare such as 0.05 for 5 %, above 0
   * @return number of weighings, {@code (1.96 s / half width)^2}, at least 8
   */
  public int weighingsFor(double halfWidthShare) {
    double root = 1.96 * numbers.residualSd() / halfWidthShare;
    return (int) Math.max(FitRule.FEWEST, Math.ceil(root * root));
  }
}
