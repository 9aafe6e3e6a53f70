// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.raftgauge.core.growth.Series;

/**
 * Invented cohorts with known true areas; two makers that share no growth code. Healthy plants
 * differ by 15-20 % for good, weather is common to all, each plant wanders a little, photos err by
 * 3 % and a site's photos all err alike by 2 %.
 */
final class SimulatedCohort {
  static final int DAYS = 32;

  final List<double[]> truth = new ArrayList<>();
  final List<Series> photos = new ArrayList<>();

  /** Makes a cohort of Richards curves, their parameters differing from plant to plant. */
  static SimulatedCohort richards(int plants, long seed) {
    Random random = new Random(seed);
    SimulatedCohort out = new SimulatedCohort();
    double season = 0.1 * random.nextGaussian();
    double[] weather = weather(random);
    for (int i = 0; i < plants; i++) {
      double a = 420 * Math.exp(season + 0.16 * random.nextGaussian());
      double k = 0.24 * Math.exp(0.3 * season + 0.05 * random.nextGaussian());
      double tm = 17.5 - 6 * season + 0.8 * random.nextGaussian();
      double[] area = new double[DAYS];
      double wander = 0;
      for (int day = 0; day < DAYS; day++) {
        wander += 0.008 * random.nextGaussian();
        double curve = a / Math.pow(1 + 1.4 * Math.exp(-k * (day - tm)), 1 / 1.4);
        area[day] = curve * Math.exp(wander + weather[day]);
      }
      out.add(area, random);
    }
    return out;
  }

  private static double[] weather(Random random) {
    double[] sum = new double[DAYS];
    for (int day = 1; day < DAYS; day++) {
      sum[day] = 0.95 * sum[day - 1] + 0.012 * random.nextGaussian();
    }
    return sum;
  }

  /**
   * Makes a cohort that grows day by day on the light it intercepts: leaf area index over a site of
   * 324 cm2, each plant with its own vigour, bright and dull days common to all, ageing.
   */
  static SimulatedCohort light(int plants, long seed) {
    Random random = new Random(seed);
    SimulatedCohort out = new SimulatedCohort();
    double season = 0.08 * random.nextGaussian();
    double[] sun = new double[DAYS];
    for (int day = 0; day < DAYS; day++) {
      sun[day] = Math.exp(season + 0.18 * random.nextGaussian());
    }
    for (int i = 0; i < plants; i++) {
      double vigour = Math.exp(0.06 * random.nextGaussian());
      double size = 9 * Math.exp(0.13 * random.nextGaussian());
      double[] area = new double[DAYS];
      for (int day = 0; day < DAYS; day++) {
        area[day] = size;
        double covered = 324 * (1 - Math.exp(-size / 324));
        double own = Math.exp(0.05 * random.nextGaussian());
        size += 0.235 * vigour * sun[day] * own * covered * (1 - Math.pow(day / 45.0, 2));
      }
      out.add(area, random);
    }
    return out;
  }

  private void add(double[] area, Random random) {
    double persistent = 0.02 * random.nextGaussian();
    double[] dat = new double[DAYS];
    double[] seen = new double[DAYS];
    double[] error = new double[DAYS];
    for (int day = 0; day < DAYS; day++) {
      dat[day] = day;
      seen[day] = area[day] * Math.exp(persistent + 0.03 * random.nextGaussian());
      error[day] = 0.03;
    }
    truth.add(area);
    photos.add(Series.of(dat, seen).withErrors(error));
  }
}
