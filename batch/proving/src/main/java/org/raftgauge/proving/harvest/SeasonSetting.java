// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

/**
 * How harvest seasons are simulated. All numbers are invented, in the range of leafy crops on
 * rafts.
 *
 * @param closes whether the canopy closes over the pitch before harvest
 * @param rafts of tonight's cohort, 18 plants each
 * @param pastCycles that the history holds
 * @param picks plants weighed for the grader
 * @param plantSd spread of plants among themselves, of ln area, for good
 * @param wanderSd of a plant's ln area in a day
 * @param persistentSd of an area's error that a site keeps
 * @param freshSd of an area's error that changes from photo to photo
 * @param weatherSd of one day's growth, as a share of it; half of it, and more, stays the next day
 * @param weightSd of single plants' ln weight about the line
 * @param lostPerDay share of plants that die a day
 */
public record SeasonSetting(
    boolean closes,
    int rafts,
    int pastCycles,
    int picks,
    double plantSd,
    double wanderSd,
    double persistentSd,
    double freshSd,
    double weatherSd,
    double weightSd,
    double lostPerDay) {
  /** Day on which the totals are scored. */
  static final int HARVEST_DAT = 32;

  /** Days ahead. */
  static final int LEAD = 5;

  /** Carry-over of weather to the next day. */
  static final double WEATHER_STAYS = 0.6;

  /** Area that a site shows at most where the canopy closes, cm2: the pitch of 180 mm. */
  static final double PITCH_CM2 = 324;

  /**
   * Returns the setting of the page.
   *
   * @param closes whether the canopy closes
   */
  public static SeasonSetting usual(boolean closes) {
    return new SeasonSetting(closes, 6, 3, 30, 0.20, 0.01, 0.02, 0.03, 0.15, 0.10, 0.0005);
  }

  /**
   * Returns the setting of seasons whose photos are rendered: fewer rafts, for rendering takes
   * time.
   *
   * @param closes whether the canopy closes
   */
  static SeasonSetting photographed(boolean closes) {
    SeasonSetting s = usual(closes);
    return new SeasonSetting(
        closes,
        3,
        s.pastCycles,
        s.picks,
        s.plantSd,
        s.wanderSd,
        s.persistentSd,
        s.freshSd,
        s.weatherSd,
        s.weightSd,
        s.lostPerDay);
  }
}
