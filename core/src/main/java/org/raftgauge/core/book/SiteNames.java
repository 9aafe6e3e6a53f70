// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads and writes lists of sites: {@code A1;B2}, and rectangles such as {@code A1-C3}. */
public final class SiteNames {
  private static final int MOST_SITES = 100_000;

  private SiteNames() {}

  /**
   * Reads a list of sites and rectangles, separated by semicolons, commas or spaces.
   *
   * @param text such as {@code A1-C3;D1}; blank for none
   * @return the sites in the order written, each rectangle row by row
   * @throws IllegalArgumentException if a part is neither a site nor a rectangle
   */
  public static Set<SiteId> parse(String text) {
    Set<SiteId> sites = new LinkedHashSet<>();
    for (String part : text.strip().replaceAll("\\s*-\\s*", "-").split("[;,\\s]+", -1)) {
      if (!part.isEmpty()) {
        add(part, sites);
      }
    }
    return sites;
  }

  private static void add(String part, Set<SiteId> sites) {
    int dash = part.indexOf('-');
    SiteId first = SiteId.parse(dash < 0 ? part : part.substring(0, dash));
    SiteId last = dash < 0 ? first : SiteId.parse(part.substring(dash + 1));
    long size = (1L + last.row() - first.row()) * (1L + last.column() - first.column());
    if (last.row() < first.row() || last.column() < first.column() || size > MOST_SITES) {
      throw new IllegalArgumentException(
          "a range must run from its corner nearest A1 to the far one, as in A1-C3, got \""
              + part
              + "\"");
    }
    for (int row = first.row(); row <= last.row(); row++) {
      for (int column = first.column(); column <= last.column(); column++) {
        sites.add(new SiteId(row, column));
      }
    }
  }

  /**
   * Writes sites as {@link #parse} reads them.
   *
   * @param sites any
   * @return their names in order, separated by semicolons
   */
  public static String toText(Set<SiteId> sites) {
    return sites.stream().sorted().map(SiteId::toString).collect(Collectors.joining(";"));
  }
}
