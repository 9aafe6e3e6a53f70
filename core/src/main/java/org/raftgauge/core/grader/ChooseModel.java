// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;

/**
 * Chooses the terms of a regime's model by leave-one-out error: of all models that the weighings
 * can carry, the simplest whose mean absolute error of {@code ln w} exceeds the best one's by no more
 * than one standard error of their paired difference (the one-standard-error rule of Breiman,
 * Friedman, Olshen and Stone 1984, section 3.4.3). Robust weights are taken only where they lower it by 5 %: with wild weighings, not with clean
 * ones.
 *
 * <p>A model may have a parameter for every four weighings; a variety its own level from four
 * weighings of it, its own slope from six; a bent line takes twenty weighings, robust weights
 * forty. These bounds are working values.
 */
final class ChooseModel {
  /** What robust weights must gain: their intervals are less exact. */
  private static final double MUCH_BETTER = 0.95;

  private static final int WEIGHINGS_A_PARAMETER = 4;
  private static final int FOR_LEVEL = 4;
  private static final int FOR_SLOPE = 6;
  private static final int FOR_BEND = 20;
  private static final int FOR_ROBUST = 40;

  /** A model with its leave-one-out errors; holds an array, so it is no record. */
  static final class Scored {
    private final List<Term> terms;
    private final Estimator estimator;
    private final double[] absoluteLn;
    private final double meanAbsoluteLn;

    private Scored(List<Term> terms, Estimator estimator, double[] errors) {
      this.terms = terms;
      this.estimator = estimator;
      this.absoluteLn = Arrays.stream(errors).map(Math::abs).toArray();
      this.meanAbsoluteLn = Arrays.stream(absoluteLn).average().orElseThrow();
    }

    List<Term> terms() {
      return terms;
    }

    Estimator estimator() {
      return estimator;
    }

    double meanAbsoluteLn() {
      return meanAbsoluteLn;
    }

    /** Returns whether chance alone may have put another model before this one. */
    private boolean asGoodAs(Scored other) {
      double[] worse = new double[absoluteLn.length];
      Arrays.setAll(worse, i -> absoluteLn[i] - other.absoluteLn[i]);
      double sd = new StandardDeviation().evaluate(worse);
      return meanAbsoluteLn - other.meanAbsoluteLn <= sd / Math.sqrt(worse.length);
    }
  }

  private ChooseModel() {}

  /** Returns the chosen model, or nothing where the weighings carry none. */
  static Optional<Scored> among(List<Weighed> weighed, Set<Size> sizes) {
    List<Scored> scored = new ArrayList<>();
    for (List<Term> terms : candidates(weighed, sizes)) {
      for (Estimator estimator : Estimator.values()) {
        score(weighed, terms, estimator).ifPresent(scored::add);
      }
    }
    Optional<Scored> plain = best(scored, Estimator.LEAST_SQUARES);
    Optional<Scored> robust = best(scored, Estimator.BISQUARE);
    boolean wild =
        robust.isPresent()
            && plain.stream()
                .allMatch(
                    p -> robust.get().meanAbsoluteLn() < MUCH_BETTER * p.meanAbsoluteLn());
    return (wild ? robust : plain).flatMap(best -> simplest(scored, best));
  }

  private static Optional<Scored> simplest(List<Scored> scored, Scored best) {
    return scored.stream()
        .filter(s -> s.estimator() == best.estimator() && s.asGoodAs(best))
        .min(
            Comparator.<Scored>comparingInt(s -> s.terms().size())
                .thenComparing(Scored::meanAbsoluteLn));
  }

  private static Optional<Scored> best(List<Scored> scored, Estimator estimator) {
    return scored.stream()
        .filter(s -> s.estimator() == estimator)
        .min(Comparator.comparingDouble(Scored::meanAbsoluteLn));
  }

  private static Optional<Scored> score(
      List<Weighed> weighed, List<Term> terms, Estimator estimator) {
    if (estimator == Estimator.BISQUARE && weighed.size() < FOR_ROBUST) {
      return Optional.empty();
    }
    List<double[]> rows =
        weighed.stream().map(w -> Term.row(terms, w.traits())).flatMap(Optional::stream).toList();
    if (rows.size() < weighed.size()) {
      return Optional.empty();
    }
    try {
      double[] errors =
          estimator.leaveOneOut(rows.toArray(double[][]::new), FitRegime.lnWeights(weighed));
      return Optional.of(new Scored(terms, estimator, errors));
    } catch (IllegalArgumentException dependent) {
      return Optional.empty(); // all plants alike in a trait: this model cannot be told
    }
  }

  private static List<List<Term>> candidates(List<Weighed> weighed, Set<Size> sizes) {
    Map<String, Long> counts =
        weighed.stream()
            .collect(
                Collectors.groupingBy(
                    w -> w.traits().variety(), TreeMap::new, Collectors.counting()));
    long thinnest = counts.values().stream().mapToLong(n -> n).min().orElse(0);
    List<List<Term>> models = new ArrayList<>();
    for (List<Size> used : subsets(sizes)) {
      for (List<Term> common : shapes(used, weighed.size())) {
        models.add(common);
        if (counts.size() > 1 && thinnest >= FOR_LEVEL) {
          models.add(with(common, List.of(Term.of()), counts.keySet()));
        }
        if (counts.size() > 1 && thinnest >= FOR_SLOPE) {
          models.add(with(common, List.of(Term.of(), Term.of(used.get(0))), counts.keySet()));
        }
      }
    }
    return models.stream()
        .filter(terms -> terms.size() * WEIGHINGS_A_PARAMETER <= weighed.size())
        .toList();
  }

  /** Returns the non-empty subsets in a stable order; area and curve never both. */
  private static List<List<Size>> subsets(Set<Size> sizes) {
    List<List<Size>> subsets = new ArrayList<>();
    for (Size main : List.of(Size.AREA, Size.CURVE, Size.HEIGHT)) {
      if (sizes.contains(main)) {
        subsets.add(List.of(main));
        if (main != Size.HEIGHT && sizes.contains(Size.HEIGHT)) {
          subsets.add(List.of(main, Size.HEIGHT));
        }
      }
    }
    return subsets;
  }

  private static List<List<Term>> shapes(List<Size> used, int n) {
    List<Term> straight = new ArrayList<>(List.of(Term.of()));
    used.forEach(size -> straight.add(Term.of(size)));
    List<List<Term>> shapes = new ArrayList<>(List.of(straight));
    if (n >= FOR_BEND) {
      List<Term> bent = new ArrayList<>(straight);
      used.forEach(size -> bent.add(Term.of(size, size)));
      if (used.size() == 2) {
        bent.add(Term.of(used.get(0), used.get(1)));
      }
      shapes.add(bent);
    }
    return shapes;
  }

  /** Adds terms for each variety but the first, which the common terms stand for. */
  private static List<Term> with(List<Term> common, List<Term> own, Set<String> varieties) {
    List<Term> terms = new ArrayList<>(common);
    varieties.stream()
        .skip(1)
        .forEach(variety -> own.forEach(term -> terms.add(term.onlyFor(variety))));
    return terms;
  }
}
