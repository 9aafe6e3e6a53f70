// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FarmDayTest {
  private static final FarmDay LISBON = new FarmDay(ZoneId.of("Europe/Lisbon"), LocalTime.of(4, 0));

  @ParameterizedTest
  @CsvSource({
    "2026-04-16T18:00, 2026-04-16",
    "2026-04-17T00:20, 2026-04-16", // past midnight belongs to the evening before
    "2026-04-17T03:59:59, 2026-04-16",
    "2026-04-17T04:00, 2026-04-17",
    "2026-01-01T00:20, 2025-12-31"
  })
  void photoBelongsToTheEveningOfItsFarmDay(String local, LocalDate evening) {
    assertEquals(evening, LISBON.evening(instant(LISBON, local)));
  }

  @Test
  void dayThatBeginsInTheHourThatSummerTimeLeavesOutBeginsAnHourLater() {
    // Lisbon, 29 March 2026: 01:00 WET becomes 02:00 WEST (tz database, EU rule: last Sunday).
    FarmDay day = new FarmDay(ZoneId.of("Europe/Lisbon"), LocalTime.of(1, 30));
    Instant start = Instant.parse("2026-03-29T01:30:00Z"); // 02:30 WEST
    assertEquals(start, day.start(LocalDate.of(2026, 3, 29)));
    assertEquals(LocalDate.of(2026, 3, 28), day.evening(start.minusSeconds(1)));
    assertEquals(LocalDate.of(2026, 3, 29), day.evening(start));
  }

  @Test
  void dayThatBeginsInTheHourThatComesTwiceBeginsAtTheFirst() {
    // Lisbon, 25 October 2026: 02:00 WEST becomes 01:00 WET.
    FarmDay day = new FarmDay(ZoneId.of("Europe/Lisbon"), LocalTime.of(1, 30));
    Instant start = Instant.parse("2026-10-25T00:30:00Z"); // 01:30 WEST
    assertEquals(start, day.start(LocalDate.of(2026, 10, 25)));
    assertEquals(LocalDate.of(2026, 10, 25), day.evening(Instant.parse("2026-10-25T01:10:00Z")));
  }

  @Test
  void everyInstantLiesInTheDayThatItIsSaidToLieIn() {
    Random random = new Random(7);
    for (String zone : new String[] {"Europe/Lisbon", "America/St_Johns", "Australia/Lord_Howe"}) {
      for (int n = 0; n < 2000; n++) {
        FarmDay day = new FarmDay(ZoneId.of(zone), LocalTime.of(random.nextInt(24), 30));
        Instant at = Instant.ofEpochSecond(1_767_225_600L + random.nextInt(366 * 86_400));
        LocalDate evening = day.evening(at);
        assertTrue(!at.isBefore(day.start(evening)), zone + " " + at);
        assertTrue(at.isBefore(day.start(evening.plusDays(1))), zone + " " + at);
      }
    }
  }

  // Calendar days plus local clock / 24 h.
  @ParameterizedTest
  @CsvSource({
    "2026-04-06T00:00, 0",
    "2026-04-06T12:00, 0.5",
    "2026-04-16T18:00, 10.75",
    "2026-04-17T00:18, 11.0125",
    "2026-04-05T12:00, -0.5"
  })
  void daysAfterCountCalendarDaysAndTheLocalClock(String local, double days) {
    assertEquals(days, LISBON.daysAfter(LocalDate.of(2026, 4, 6), instant(LISBON, local)), 1e-12);
  }

  @Test
  void daysAfterDoNotSlipWhereTheClockIsChanged() {
    LocalDate before = LocalDate.of(2026, 3, 28);
    assertEquals(1.75, LISBON.daysAfter(before, instant(LISBON, "2026-03-29T18:00")), 1e-12);
    assertEquals(2.75, LISBON.daysAfter(before, instant(LISBON, "2026-03-30T18:00")), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-04-16T18:00, 2026-04-16T18:00+01:00",
    "2026-04-16 18:00, 2026-04-16T18:00+01:00",
    "2026-04-16T18:00:05, 2026-04-16T18:00:05+01:00",
    "2026-04-16T18:00:05.250, 2026-04-16T18:00:05.250+01:00",
    "2026-01-16T18:00, 2026-01-16T18:00Z",
    "2026-04-16T18:00:00Z, 2026-04-16T18:00Z",
    "2026-04-16T18:00+03:00, 2026-04-16T18:00+03:00",
    "2026-03-29T01:30, 2026-03-29T02:30+01:00" // an hour that never was: as much later
  })
  void timesAreReadOnTheFarmsClockUnlessTheyNameTheirOffset(String text, OffsetDateTime time) {
    assertEquals(Optional.of(time), LISBON.parseTime(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "18:00",
        "2026-04-16",
        "16.04.2026 18:00",
        "2026-02-30T18:00",
        "2026-04-16T25:00",
        "soon"
      })
  void whatIsNoTimeIsNothing(String text) {
    assertEquals(Optional.empty(), LISBON.parseTime(text));
  }

  private static Instant instant(FarmDay day, String local) {
    return day.parseTime(local).orElseThrow().toInstant();
  }
}
