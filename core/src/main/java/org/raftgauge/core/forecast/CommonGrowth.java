// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.cohort.Innovation;
import org.raftgauge.core.cohort.PlantCurve;

/**
 * How far the plants of a cohort depart from their curves together in a day: weather, and a curve
 * that does not quite fit.
 *
 * <p>Of each evening's innovations (photo minus what was foreseen) the mean over plants is common;
 * its square, less what the plants' own errors leave in a mean, divided by the days since the
 * evening before, estimates the variance a day. It is pooled with the rule's value, which counts
 * for five evenings: a working value.
 */
final class CommonGrowth {
  private static final double EVENINGS_OF_RULE = 5;
  private static final int FEWEST_PLANTS = 5;

  private static final class Evening {
    private double sum;
    private double squares;
    private int n;
  }

  private CommonGrowth() {}

  /**
   * Estimates.
   *
   * @param plants curves of the cohort's plants
   * @param ruleSd of one day, before the photos tell
   * @return standard deviation of one day, of ln area
   */
  static double sdPerDay(List<PlantCurve> plants, double ruleSd) {
    Map<Long, Evening> evenings = new TreeMap<>();
    for (PlantCurve plant : plants) {
      List<Innovation> photos = plant.innovations();
      for (int i = 1; i < photos.size(); i++) {
        Innovation photo = photos.get(i);
        Evening evening =
            evenings.computeIfAbsent((long) Math.floor(photo.dat()), d -> new Evening());
        double off = photo.lnArea() - photo.expected();
        evening.sum += off;
        evening.squares += off * off;
        evening.n++;
      }
    }
    double sum = EVENINGS_OF_RULE * ruleSd * ruleSd;
    double weight = EVENINGS_OF_RULE;
    long before = Long.MIN_VALUE;
    for (Map.Entry<Long, Evening> entry : evenings.entrySet()) {
      Evening e = entry.getValue();
      if (e.n >= FEWEST_PLANTS && before != Long.MIN_VALUE) {
        double mean = e.sum / e.n;
        double own = (e.squares - e.n * mean * mean) / (e.n - 1) / e.n;
        sum += (mean * mean - own) / (entry.getKey() - before);
        weight++;
      }
      before = entry.getKey();
    }
    return Math.sqrt(Math.max(0, sum / weight));
  }
}
