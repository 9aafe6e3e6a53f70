// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;

/** Reads dates written as ISO 8601 year-month-day. */
public final class DateText {
  private static final int FIRST_YEAR = 1990;
  private static final int LAST_YEAR = 2200;

  private DateText() {}

  /**
   * Reads a date from 1990 to 2200; other years are slips of a keyboard or of a clock.
   *
   * @param place where it is, for the problem
   * @param text what is written there
   * @param findings takes the problem if it is not such a date
   * @return the date, or nothing if it is not one
   */
  public static Optional<LocalDate> read(String place, String text, Findings findings) {
    Optional<LocalDate> date = parse(text);
    if (date.isEmpty()) {
      findings.error(
          place, "\"" + text + "\" is not a date", "write year-month-day, as in 2026-04-06");
      return date;
    }
    int year = date.get().getYear();
    if (year < FIRST_YEAR || year > LAST_YEAR) {
      findings.error(
          place, "\"" + text + "\" is out of range", "write a date from 1990-01-01 to 2200-12-31");
      return Optional.empty();
    }
    return date;
  }

  private static Optional<LocalDate> parse(String text) {
    if (!text.matches("\\d{4}-\\d{2}-\\d{2}")) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException noSuchDay) {
      return Optional.empty();
    }
  }
}
