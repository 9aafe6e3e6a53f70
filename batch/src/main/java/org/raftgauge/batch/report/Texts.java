// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.evening.RaftGrowth;

/**
 * Words numbers and days for the page.
 *
 * @param units of the book
 */
record Texts(Units units) {
  /** A day in a text, but one in brackets: that is to be copied into a file of the book. */
  private static final Pattern ISO =
      Pattern.compile("(?<!\\[)\\b\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])\\b");

  private static final DateTimeFormatter LONG =
      DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  /** Returns the place of a raft on the page: letters, digits, {@code -}, others as hex. */
  static String anchor(String raft) {
    return anchor("raft-", raft);
  }

  /** Returns the place of something on the page, written likewise. */
  static String anchor(String kind, String name) {
    StringBuilder anchor = new StringBuilder(kind);
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      boolean plain = (c < 128 && Character.isLetterOrDigit(c)) || c == '-';
      anchor.append(plain ? String.valueOf(c) : "_" + Integer.toHexString(c));
    }
    return anchor.toString();
  }

  static String day(LocalDate day) {
    return SHORT.format(day);
  }

  /** Words the days in a text as on the rest of the page. */
  static String days(String text) {
    return ISO.matcher(text).replaceAll(found -> day(LocalDate.parse(found.group())));
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
    return weightNumber(grams) + " " + units.weightUnit();
  }

  /** Words an interval of weights. */
  String weights(double loG, double hiG) {
    return weightNumber(loG) + " to " + weightNumber(hiG) + " " + units.weightUnit();
  }

  private String weightNumber(double grams) {
    double value = units.weight(grams);
    return String.format(Locale.ROOT, value < 10 ? "%.2f" : value < 100 ? "%.1f" : "%.0f", value);
  }

  /** Words a number of things. */
  static String count(int n, String one) {
    return n + " " + one + (n == 1 ? "" : "s");
  }

  /** Returns the unit of areas. */
  String areaUnit() {
    return units.areaUnit();
  }

  /** Words an area without its unit; three digits are enough. */
  String number(double cm2) {
    double value = units.area(cm2);
    return String.format(Locale.ROOT, value < 100 ? "%.1f" : "%.0f", value);
  }

  /** Words a growth plot: what its median plant did. */
  String growth(RaftGrowth raft) {
    TreeMap<Double, List<Double>> areas = new TreeMap<>();
    for (RaftGrowth.OfSite site : raft.sites()) {
      site.points()
          .forEach(p -> areas.computeIfAbsent(p.dat(), a -> new ArrayList<>()).add(p.areaCm2()));
    }
    double first = median(areas.firstEntry().getValue());
    double last = median(areas.lastEntry().getValue());
    return "Growth of raft "
        + raft.raft()
        + ", "
        + raft.crop()
        + ": its median plant at "
        + count(areas.size(), "age")
        + ", "
        + number(first)
        + " to "
        + number(last)
        + " "
        + areaUnit();
  }

  private static double median(List<Double> values) {
    return RaftLook.median(values.stream().sorted().toList()).orElseThrow();
  }

  String area(OptionalDouble cm2) {
    return cm2.isPresent() ? number(cm2.getAsDouble()) + " " + areaUnit() : "";
  }
}
