// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.Arrays;
import java.util.List;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.Series;

/**
 * Estimates a cohort's curve and the spread of its plants by maximum likelihood on the linearised
 * mixed model: Newton steps for the curve, EM for the covariance between plants, a pattern search
 * for wandering and scatter, each on the likelihood that the plants' filters give.
 *
 * <p>Plants that fit the model worse than one in a hundred would are weighted down, so that sick
 * ones do not make the spread.
 *
 * <p>Sources: Laird and Ware 1982, Biometrics 38:963-974; Lindstrom and Bates 1990, Biometrics
 * 46:673-687; Liu and Rubin 1994, Biometrika 81:633-648 (ECME).
 */
final class EstimateCohort {
  private static final int MOST_ROUNDS = 40;

  /** Standard deviation of the log of wandering and of scatter about what is assumed of them. */
  private static final double LOOSE = 1.5;

  private final CurveModel model;
  private final List<Series> plants;
  private final CohortPrior prior;
  private final double persistent;
  private final double[][] priorInformation;
  private final double[] weights;
  private final double span;

  EstimateCohort(List<Series> plants, CohortPrior prior, double persistent) {
    this.model = prior.model();
    this.plants = plants;
    this.prior = prior;
    this.persistent = persistent;
    this.priorInformation = SmallMatrix.inverse(prior.between());
    this.weights = new double[plants.size()];
    Arrays.fill(weights, 1);
    this.span =
        plants.stream().mapToDouble(s -> s.dat(s.size() - 1)).max().orElse(1)
            - plants.stream().mapToDouble(s -> s.dat(0)).min().orElse(0);
  }

  /** What one pass over the plants gathers. */
  private final class Pass {
    private final int p = model.parameterCount();
    private final double[][] information = new double[p][p];
    private final double[] score = new double[p];
    private final double[][] moment = new double[p][p];
    private double plantsCounted;

    Pass(Estimated now) {
      double[][] inverse = SmallMatrix.inverse(now.spread().plants);
      PlantFilter filter = new PlantFilter(now, now.spread().plants, persistent);
      CommonShare common = new CommonShare(span);
      for (int i = 0; i < plants.size(); i++) {
        follow(filter, plants.get(i), common);
        weights[i] = weight(filter.distance, plants.get(i).size());
        plantsCounted += weights[i];
        SmallMatrix.add(moment, filter.covariance, weights[i]);
        SmallMatrix.addOuter(moment, filter.mean, weights[i]);
        SmallMatrix.add(score, SmallMatrix.times(inverse, filter.mean), weights[i]);
        SmallMatrix.add(information, inverse, weights[i]);
        SmallMatrix.add(information, SmallMatrix.sandwich(inverse, filter.covariance), -weights[i]);
      }
      double effect = common.designEffect(plantsCounted);
      for (int j = 0; j < p; j++) {
        score[j] /= effect;
        for (int k = 0; k < p; k++) {
          information[j][k] /= effect;
        }
      }
    }

    private void follow(PlantFilter filter, Series plant, CommonShare common) {
      filter.restart();
      for (int i = 0; i < plant.size(); i++) {
        filter.take(plant, i);
        if (i > 0 && !plant.isClosed(i)) {
          common.add(plant.dat(i), filter.z());
        }
      }
    }
  }

