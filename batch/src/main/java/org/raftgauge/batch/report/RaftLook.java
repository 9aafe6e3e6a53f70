// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.report.RaftRows;
import org.raftgauge.core.report.SiteRow;

/**
 * A raft on an evening.
 *
 * @param evening the farm's day
 * @param rows what its photo said
 */
record RaftLook(LocalDate evening, RaftRows rows) {

  /** Returns the median projected area of its plants with leaf, cm2. */
  OptionalDouble medianCm2() {
    return median(
        rows.sites().stream()
            .filter(row -> row.site().held().isEmpty())
            .flatMap(row -> row.site().projectedAreaCm2().stream().boxed())
            .filter(area -> area > 0)
            .sorted()
            .toList());
  }

  /** Returns the youngest age on it, days. */
  OptionalDouble ageDays() {
    return rows.sites().stream()
        .map(SiteRow::plant)
        .flatMap(plant -> plant.stream())
        .flatMap(plant -> plant.dat().stream().boxed())
        .mapToDouble(dat -> dat)
        .min();
  }

  /** Says whether that age counts from sowing: nothing on it is transplanted. */
  boolean isSown() {
    return rows.sites().stream()
        .flatMap(row -> row.plant().stream())
        .allMatch(plant -> plant.planting().transplantedOn().isEmpty());
  }

  /** Returns the place of the raft in its photo, from 0. */
  int place() {
    for (int place = 0; place < rows.photo().rafts().size(); place++) {
      boolean same =
          rows.photo().rafts().get(place).raft().equals(rows.raft().raft())
              && rows.photo().rafts().get(place).slot().equals(rows.raft().slot());
      if (same) {
        return place;
      }
    }
    return 0;
  }

  /** Returns the median of ascending values. */
  static OptionalDouble median(List<Double> ascending) {
    int n = ascending.size();
    return n == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of((ascending.get((n - 1) / 2) + ascending.get(n / 2)) / 2);
  }
}
