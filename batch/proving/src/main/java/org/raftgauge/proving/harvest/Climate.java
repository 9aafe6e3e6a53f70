// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.util.Random;

/** The growth that all plants of a cycle share: its curve's parameters and daily weather. */
final class Climate {
  private static final int LAST = SeasonSetting.HARVEST_DAT + 30;

  private final double[] lnArea = new double[LAST + 1];
  private final double[] usualGrowth = new double[LAST + 1];
  private final double[] weather = new double[LAST + 1];

  /** The farm's usual curve: of one of two shapes, by its growth at harvest. */
  record Usual(boolean gompertz, double rgrAtHarvest, double harvestCm2) {
    /** Draws: 5 to 7 % a day at harvest, 380 to 520 cm2. */
    static Usual draw(Random random) {
      return new Usual(
          random.nextBoolean(), 0.05 + 0.02 * random.nextDouble(), 380 + 140 * random.nextDouble());
    }
  }

  /** Grows a cycle: size 10 %, pace 5 %, start one day off the usual, and weather. */
  Climate(Usual usual, SeasonSetting setting, Random random) {
    double size = 0.10 * random.nextGaussian();
    double pace = 0.05 * random.nextGaussian();
    double start = random.nextGaussian();
    lnArea[0] = curve(usual, 0, pace, start) + size;
    for (int d = 1; d <= LAST; d++) {
      double stays = SeasonSetting.WEATHER_STAYS;
      weather[d] =
          stays * weather[d - 1]
              + Math.sqrt(1 - stays * stays) * setting.weatherSd() * random.nextGaussian();
      double growth = curve(usual, d, pace, start) - curve(usual, d - 1, pace, start);
      usualGrowth[d] = growth;
      lnArea[d] = lnArea[d - 1] + growth * (1 + weather[d]);
    }
  }

  private static double curve(Usual usual, double dat, double pace, double start) {
    double off = dat - start - SeasonSetting.HARVEST_DAT;
    double ln = Math.log(usual.harvestCm2());
    if (usual.gompertz()) {
      double k = 0.06 * Math.exp(pace);
      double at = usual.rgrAtHarvest() / 0.06;
      return ln + at - at * Math.exp(-k * off);
    }
    double k = 0.25 * Math.exp(pace);
    double odds = 0.25 / usual.rgrAtHarvest() - 1;
    return ln + Math.log(1 + 1 / odds) - Math.log(1 + Math.exp(-k * off) / odds);
  }

  /** Returns the growth to come of one who knows all but the weather to come. */
  double expectedGrowth(int from, int to) {
    double sum = 0;
    for (int d = from + 1; d <= to; d++) {
      double left = Math.pow(SeasonSetting.WEATHER_STAYS, d - from) * weather[from];
      sum += usualGrowth[d] * (1 + left);
    }
    return sum;
  }

  double lnArea(int dat) {
    return lnArea[dat];
  }
}
