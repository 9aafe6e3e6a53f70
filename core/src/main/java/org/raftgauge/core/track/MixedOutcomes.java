// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What all ways of ageing and kinds of noise say of growth, each weighed by how well it foretold
 * what was known (Bayesian model averaging). Of the ways a part of the weight stays as it was
 * before: one that explains all by age is not ruled out by a few noisy evenings.
 */
final class MixedOutcomes {
  /** Part of the ways' weight that stays as it was: a working value. */
  private static final double DOUBT = 0.1;

  private final List<Way> ways = new ArrayList<>();

  /** A way: its weight before, and its outcomes by noise. */
  private record Way(double prior, List<GrowthForetold.Outcome> outcomes) {}

  /**
   * Adds a way.
   *
   * @param prior its weight before anything was seen
   * @param outcomes under each noise, which are thought alike
   */
  void add(double prior, List<GrowthForetold.Outcome> outcomes) {
    ways.add(new Way(prior, outcomes));
  }

  /** Returns the standard deviation of what an evening's photos have in common, ln(area). */
  double eveningSd() {
    return mean(o -> o.noise().evening());
  }

  /** Returns the share of the foretold growth that there was. */
  double share() {
    return mean(GrowthForetold.Outcome::share);
  }

  /** Returns its error. */
  double shareSd() {
    double share = share();
    return Math.sqrt(mean(o -> square(o.shareSd()) + square(o.share() - share)));
  }

  /** Returns the foretold growth, ln(area). */
  double growth() {
    return mean(GrowthForetold.Outcome::growth);
  }

  /** Returns the probability of so little growth by chance. */
  double chance() {
    double kept = 0;
    double priors = 0;
    for (Way way : ways) {
      double sum = 0;
      double weights = 0;
      for (GrowthForetold.Outcome outcome : way.outcomes) {
        double weight = Math.exp(outcome.lnLikelihood() - most(way.outcomes));
        sum += weight * Normal.below(outcome.z());
        weights += weight;
      }
      kept += way.prior * sum / weights;
      priors += way.prior;
    }
    return (1 - DOUBT) * mean(o -> Normal.below(o.z())) + DOUBT * kept / priors;
  }

  private double mean(ToDoubleFunction<GrowthForetold.Outcome> of) {
    double most = ways.stream().mapToDouble(way -> most(way.outcomes)).max().orElseThrow();
    double sum = 0;
    double weights = 0;
    for (Way way : ways) {
      for (GrowthForetold.Outcome outcome : way.outcomes) {
        double weight = way.prior * Math.exp(outcome.lnLikelihood() - most);
        sum += weight * of.applyAsDouble(outcome);
        weights += weight;
      }
    }
    return sum / weights;
  }

  private static double most(List<GrowthForetold.Outcome> outcomes) {
    return outcomes.stream().mapToDouble(GrowthForetold.Outcome::lnLikelihood).max().orElseThrow();
  }

  private static double square(double x) {
    return x * x;
  }
}
