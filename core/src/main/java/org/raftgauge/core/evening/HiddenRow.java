// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;

/**
 * A row that the worklist would have, had nobody marked it seen, done or put off.
 *
 * @param item its name
 * @param until the first day on which it may show again; for good where absent
 */
public record HiddenRow(String item, Optional<LocalDate> until) {
  /** So many days are named one by one; a working value. */
  private static final int MOST_DAYS = 3;

  /** Compares the worklist with what it would be without {@code seen.csv}. */
  static List<HiddenRow> of(List<Task> all, List<Task> shown, SeenItems seen) {
    Map<String, Set<SiteId>> left = new HashMap<>();
    for (Task task : shown) {
      left.computeIfAbsent(Item.stem(task.item()), stem -> new HashSet<>())
          .addAll(task.where().sites());
    }
    List<HiddenRow> hidden = new ArrayList<>();
    for (Task task : all) {
      String stem = Item.stem(task.item());
      List<SiteId> sites = new ArrayList<>(task.where().sites());
      if (!left.containsKey(stem)) {
        hidden.add(new HiddenRow(task.item(), seen.until(task.item())));
      } else if (Item.isOfSites(task.item())) {
        sites.removeAll(left.get(stem));
        if (!sites.isEmpty()) {
          String item = Item.ofSites(stem, sites);
          hidden.add(new HiddenRow(item, seen.until(item)));
        }
      }
    }
    return hidden;
  }

  /**
   * Words how many rows are hidden, and until when.
   *
   * @param rows the hidden rows
   * @param day words a day
   * @return a clause without a full stop, such as {@code 3 rows are hidden: 2 for good (seen or
   *     done), 1 until 2026-04-20}; empty where none is hidden
   */
  public static String words(List<HiddenRow> rows, Function<LocalDate, String> day) {
    if (rows.isEmpty()) {
      return "";
    }
    List<String> parts = new ArrayList<>();
    long good = rows.stream().filter(row -> row.until().isEmpty()).count();
    if (good > 0) {
      parts.add(good + " for good (seen or done)");
    }
    Map<LocalDate, Long> days =
        rows.stream()
            .flatMap(row -> row.until().stream())
            .collect(Collectors.groupingBy(d -> d, TreeMap::new, Collectors.counting()));
    if (days.size() <= MOST_DAYS) {
      days.forEach((until, n) -> parts.add(n + " put off until " + day.apply(until)));
    } else {
      TreeSet<LocalDate> sorted = new TreeSet<>(days.keySet());
      parts.add(
          (rows.size() - good)
              + " put off, the first until "
              + day.apply(sorted.first())
              + ", the last until "
              + day.apply(sorted.last()));
    }
    String count = rows.size() == 1 ? "1 row is hidden: " : rows.size() + " rows are hidden: ";
    return count + String.join(", ", parts);
  }
}
