// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
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
  private final Set<String> items = new HashSet<>();
  private final Set<String> stems = new HashSet<>();

  SeenItems(List<SeenItem> seen, LocalDate tomorrow) {
    for (SeenItem row : seen) {
      boolean hides = row.until().map(tomorrow::isBefore).orElse(true);
      if (hides) {
        add(row);
      }
    }
  }

  private void add(SeenItem row) {
    items.add(row.item());
    String stem = stem(row.item());
    String last = row.item().substring(Math.min(row.item().length(), stem.length() + 1));
    if (last.matches("\\d{4}-\\d{2}-\\d{2}")) {
      row.until().ifPresent(until -> stems.add(stem));
    } else {
      for (String site : last.split("\\+", -1)) {
        items.add(stem + "/" + site);
      }
    }
  }

  private static String stem(String item) {
    int slash = item.lastIndexOf('/');
    return slash < 0 ? item : item.substring(0, slash);
  }

  /** Says whether a row about a raft, pond or station is hidden. */
  boolean hides(String item) {
    return items.contains(item);
  }

  /** Says whether a row that is anew each evening is hidden. */
  boolean hidesEvening(String item) {
    return hides(item) || stems.contains(stem(item));
  }

  /** Says whether a site is hidden. */
  boolean hidesSite(String raftItem, SiteId site) {
    return items.contains(raftItem + "/" + site);
  }
}
