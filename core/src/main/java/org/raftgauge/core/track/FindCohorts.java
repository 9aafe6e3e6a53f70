// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.core.history.GroupCohorts;
import org.raftgauge.core.history.PlantSeries;

/** Gives plants their cohorts. */
final class FindCohorts {

  private FindCohorts() {}

  /** Returns the cohort of each plant, by plant. */
  static Map<String, Cohort> of(List<PlantSeries> series) {
    Map<String, Cohort> cohorts = new HashMap<>();
    for (List<PlantSeries> group : GroupCohorts.of(series)) {
      Cohort cohort = new Cohort();
      group.forEach(plant -> cohorts.put(plant.plant(), cohort));
    }
    return cohorts;
  }
}
