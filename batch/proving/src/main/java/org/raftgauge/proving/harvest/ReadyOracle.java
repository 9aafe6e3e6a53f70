// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Tells ready days as one would who knows the true areas of tonight, the cycle's curve, tonight's
 * weather and the true line of weights, but neither the weather to come nor what is a plant's own:
 * the least error that ready days can have.
 */
final class ReadyOracle {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  private ReadyOracle() {}

  /**
   * Returns the day from tonight on which as many heads as the crop wants are expected over the
   * minimum.
   *
   * @param season the season
   * @param plants of one raft
   * @param horizon the day that is told where none comes before it
   */
  static int day(Season season, List<Plant> plants, int horizon) {
    int evening = SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD;
    List<Plant> standing = plants.stream().filter(p -> p.standsOn(evening)).toList();
    // A count is taken for a smooth number: as many whole heads as may be light, and half a one.
    double allowed = Math.floor(0.1 * standing.size() + 1e-9) + 0.5;
    int day = 0;
    while (day < horizon && under(season, standing, evening, day) > allowed) {
      day++;
    }
    return day;
  }

  private static double under(Season season, List<Plant> plants, int evening, int day) {
    double growth = season.climate.expectedGrowth(evening, evening + day);
    double wander = season.exponent * season.setting.wanderSd() * Math.sqrt(day);
    double sd = Math.hypot(season.setting.weightSd(), wander);
    double sum = 0;
    for (Plant plant : plants) {
      double ln = season.lnWeightOfLine(plant.lnArea[evening] + growth);
      sum += NORMAL.cumulativeProbability((Math.log(season.minimumG) - ln) / sd);
    }
    return sum;
  }
}
