// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Units;

/**
 * Words numbers and days for the page.
 *
 * @param units of the book
 */
record Texts(Units units) {
  private static final double CM2_IN_SQUARE_INCH = 6.4516;
  private static final double GRAMS_IN_POUND = 453.59237;
  private static final DateTimeFormatter LONG =
      DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  /** Returns the place of a raft on the page: letters, digits, {@code -}, others as hex. */
  static String anchor(String raft) {
    StringBuilder anchor = new StringBuilder("raft-");
    for (int i = 0; i < raft.length(); i++) {
      char c = raft.charAt(i);
      boolean plain = (c < 128 && Character.isLetterOrDigit(c)) || c == '-';
      anchor.append(plain ? String.valueOf(c) : "_" + Integer.toHexString(c));
    }
    return anchor.toString();
  }

  static String day(LocalDate day) {
    return SHORT.format(day);
  }

  static String longDay(LocalDate day) {
    return LONG.format(day);
  }

  static String age(OptionalDouble days) {
    return days.isPresent() ? String.format(Locale.ROOT, "%.1f", days.getAsDouble()) : "";
  }

  static String percent(double share) {
    return Math.round(100 * share) + " %";
  }

  static String whole(double number) {
    return String.valueOf(Math.round(number));
  }

  /** Words a weight in the book's unit; three digits are enough. */
  String weight(double grams) {
    return weightNumber(grams) + " " + weightUnit();
  }

  /** Words an interval of weights. */
  String weights(double loG, double hiG) {
    return weightNumber(loG) + " to " + weightNumber(hiG) + " " + weightUnit();
  }

  private String weightUnit() {
    return units == Units.METRIC ? "kg" : "lb";
  }

  private String weightNumber(double grams) {
    double value = grams / (units == Units.METRIC ? 1000 : GRAMS_IN_POUND);
    return String.format(Locale.ROOT, value < 10 ? "%.2f" : value < 100 ? "%.1f" : "%.0f", value);
  }

  /** Words a number of things. */
  static String count(int n, String one) {
    return n + " " + one + (n == 1 ? "" : "s");
  }

  /** Returns the unit of areas. */
  String areaUnit() {
    return units == Units.METRIC ? "cm2" : "sq in";
  }

  /** Returns an area in the book's unit. */
  double inUnit(double cm2) {
    return units == Units.METRIC ? cm2 : cm2 / CM2_IN_SQUARE_INCH;
  }

  /** Words an area without its unit; three digits are enough. */
  String number(double cm2) {
    double value = inUnit(cm2);
    return String.format(Locale.ROOT, value < 100 ? "%.1f" : "%.0f", value);
  }

  String area(OptionalDouble cm2) {
    return cm2.isPresent() ? number(cm2.getAsDouble()) + " " + areaUnit() : "";
  }
}
