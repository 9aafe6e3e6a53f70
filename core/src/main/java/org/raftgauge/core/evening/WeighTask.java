// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.PlantSeries;

/**
 * Plants to weigh on a raft: a small, a middling and a large one by the leaf that shows.
 *
 * @param sites where they stand, the smallest first
 */
public record WeighTask(List<SiteId> sites) {
  /** How plants are weighed so that their weights can be compared. */
  private static final String HOW =
      "Weigh one at a time, all alike, and note how (state in weighings.csv): whole (with roots and"
          + " plug), drained (the same, once the water has run off) or trimmed (cut at the collar,"
          + " where the leaves leave the root, waste leaves off, as sold).";

  private static final int WITHIN_DAYS = 7;

  /** Copies the list. */
  public WeighTask {
    sites = List.copyOf(sites);
  }

  /** Chooses among a raft's plants, at least one, all with an area. */
  static WeighTask of(List<PlantSeries> plants) {
    List<PlantSeries> sorted =
        plants.stream()
            .sorted(
                Comparator.comparingDouble((PlantSeries p) -> p.last().areaCm2())
                    .thenComparing(PlantSeries::site))
            .toList();
    int n = sorted.size();
    return new WeighTask(
        List.of(0, n / 2, n - 1).stream()
            .distinct()
            .map(i -> sorted.get(i).last().measure().site())
            .toList());
  }

  /** Says which is which. */
  String words() {
    if (sites.size() < 3) {
      return "Weigh every one of them.";
    }
    List<String> said = new ArrayList<>();
    List<String> sizes = List.of("small", "of middle size", "large");
    for (int i = 0; i < 3; i++) {
      said.add(sites.get(i) + " is " + sizes.get(i));
    }
    return String.join(", ", said) + ", by the leaf that shows.";
  }

  /**
   * Says how to weigh, and where the raft is harvested by then, that it comes first.
   *
   * @param harvestBy the raft's harvest day, if any
   * @param evening tonight
   */
  public static String how(Optional<LocalDate> harvestBy, LocalDate evening) {
    boolean first = harvestBy.filter(day -> !day.isAfter(by(harvestBy, evening))).isPresent();
    return HOW + (first ? " Weigh them before the raft is harvested." : "");
  }

  /**
   * Returns the day by which to weigh: within a week, and before the plants are harvested.
   *
   * @param harvestBy the raft's harvest day, if any
   * @param evening tonight
   */
  public static LocalDate by(Optional<LocalDate> harvestBy, LocalDate evening) {
    LocalDate week = evening.plusDays(WITHIN_DAYS);
    LocalDate tomorrow = evening.plusDays(1);
    return harvestBy
        .filter(day -> day.isBefore(week))
        .map(day -> day.isBefore(tomorrow) ? tomorrow : day)
        .orElse(week);
  }
}
