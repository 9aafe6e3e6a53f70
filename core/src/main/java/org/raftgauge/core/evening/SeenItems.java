// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.SeenItem;
import org.raftgauge.core.book.SiteId;

/**
 * The worklist rows that someone has seen, done or put off.
 *
 * <p>A row with {@code until} hides what it names before that day, one without hides it for good.
 * Of rows about sites it hides the sites, so that a site that joins them shows alone. Rows that are
 * anew each evening are hidden on other evenings by a row with {@code until}.
 */
final class SeenItems {
  /** Nothing was seen. */
  static final SeenItems NONE = new SeenItems(List.of(), LocalDate.EPOCH);

  private final Map<String, Optional<LocalDate>> items = new HashMap<>();
  private final Map<String, Optional<LocalDate>> stems = new HashMap<>();

  SeenItems(List<SeenItem> seen, LocalDate tomorrow) {
    for (SeenItem row : seen) {
      boolean hides = row.until().map(tomorrow::isBefore).orElse(true);
      if (hides) {
        add(row);
      }
    }
  }

  private void add(SeenItem row) {
    put(items, row.item(), row.until());
    String stem = Item.stem(row.item());
    if (!Item.isOfSites(row.item())) {
      row.until().ifPresent(until -> put(stems, stem, row.until()));
    } else {
      for (String site : Item.last(row.item()).split("\\+", -1)) {
        put(items, stem + "/" + site, row.until());
      }
    }
  }

  /** Of two rows the one that hides longer counts. */
  private static void put(
      Map<String, Optional<LocalDate>> rows, String item, Optional<LocalDate> until) {
    rows.merge(item, until, (a, b) -> a.isEmpty() || b.isEmpty() ? Optional.empty() : later(a, b));
  }

  private static Optional<LocalDate> later(Optional<LocalDate> a, Optional<LocalDate> b) {
    return a.get().isBefore(b.get()) ? b : a;
  }

  /** Says whether nothing is hidden. */
  boolean isEmpty() {
    return items.isEmpty() && stems.isEmpty();
  }

  /** Says whether a row about a raft, pond or station is hidden. */
  boolean hides(String item) {
    return items.containsKey(item);
  }

  /** Says whether a row that is anew each evening is hidden. */
  boolean hidesEvening(String item) {
    return hides(item) || stems.containsKey(Item.stem(item));
  }

  /** Says whether a site is hidden. */
  boolean hidesSite(String raftItem, SiteId site) {
    return items.containsKey(raftItem + "/" + site);
  }

  /** Returns the first day on which a hidden row, or the first of its sites, may show again. */
  Optional<LocalDate> until(String item) {
    if (hides(item)) {
      return items.get(item);
    }
    if (!Item.isOfSites(item)) {
      return stems.getOrDefault(Item.stem(item), Optional.empty());
    }
    return Arrays.stream(Item.last(item).split("\\+", -1))
        .flatMap(
            site -> items.getOrDefault(Item.stem(item) + "/" + site, Optional.empty()).stream())
        .min(LocalDate::compareTo);
  }
}
