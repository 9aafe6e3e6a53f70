// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A grader file of {@code graders/} as written: plain values, checked one by one.
 *
 * @param name the file's name without ending
 * @param crop the crop
 * @param origin where it comes from: texts by key
 * @param matchHours how far photo and weighing were allowed to lie apart
 * @param regimes the fits by name, {@code open} and {@code closed}
 * @param refused why a regime has no fit, by name
 * @param height the height model, where there is one
 * @param remarks what a reader must know
 */
public record GraderSheet(
    String name,
    String crop,
    Map<String, String> origin,
    double matchHours,
    Map<String, Fit> regimes,
    Map<String, String> refused,
    Optional<Height> height,
    List<String> remarks) {

  /** Copies maps and lists. */
  public GraderSheet {
    origin = Map.copyOf(origin);
    regimes = Map.copyOf(regimes);
    refused = Map.copyOf(refused);
    remarks = List.copyOf(remarks);
  }

  /**
   * The numbers of one regime.
   *
   * @param terms of the model, in words
   * @param coefficients one for each term
   * @param covariance of the coefficients, a row for each
   * @param numbers single numbers by key
   * @param ranges smallest and largest by size
   * @param estimator how it was fitted
   * @param varieties varieties weighed
   */
  public record Fit(
      List<String> terms,
      List<Double> coefficients,
      List<List<Double>> covariance,
      Map<String, Double> numbers,
      Map<String, List<Double>> ranges,
      String estimator,
      List<String> varieties) {

    /** Copies maps and lists. */
    public Fit {
      terms = List.copyOf(terms);
      coefficients = List.copyOf(coefficients);
      covariance = covariance.stream().map(List::copyOf).toList();
      numbers = Map.copyOf(numbers);
      ranges = Map.copyOf(ranges);
      varieties = List.copyOf(varieties);
    }
  }

  /**
   * The height model.
   *
   * @param numbers single numbers by key
   * @param meanToTopMeasured whether mean over top height was measured, not guessed
   */
  public record Height(Map<String, Double> numbers, boolean meanToTopMeasured) {

    /** Copies the map. */
    public Height {
      numbers = Map.copyOf(numbers);
    }
  }
}
