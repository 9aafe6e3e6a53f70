// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.table.NumberRange;

/** Reads {@code book.yaml}. */
final class SettingsReader {
  private static final int FORMAT = 1;

  private SettingsReader() {}

  /** Returns the format the book is written in, 1 where it does not say. */
  static boolean formatIsKnown(YamlMap map) {
    Optional<YamlValue> format = map.value("format");
    double number =
        format.map(f -> f.number(NumberRange.from(1, 1000)).orElse(FORMAT)).orElse(1.0 * FORMAT);
    if (number > FORMAT) {
      format
          .get()
          .error(
              "the book is written in format " + (int) number + ", newer than this program",
              "install a newer Raftgauge; this one reads format " + FORMAT);
    }
    return number <= FORMAT;
  }

  static BookSettings read(YamlMap map) {
    FarmDay farmDay =
        new FarmDay(
            map.required("time_zone").flatMap(SettingsReader::zone).orElse(unreadZone()),
            map.value("day_starts_at")
                .flatMap(SettingsReader::dayStart)
                .orElse(BookSettings.DAY_STARTS_AT));
    Optional<String> station = map.text("station");
    Optional<PhotoNamePattern> name = map.value("photo_name").flatMap(SettingsReader::pattern);
    Units units = map.choice("units", Units.values()).orElse(Units.METRIC);
    map.finish();
    return new BookSettings(farmDay, station, name, units);
  }

  private static ZoneId unreadZone() {
    return BookSettings.unread().farmDay().zone();
  }

  private static Optional<ZoneId> zone(YamlValue value) {
    Optional<String> text = value.text();
    try {
      return text.map(ZoneId::of);
    } catch (DateTimeException unknown) {
      String found = text.orElse("");
      String nearest =
          NearestSpelling.of(found, ZoneId.getAvailableZoneIds())
              .map(zone -> "did you mean \"" + zone + "\"?")
              .orElse("write it as continent and city");
      value.error("the time zone \"" + found + "\" is unknown", nearest + " as in Europe/Lisbon");
      return Optional.empty();
    }
  }

  private static Optional<LocalTime> dayStart(YamlValue value) {
    Optional<String> text = value.text();
    if (text.isPresent() && !text.get().matches("([01]\\d|2[0-3]):[0-5]\\d")) {
      value.error("\"" + text.get() + "\" is not a time", "write hour:minute, as in \"04:00\"");
      return Optional.empty();
    }
    Optional<LocalTime> time = text.map(LocalTime::parse);
    time.filter(start -> !start.isBefore(LocalTime.NOON))
        .ifPresent(
            start ->
                value
                    .findings()
                    .warning(
                        value.place(),
                        "the day starts at "
                            + start
                            + ", so that photos of the hours before it count for the day before",
                        "it is for farms that photograph past midnight: write an hour when nobody"
                            + " does, as in \"04:00\""));
    return time;
  }

  private static Optional<PhotoNamePattern> pattern(YamlValue value) {
    int errorsBefore = value.findings().errors();
    Optional<String> text = value.text();
    List<String> seen = new ArrayList<>();
    for (String field : text.map(PhotoNamePattern::fieldsOf).orElse(List.of())) {
      if (!PhotoNamePattern.FIELDS.contains(field)) {
        value.unknown("field", field, PhotoNamePattern.FIELDS);
      } else if (seen.contains(field) && !field.equals("any")) {
        value.error("the field {" + field + "} stands twice", "keep one of the two");
      }
      seen.add(field);
    }
    return value.findings().errors() == errorsBefore
        ? text.map(PhotoNamePattern::new)
        : Optional.empty();
  }
}
