// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.raftgauge.proving.accuracy.SiteKey;

/**
 * What one way to measure took and gave.
 *
 * @param secondsOfPhoto CPU seconds of each round, by photo
 * @param areaCm2 of each site, cm2
 */
record Lap(Map<String, List<Double>> secondsOfPhoto, Map<SiteKey, Double> areaCm2) {

  /** Returns the median over the rounds of a photo, s. */
  double seconds(String photo) {
    return quantile(secondsOfPhoto.get(photo).stream().mapToDouble(s -> s).toArray(), 0.5);
  }

  /** Returns the median over photos of the medians over rounds, s. */
  double seconds() {
    return quantile(secondsOfPhoto.keySet().stream().mapToDouble(this::seconds).toArray(), 0.5);
  }

  /**
   * Returns the median over photos of how far a photo's rounds spread, as a share of its median.
   */
  double spread() {
    return quantile(
        secondsOfPhoto.entrySet().stream()
            .mapToDouble(
                e -> {
                  double[] rounds = e.getValue().stream().mapToDouble(s -> s).toArray();
                  return (quantile(rounds, 0.75) - quantile(rounds, 0.25)) / seconds(e.getKey());
                })
            .toArray(),
        0.5);
  }

  static double quantile(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted.length == 0 ? 0 : sorted[(int) Math.round(share * (sorted.length - 1))];
  }

  static String milliseconds(double seconds) {
    return String.format(Locale.ROOT, "%.0f", 1000 * seconds);
  }
}
