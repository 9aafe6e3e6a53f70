// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds layouts by name and day, and words what is wrong with a site. */
final class Layouts {
  private Layouts() {}

  static Optional<Layout> inForce(
      Map<String, List<Layout>> layouts, String name, LocalDate evening) {
    return layouts.getOrDefault(name, List.of()).stream()
        .filter(layout -> layout.from().map(from -> !from.isAfter(evening)).orElse(true))
        .reduce((earlier, later) -> later);
  }

  /** Says whether a planting's layout has a site. */
  static boolean has(Map<String, List<Layout>> layouts, Planting planting, SiteId site) {
    return inForce(layouts, planting.layout(), planting.startsOn())
        .map(layout -> layout.grid().has(site))
        .orElse(false);
  }

  static String notOn(SiteId site, Layout layout) {
    return "\"" + site + "\" is not a site of layout " + layout.name();
  }

  static String span(Layout layout) {
    SiteGrid grid = layout.grid();
    return "its sites run from A1 to " + new SiteId(grid.rows() - 1, grid.columns() - 1);
  }
}
