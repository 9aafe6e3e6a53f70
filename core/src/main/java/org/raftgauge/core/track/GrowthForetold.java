// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;

/**
 * What the evenings up to one foretell of those after it, by one way of ageing and one kind of
 * noise: a regression of ln(area) on the way's growth, with errors that belong to whole evenings.
 *
 * <p>Errors of an evening are the photos' common one (light, camera), new each evening, and the
 * plants' own, small where they are many. Weather moves a day's growth by a share of it, much of
 * which stays the next day, and never leaves ln(area) again. All plants of an evening err together
 * by these, so that their number does not make the forecast surer. Priors and data are normal; what
 * is foretold follows by conditioning (Rasmussen and Williams 2006, "Gaussian Processes for Machine
 * Learning", section 2.7; from memory).
 */
final class GrowthForetold {
  /** Share of a day's weather that stays the next day: a working value. */
  private static final double WEATHER_STAYS = 0.6;

  /** What a rate is before anything was seen, 1/day: any that leafy crops have. */
  private static final double RATE = 0.1;

  private static final double RATE_SD = 0.15;
  private static final double LEVEL_SD = 1;

  /** Least rate of healthy plants that weather is reckoned on, 1/day. */
  private static final double LEAST_RATE = 0.01;

  private final List<CommonGrowth.Point> points;
  private final int known;
  private final double[] grown;
  private final double[][] weather;
  private final double[][] frozen;
  private final double rate;

  /**
   * Kinds of noise.
   *
   * @param evening standard deviation of what the photos of an evening have in common, ln(area)
   * @param weather standard deviation of a day's growth, as a share of it
   */
  record Noise(double evening, double weather) {}

  /**
   * What comes of the evenings that were foretold.
   *
   * @param noise under which it was foretold
   * @param lnLikelihood of the evenings before, given the way and the noise
   * @param z by how much growth fell short of what was foretold, below 0, in standard deviations
   * @param share of the foretold growth that there was; below 0 where it shrank
   * @param shareSd its error: of the photos and of what was foretold but for weather
   * @param growth foretold from the last evening before to the last, ln(area)
   */
  record Outcome(
      Noise noise, double lnLikelihood, double z, double share, double shareSd, double growth) {}

  /**
   * @param points evenings in order
   * @param known how many of them are before
   * @param shares the way's rate on each day from the first point on, over that at the last known
   */
  GrowthForetold(List<CommonGrowth.Point> points, int known, double[] shares) {
    this.points = points;
    this.known = known;
    int last = day(known - 1);
    double[] path = new double[shares.length + 1];
    for (int day = 0; day < shares.length; day++) {
      path[day + 1] = path[day] + shares[day];
    }
    this.grown = new double[points.size()];
    for (int i = 0; i < grown.length; i++) {
      grown[i] = path[day(i)] - path[last];
    }
    this.rate = Math.max(LEAST_RATE, slope());
    double[][] sums = sums(shares);
    this.weather = new double[points.size()][points.size()];
    this.frozen = new double[points.size()][points.size()];
    for (int i = 0; i < points.size(); i++) {
      for (int j = 0; j < points.size(); j++) {
        weather[i][j] = sums[day(i)][day(j)];
        frozen[i][j] = sums[Math.min(last, day(i))][Math.min(last, day(j))];
      }
    }
  }

  private int day(int point) {
    return (int) Math.round(points.get(point).day() - points.get(0).day());
  }

  /** Returns the least squares rate at the last known evening, 1/day. */
  private double slope() {
    double x = 0;
    double y = 0;
    for (int i = 0; i < known; i++) {
      x += grown[i] / known;
      y += points.get(i).lnArea() / known;
    }
    double xy = 0;
    double xx = 0;
    for (int i = 0; i < known; i++) {
      xy += (grown[i] - x) * (points.get(i).lnArea() - y);
      xx += (grown[i] - x) * (grown[i] - x);
    }
    return xy / xx;
  }

  /** Sums the covariance of days' growth, for a weather of 1, up to two days. */
  private static double[][] sums(double[] shares) {
    double[][] sums = new double[shares.length + 1][shares.length + 1];
    for (int a = 0; a < shares.length; a++) {
      for (int b = 0; b < shares.length; b++) {
        double both = shares[a] * shares[b] * Math.pow(WEATHER_STAYS, Math.abs(a - b));
        sums[a + 1][b + 1] = both + sums[a][b + 1] + sums[a + 1][b] - sums[a][b];
      }
    }
    return sums;
  }

  /** Holds the evenings after against what those before foretell. */
  Outcome under(Noise noise) {
    double[] off = new double[points.size()];
    for (int i = 0; i < off.length; i++) {
      off[i] = points.get(i).lnArea() - points.get(known - 1).lnArea() - RATE * grown[i];
    }
    Whitened all = whitened(noise, weather, off);
    Whitened seen = whitened(noise, frozen, off);
    double lnLikelihood = 0;
    double first = RATE;
    for (int i = 0; i < known; i++) {
      lnLikelihood -= all.off[i] * all.off[i] / 2 + Math.log(all.scale[i]);
      first += RATE_SD * RATE_SD * all.grown[i] * all.off[i];
    }
    double foretold = Math.max(LEAST_RATE, first);
    return new Outcome(
        noise,
        lnLikelihood,
        all.missing() / Math.sqrt(all.weight()),
        1 + seen.missing() / seen.weight() / foretold,
        1 / Math.sqrt(seen.weight()) / foretold,
        foretold * grown[points.size() - 1]);
  }

  /** Vectors divided by the lower Cholesky factor of the covariance. */
  private final class Whitened {
    private final double[] off;
    private final double[] grown;
    private final double[] after;
    private final double[] scale;

    Whitened(double[][] factor, double[] off) {
      this.off = divided(factor, off);
      this.grown = divided(factor, GrowthForetold.this.grown);
      double[] later = GrowthForetold.this.grown.clone();
      for (int i = 0; i < known; i++) {
        later[i] = 0;
      }
      this.after = divided(factor, later);
      this.scale = new double[off.length];
      for (int i = 0; i < off.length; i++) {
        scale[i] = factor[i][i];
      }
    }

    /** Returns what is missing of the growth after, times its weight. */
    double missing() {
      double sum = 0;
      for (int i = known; i < off.length; i++) {
        sum += after[i] * off[i];
      }
      return sum;
    }

    double weight() {
      double sum = 0;
      for (int i = known; i < off.length; i++) {
        sum += after[i] * after[i];
      }
      return sum;
    }
  }

  private Whitened whitened(Noise noise, double[][] of, double[] off) {
    int n = points.size();
    double daily = noise.weather() * rate;
    double[][] factor = new double[n][n];
    for (int i = 0; i < n; i++) {
      double own = Math.hypot(noise.evening(), points.get(i).standardError());
      for (int j = 0; j <= i; j++) {
        double sum =
            LEVEL_SD * LEVEL_SD
                + RATE_SD * RATE_SD * grown[i] * grown[j]
                + daily * daily * of[i][j]
                + (i == j ? own * own : 0);
        for (int k = 0; k < j; k++) {
          sum -= factor[i][k] * factor[j][k];
        }
        factor[i][j] = i == j ? Math.sqrt(sum) : sum / factor[j][j];
      }
    }
    return new Whitened(factor, off);
  }

  private static double[] divided(double[][] factor, double[] vector) {
    double[] result = new double[vector.length];
    for (int i = 0; i < vector.length; i++) {
      double sum = vector[i];
      for (int k = 0; k < i; k++) {
        sum -= factor[i][k] * result[k];
      }
      result[i] = sum / factor[i][i];
    }
    return result;
  }
}
