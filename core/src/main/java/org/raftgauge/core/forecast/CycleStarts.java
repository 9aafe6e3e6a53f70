// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.Planting;

/** Puts plants that were set out together into cycles. */
final class CycleStarts {
  /** Latest cycles of a crop that forecasts draw on. */
  static final int MOST = 5;

  private static final int COHORT_DAYS = 2;

  private CycleStarts() {}

  /**
   * Returns the first day of which photos are needed to forecast from an evening: that on which the
   * oldest plant that stands was set out, or the oldest of the cycles used.
   *
   * @param book as known by the evening
   * @param evening the farm's day
   */
  static LocalDate firstDay(CropBook book, LocalDate evening) {
    Map<String, List<LocalDate>> over = new HashMap<>();
    LocalDate first = evening;
    for (List<PlantLife> cohort : cohorts(book)) {
      LocalDate start = cohort.get(0).transplantedOn().orElseThrow();
      if (cohort.stream().anyMatch(CycleStarts::stands)) {
        first = start.isBefore(first) ? start : first;
      } else {
        over.computeIfAbsent(key(planting(cohort.get(0))), k -> new ArrayList<>()).add(start);
      }
    }
    for (List<LocalDate> starts : over.values()) {
      LocalDate start = starts.get(Math.max(0, starts.size() - MOST));
      first = start.isBefore(first) ? start : first;
    }
    return first;
  }

  /** Returns transplanted plants by crop, variety, layout and days of start, in that order. */
  static List<List<PlantLife>> cohorts(CropBook book) {
    TreeMap<String, TreeMap<LocalDate, List<PlantLife>>> starts = new TreeMap<>();
    for (PlantLife life : book.plants()) {
      life.transplantedOn()
          .ifPresent(
              day ->
                  starts
                      .computeIfAbsent(key(planting(life)), k -> new TreeMap<>())
                      .computeIfAbsent(day, d -> new ArrayList<>())
                      .add(life));
    }
    List<List<PlantLife>> cohorts = new ArrayList<>();
    starts.values().forEach(days -> cohorts.addAll(byStart(days)));
    return cohorts;
  }

  static boolean stands(PlantLife life) {
    return life.stays().stream().anyMatch(stay -> stay.to().isEmpty());
  }

  static Planting planting(PlantLife life) {
    return life.stays().get(life.stays().size() - 1).planting();
  }

  /** Puts days, in order, that are at most two apart from the first of them together. */
  static <T> List<List<T>> byStart(Map<LocalDate, List<T>> days) {
    List<List<T>> grouped = new ArrayList<>();
    LocalDate first = LocalDate.MIN;
    for (Map.Entry<LocalDate, List<T>> day : days.entrySet()) {
      if (day.getKey().minusDays(COHORT_DAYS).isAfter(first)) {
        first = day.getKey();
        grouped.add(new ArrayList<>());
      }
      grouped.get(grouped.size() - 1).addAll(day.getValue());
    }
    return grouped;
  }

  /** Returns what plants that may be compared have in common. */
  static String key(Planting planting) {
    return String.join("\n", planting.crop(), planting.variety(), planting.layout());
  }
}
