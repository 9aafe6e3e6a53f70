// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How the farm's photo files are named, such as {@code {date}_{raft}}.
 *
 * <p>{@code {date}} stands for 2026-04-16 or 20260416, {@code {time}} for 1800, 180000, 18-00 or
 * 18-00-00, {@code {raft}}, {@code {station}} and {@code {slot}} for names; {@code {any}} for
 * anything. The rest stands for itself, the file's ending is left out, and capitals do not matter.
 *
 * @param text the pattern as written
 */
public record PhotoNamePattern(String text) {
  private static final Pattern FIELD = Pattern.compile("\\{([^{}]*)\\}");
  private static final Pattern ENDING = Pattern.compile("\\.[A-Za-z0-9]{1,5}$");
  static final List<String> FIELDS = List.of("date", "time", "raft", "station", "slot", "any");

  /** Checks that each field is known and, but for any, stands once. */
  public PhotoNamePattern {
    List<String> fields = new ArrayList<>(fieldsOf(text));
    fields.removeIf("any"::equals);
    if (!FIELDS.containsAll(fields) || fields.size() != fields.stream().distinct().count()) {
      throw new IllegalArgumentException(
          "photo name must hold fields of " + FIELDS + " once each, got \"" + text + "\"");
    }
  }

  static List<String> fieldsOf(String text) {
    return FIELD.matcher(text).results().map(field -> field.group(1)).toList();
  }

  /**
   * Reads a file name.
   *
   * @param fileName with or without folders before it
   * @return what it says; nothing at all where it is not named by this pattern. A day or time that
   *     no calendar or clock has says nothing of when, the rest of the name still what it says
   */
  public PhotoName parse(String fileName) {
    String name = fileName.substring(fileName.replace('\\', '/').lastIndexOf('/') + 1);
    Matcher matcher = regex().matcher(ENDING.matcher(name).replaceFirst(""));
    if (!matcher.matches()) {
      return PhotoName.silent();
    }
    Optional<String> day = group(matcher, "date");
    Optional<String> hour = group(matcher, "time");
    Optional<LocalDate> date = day.flatMap(PhotoNamePattern::date);
    Optional<LocalTime> time = hour.flatMap(PhotoNamePattern::time);
    return new PhotoName(
        date,
        time,
        group(matcher, "raft"),
        group(matcher, "station"),
        group(matcher, "slot"),
        date.isPresent() == day.isPresent() ? hour.filter(h -> time.isEmpty()) : day);
  }

  private Pattern regex() {
    StringBuilder regex = new StringBuilder();
    Matcher field = FIELD.matcher(text);
    int end = 0;
    while (field.find()) {
      regex.append(Pattern.quote(text.substring(end, field.start()))).append(group(field.group(1)));
      end = field.end();
    }
    regex.append(Pattern.quote(text.substring(end)));
    return Pattern.compile(regex.toString(), Pattern.CASE_INSENSITIVE);
  }

  private static String group(String field) {
    return switch (field) {
      case "date" -> "(?<date>\\d{4}-\\d{2}-\\d{2}|\\d{8})";
      case "time" -> "(?<time>\\d{2}-\\d{2}(?:-\\d{2})?|\\d{6}|\\d{4})";
      case "any" -> ".*";
      default -> "(?<" + field + ">.+?)";
    };
  }

  private Optional<String> group(Matcher matcher, String field) {
    return fieldsOf(text).contains(field) ? Optional.of(matcher.group(field)) : Optional.empty();
  }

  private static Optional<LocalDate> date(String text) {
    String digits = text.replace("-", "");
    try {
      return Optional.of(
          LocalDate.of(number(digits, 0, 4), number(digits, 4, 6), number(digits, 6, 8)));
    } catch (DateTimeException noSuchDay) {
      return Optional.empty();
    }
  }

  private static Optional<LocalTime> time(String text) {
    String digits = text.replace("-", "");
    int second = digits.length() == 6 ? number(digits, 4, 6) : 0;
    try {
      return Optional.of(LocalTime.of(number(digits, 0, 2), number(digits, 2, 4), second));
    } catch (DateTimeException noSuchTime) {
      return Optional.empty();
    }
  }

  private static int number(String digits, int from, int to) {
    return Integer.parseInt(digits.substring(from, to));
  }
}
