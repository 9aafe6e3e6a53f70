// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;

/**
 * The farm's clock: a day runs from {@code startsAt} to the next, and is named by the date on which
 * it begins, so that a photo at 00:20 belongs to the evening before.
 *
 * @param zone the farm's time zone
 * @param startsAt local time at which a day begins
 */
public record FarmDay(ZoneId zone, LocalTime startsAt) {
  private static final double SECONDS_A_DAY = 86_400;
  private static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm[:ss[.SSS]]", Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  /**
   * Returns the evening that an instant belongs to.
   *
   * @param instant any
   * @return the date of the farm's day that holds it
   */
  public LocalDate evening(Instant instant) {
    LocalDate date = instant.atZone(zone).toLocalDate();
    return instant.isBefore(start(date)) ? date.minusDays(1) : date;
  }

  /**
   * Returns when a farm's day begins. Where summer time leaves that hour out it begins as much
   * later; where the hour comes twice it begins at the first.
   *
   * @param evening the day's date
   * @return its first instant
   */
  public Instant start(LocalDate evening) {
    return evening.atTime(startsAt).atZone(zone).toInstant();
  }

  /**
   * Returns calendar days from a date, with the local clock as a fraction of 24 hours: noon on the
   * third day after is 3.5, on days of 23 or 25 hours too.
   *
   * @param from the day counted as 0
   * @param instant any
   * @return days, below 0 before that day
   */
  public double daysAfter(LocalDate from, Instant instant) {
    return daysAfter(from, LocalDateTime.ofInstant(instant, zone));
  }

  /**
   * Returns calendar days from a date, as {@link #daysAfter(LocalDate, Instant)} does.
   *
   * @param from the day counted as 0
   * @param local a time on the farm's clock
   * @return days, below 0 before that day
   */
  public static double daysAfter(LocalDate from, LocalDateTime local) {
    return ChronoUnit.DAYS.between(from, local.toLocalDate())
        + local.toLocalTime().toNanoOfDay() / 1e9 / SECONDS_A_DAY;
  }

  /**
   * Puts a local time on the time line: in a gap of summer time as much later, in an overlap the
   * first.
   *
   * @param local date and time on the farm's clock
   * @return the same with its offset
   */
  public OffsetDateTime at(LocalDateTime local) {
    return local.atZone(zone).toOffsetDateTime();
  }

  /**
   * Says whether a local time never was on the farm's clock, because that went forward over it.
   *
   * @param text as read by {@link #parseTime}
   * @return false also where an offset is written, or it is not a time
   */
  public boolean isLeftOut(String text) {
    try {
      LocalDateTime local = LocalDateTime.parse(iso(text), LOCAL);
      return zone.getRules().getValidOffsets(local).isEmpty();
    } catch (DateTimeParseException noLocalTime) {
      return false;
    }
  }

  private static String iso(String text) {
    return text.strip().replaceFirst("^(\\d{4}-\\d{2}-\\d{2}) +(?=\\d)", "$1T");
  }

  /**
   * Reads a date and time: {@code 2026-04-16T18:00}, with a space for the T, with seconds, with an
   * offset such as {@code +01:00} or {@code Z}. Without an offset it is on the farm's clock.
   *
   * @param text what is written
   * @return the time, or nothing if it is not one
   */
  public Optional<OffsetDateTime> parseTime(String text) {
    String iso = iso(text);
    try {
      return Optional.of(
          iso.matches(".*T.*([+-]\\d{2}:\\d{2}|Z)")
              ? OffsetDateTime.parse(iso)
              : at(LocalDateTime.parse(iso, LOCAL)));
    } catch (DateTimeParseException notATime) {
      return Optional.empty();
    }
  }
}
