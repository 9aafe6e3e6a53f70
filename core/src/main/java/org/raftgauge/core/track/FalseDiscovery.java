// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Corrects the p-values of an evening's plants for their number. */
final class FalseDiscovery {

  private FalseDiscovery() {}

  /**
   * Returns q-values of the plants' innovations: {@code q(i) = min over j >= i of p(j) n / j},
   * sorted by p (Benjamini and Hochberg 1995, J. R. Statist. Soc. B 57, 289-300).
   */
  static Map<Follow, Double> qValues(List<Follow> plants) {
    List<Follow> sorted =
        plants.stream()
            .filter(p -> p.takenTonight() && p.track().sights() > 1)
            .sorted(Comparator.comparingDouble(p -> -Math.abs(p.track().innovation())))
            .toList();
    Map<Follow, Double> values = new HashMap<>();
    double smallest = 1;
    for (int i = sorted.size(); i >= 1; i--) {
      double p = Normal.twoSided(sorted.get(i - 1).track().innovation());
      smallest = Math.min(smallest, p * sorted.size() / i);
      values.put(sorted.get(i - 1), smallest);
    }
    return values;
  }
}
