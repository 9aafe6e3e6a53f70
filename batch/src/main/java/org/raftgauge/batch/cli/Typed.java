// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import org.raftgauge.core.problem.PlainLine;
import picocli.CommandLine.TypeConversionException;

/** Reads what was typed behind options; what cannot be read is said with what is allowed. */
final class Typed {

  private Typed() {}

  static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw wrong(text, "a date; write year-month-day, as in 2026-04-16");
    }
  }

  static Path path(String text) {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw wrong(text, "a path; write it without characters that no file name may hold");
    }
  }

  static ZoneId zone(String text) {
    try {
      return ZoneId.of(text);
    } catch (DateTimeException e) {
      throw wrong(text, "a time zone; write one of the tz database, as in Europe/Lisbon");
    }
  }

  static int whole(String text) {
    try {
      return Integer.parseInt(text);
    } catch (NumberFormatException e) {
      throw wrong(text, "a whole number; write digits, as in 4");
    }
  }

  static long longWhole(String text) {
    try {
      return Long.parseLong(text);
    } catch (NumberFormatException e) {
      throw wrong(text, "a whole number; write digits, as in 4");
    }
  }

  static double number(String text) {
    try {
      double number = Double.parseDouble(text);
      if (Double.isFinite(number)) {
        return number;
      }
    } catch (NumberFormatException e) {
      // Said below, as for one that is not finite.
    }
    throw wrong(text, "a number; write digits and a dot, as in 12.5");
  }

  private static TypeConversionException wrong(String text, String due) {
    return new TypeConversionException("\"" + PlainLine.of(text) + "\" is not " + due);
  }
}