  Estimated run(double[] start) {
    Estimated now = new Estimated(model, start, prior.between(), prior.spread());
    double factor = 2;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      Pass pass = new Pass(now);
      double[][] error = error(pass);
      double[] step = step(pass, error, now.theta());
      double[] theta = now.theta().clone();
      SmallMatrix.add(theta, step, 1);
      double[][] between = between(pass);
      double moved = moved(step, error) + change(between, now.spread().plants);
      Spread spread = new Spread(between, now.spread().wanderPerDay, now.spread().scatter);
      Estimated next = new Estimated(model, theta, error, spread);
      Estimated tuned = tuned(next, factor);
      if (tuned.spread() == spread) {
        factor = Math.sqrt(factor);
      }
      now = tuned;
      if (moved < 0.01 && factor < 1.1) {
        break;
      }
    }
    return new Estimated(model, now.theta(), error(new Pass(now)), now.spread());
  }

  private double[][] error(Pass pass) {
    double[][] information = new double[pass.p][pass.p];
    SmallMatrix.add(information, pass.information, 1);
    SmallMatrix.add(information, priorInformation, 1);
    return SmallMatrix.inverse(information);
  }

  /** Returns the Newton step, no longer than half a unit in the log of the rate. */
  private double[] step(Pass pass, double[][] error, double[] theta) {
    double[] score = pass.score.clone();
    double[] off = prior.theta().clone();
    SmallMatrix.add(off, theta, -1);
    SmallMatrix.add(score, SmallMatrix.times(priorInformation, off), 1);
    double[] step = SmallMatrix.times(error, score);
    double longest = 0;
    for (int j = 0; j < step.length; j++) {
      longest = Math.max(longest, Math.abs(step[j]) / Math.sqrt(9 * prior.between()[j][j]));
    }
    double share = longest > 0.3 ? 0.3 / longest : 1;
    for (int j = 0; j < step.length; j++) {
      step[j] *= share;
    }
    return step;
  }

  private double[][] between(Pass pass) {
    double[][] out = new double[pass.p][pass.p];
    double count = pass.plantsCounted + prior.weight();
    SmallMatrix.add(out, pass.moment, 1 / count);
    SmallMatrix.add(out, prior.spread().plants, prior.weight() / count);
    return out;
  }

  /** Tries more and less wandering and scatter; returns the argument itself if none is better. */
  private Estimated tuned(Estimated at, double factor) {
    Estimated best = at;
    double most = logPosterior(at);
    double[][] tries = {{factor, 1}, {1 / factor, 1}, {1, factor}, {1, 1 / factor}};
    for (double[] t : tries) {
      Spread s = best.spread();
      Spread other = new Spread(s.plants, s.wanderPerDay * t[0], s.scatter * t[1]);
      Estimated next = new Estimated(model, at.theta(), at.error(), other);
      double value = logPosterior(next);
      if (value > most + 1e-3) {
        best = next;
        most = value;
      }
    }
    return best;
  }

  private double logPosterior(Estimated at) {
    PlantFilter filter = new PlantFilter(at, at.spread().plants, persistent);
    double sum = 0;
    for (int i = 0; i < plants.size(); i++) {
      follow(filter, plants.get(i));
      sum += weights[i] * filter.logLikelihood;
    }
    double wander = Math.log(at.spread().wanderPerDay / prior.spread().wanderPerDay);
    double scatter = Math.log(at.spread().scatter / prior.spread().scatter);
    return sum - 0.5 * (wander * wander + scatter * scatter) / (LOOSE * LOOSE);
  }

  private static void follow(PlantFilter filter, Series plant) {
    filter.restart();
    for (int i = 0; i < plant.size(); i++) {
      filter.take(plant, i);
    }
  }

  /** Returns 1, or less where a plant is farther off than the 99 % point of chi squared. */
  private static double weight(double distance, int n) {
    double a = 2.0 / (9 * n);
    // Wilson and Hilferty 1931, PNAS 17:684-688.
    double limit = n * Math.pow(1 - a + 2.3263 * Math.sqrt(a), 3);
    return Math.min(1, limit / Math.max(distance, 1e-12));
  }

  private static double moved(double[] step, double[][] error) {
    double most = 0;
    for (int j = 0; j < step.length; j++) {
      most = Math.max(most, Math.abs(step[j]) / Math.sqrt(error[j][j]));
    }
    return most / 10;
  }

  private static double change(double[][] a, double[][] b) {
    double most = 0;
    for (int j = 0; j < a.length; j++) {
      most = Math.max(most, Math.abs(a[j][j] / b[j][j] - 1));
    }
    return most;
  }
}
