// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads times as cameras and manifests write them. */
final class TimeTexts {
  // Exif 2.32 writes 2026:03:01 18:20:05; some cameras write other marks, or fractions behind.
  private static final Pattern EXIF =
      Pattern.compile(
          "(\\d{4})[:/-](\\d{2})[:/-](\\d{2})[ T](\\d{2}):(\\d{2}):(\\d{2})(?:\\.\\d+)?");

  private static final DateTimeFormatter ISO =
      new DateTimeFormatterBuilder()
          .parseCaseInsensitive()
          .appendPattern("uuuu-MM-dd['T'HH:mm[:ss")
          .appendFraction(ChronoField.NANO_OF_SECOND, 0, 9, true)
          .appendPattern("][XXX][XX][X]]")
          .toFormatter(Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private TimeTexts() {}

  /** Tells whether a camera wrote a time at all: an unknown one is blanks or zeros by Exif 2.32. */
  static boolean isFilledIn(String text) {
    return text.chars().anyMatch(c -> c >= '1' && c <= '9');
  }

  /** Reads DateTimeOriginal. */
  static Optional<LocalDateTime> parseExif(String text) {
    Matcher matcher = EXIF.matcher(text);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    int[] parts = new int[6];
    for (int i = 0; i < parts.length; i++) {
      parts[i] = Integer.parseInt(matcher.group(i + 1));
    }
    try {
      return Optional.of(
          LocalDateTime.of(parts[0], parts[1], parts[2], parts[3], parts[4], parts[5]));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Reads OffsetTimeOriginal: {@code +01:00}, {@code Z}. */
  static Optional<ZoneOffset> parseOffset(String text) {
    try {
      return Optional.of(ZoneOffset.of(text));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /**
   * Reads an ISO 8601 time, a blank allowed for the T.
   *
   * @return an {@link OffsetDateTime}, a {@link LocalDateTime} or a {@link LocalDate}
   */
  static Optional<TemporalAccessor> parseIso(String text) {
    try {
      return Optional.of(
          ISO.parseBest(
              text.strip().replaceFirst(" ", "T"),
              OffsetDateTime::from,
              LocalDateTime::from,
              LocalDate::from));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
