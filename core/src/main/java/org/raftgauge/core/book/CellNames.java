// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.core.table.Cells;

/** Reads cells that hold names, sites and times. */
final class CellNames {
  private static final int FIRST_YEAR = 1990;
  private static final int LAST_YEAR = 2200;
  private static final int LONGEST_LINE = 64;

  private CellNames() {}

  /** Reads a name that must be there. */
  static String required(Cells cells, String column) {
    String name = cells.required(column);
    check(cells, column, name);
    return name;
  }

  /** Reads a name that may be left blank. */
  static String optional(Cells cells, String column) {
    String name = cells.text(column);
    check(cells, column, name);
    return name;
  }

  /** Adds an error where a text that is not blank is not a name. */
  static void check(Cells cells, String column, String name) {
    if (!name.isEmpty()) {
      Names.check(name, (found, remedy) -> cells.error(column, found, remedy));
    }
  }

  /** Reads a free text that must fit on a line. */
  static String line(Cells cells, String column) {
    String text = cells.text(column);
    if (text.chars().anyMatch(Character::isISOControl) || text.length() > LONGEST_LINE) {
      cells.error(
          column,
          "the text is not one line of at most " + LONGEST_LINE + " characters",
          "shorten it, and take line breaks and tabs out");
    }
    return text;
  }

  /** Reads sites; none where the cell is blank or wrong. */
  static Set<SiteId> sites(Cells cells, String column) {
    try {
      return SiteNames.parse(cells.text(column));
    } catch (IllegalArgumentException odd) {
      cells.error(
          column,
          "\"" + cells.text(column) + "\" does not name sites",
          "write sites as in A1;B2, or a range as in A1-C3");
      return Set.of();
    }
  }

  /** Reads one site that may be left blank. */
  static Optional<SiteId> site(Cells cells, String column) {
    String text = cells.text(column);
    try {
      return text.isEmpty() ? Optional.empty() : Optional.of(SiteId.parse(text));
    } catch (IllegalArgumentException odd) {
      cells.error(column, "\"" + text + "\" does not name a site", "write a site as in B12");
      return Optional.empty();
    }
  }

  /** Reads a time, or a date alone for the beginning of the farm's day, that must be there. */
  static Optional<OffsetDateTime> time(Cells cells, String column, FarmDay farmDay) {
    String text = cells.required(column);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (text.matches("\\d{4}-\\d{2}-\\d{2}")) {
      return cells.date(column).map(day -> farmDay.at(day.atTime(farmDay.startsAt())));
    }
    Optional<OffsetDateTime> time = farmDay.parseTime(text);
    if (time.isEmpty()) {
      cells.error(
          column, "\"" + text + "\" is not a time", "write date and time, as in 2026-04-06T18:00");
    } else if (time.get().getYear() < FIRST_YEAR || time.get().getYear() > LAST_YEAR) {
      cells.error(column, "\"" + text + "\" is out of range", "write a time from 1990 to 2200");
      return Optional.empty();
    }
    if (farmDay.isLeftOut(text)) {
      cells.warning(
          column,
          "\"" + text + "\" never was on the farm's clock, which went forward over it",
          "it is read as " + time.get().toLocalDateTime() + "; write what the clock showed");
    }
    return time;
  }
}
