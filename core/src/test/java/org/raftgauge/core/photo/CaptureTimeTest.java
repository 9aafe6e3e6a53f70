// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.photo.TakenAt.Source;

class CaptureTimeTest {
  // Lisbon: UTC+0, in summer UTC+1; in 2026 from 29 March 01:00 UTC to 25 October 01:00 UTC
  // (last Sundays, Directive 2000/84/EC).
  private static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");
  private static final FarmDay DAY = new FarmDay(LISBON, LocalTime.of(4, 0));
  private static final FarmClock FARM = new FarmClock(DAY, Duration.ZERO, Optional.empty());
  private static final String REMEDY =
      "set the camera's clock, put the date into the file's name, or give taken_at in manifest.csv";

  @ParameterizedTest
  @CsvSource({
    "2026-03-01T18:20, 2026-03-01T18:20:00Z",
    "2026-03-01 18:20, 2026-03-01T18:20:00Z",
    "2026-03-01T18:20:05.5, 2026-03-01T18:20:05.500Z",
    "2026-06-01T18:20, 2026-06-01T18:20:00+01:00",
    "2026-06-01T18:20Z, 2026-06-01T19:20:00+01:00",
    "2026-06-01T18:20:00+02:00, 2026-06-01T17:20:00+01:00",
    "2026-06-01T18:20:00+0200, 2026-06-01T17:20:00+01:00",
    "2026-06-01T18:20:00-05, 2026-06-02T00:20:00+01:00",
    "2026-06-01, 2026-06-01T18:00:00+01:00",
    "' 2026-06-01T18:20 ', 2026-06-01T18:20:00+01:00"
  })
  void theManifestIsBelievedFirst(String written, String expected) {
    TakenAt taken = taken(clues(written, "2026:03:05 10:00:00", "", "2026-03-07", ""), FARM);
    assertEquals(OffsetDateTime.parse(expected), taken.at());
    assertEquals(Source.MANIFEST, taken.source());
    assertEquals("", taken.clockDoubt());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1.3.2026 18:20",
        "2026-02-30T10:00",
        "18:20",
        "x",
        "2026-03-01T25:00",
        "2026-03-0118:20"
      })
  void aManifestTimeThatIsNoneIsRefusedNotGuessed(String written) {
    NoTime none = none(clues(written, "2026:03:05 10:00:00", "", "2026-03-05", ""));
    assertEquals("taken_at \"" + written + "\" of the manifest is not a time", none.reason());
    assertEquals("write it as 2026-03-01T18:20 or 2026-03-01T18:20+01:00", none.remedy());
  }

  @Test
  void theCamerasClockIsTheFarmsLocalTime() {
    TakenAt taken = taken(clues("", "2026:07:01 18:20:05", "", "", ""), FARM);
    assertEquals(OffsetDateTime.parse("2026-07-01T18:20:05+01:00"), taken.at());
    assertEquals(Source.CAMERA, taken.source());
    assertEquals("", taken.clockDoubt());
  }

  @Test
  void theCamerasOwnOffsetIsUsedWhereItTellsOne() {
    TakenAt taken = taken(clues("", "2026:07:01 18:20:05", "-07:00", "", ""), FARM);
    // 18:20:05 at UTC-7 is 01:20:05 UTC, 02:20:05 in Lisbon's summer.
    assertEquals(OffsetDateTime.parse("2026-07-02T02:20:05+01:00"), taken.at());
  }

  @Test
  void anOffsetThatCannotBeReadIsPassedOver() {
    TakenAt taken = taken(clues("", "2026:07:01 18:20:05", "+99:00", "", ""), FARM);
    assertEquals(OffsetDateTime.parse("2026-07-01T18:20:05+01:00"), taken.at());
  }

  @Test
  void theStationsClockOffsetIsAddedToTheCamerasClockOnly() {
    FarmClock late = new FarmClock(DAY, Duration.ofMinutes(-90), Optional.empty());
    assertEquals(
        OffsetDateTime.parse("2026-06-30T22:50:00+01:00"),
        taken(clues("", "2026:07:01 00:20:00", "", "", ""), late).at());
    assertEquals(
        OffsetDateTime.parse("2026-07-01T00:20:00+01:00"),
        taken(clues("2026-07-01T00:20", "", "", "", ""), late).at());
    assertEquals(
        OffsetDateTime.parse("2026-07-01T00:20:00+01:00"),
        taken(clues("", "", "", "2026-07-01", "00:20"), late).at());
  }

  @Test
  void aStationsClockOffsetCountsFromTheCamerasWallClockWhateverZoneItClaims() {
    FarmClock set = new FarmClock(DAY, Duration.ofHours(1), Optional.empty());
    assertEquals(
        OffsetDateTime.parse("2026-07-01T19:20:00+01:00"),
        taken(clues("", "2026:07:01 18:20:00", "+09:00", "", ""), set).at());
  }

  @Test
  void theFileNameIsBelievedLast() {
    TakenAt taken = taken(clues("", "", "", "2026-04-11", "19:05"), FARM);
    assertEquals(OffsetDateTime.parse("2026-04-11T19:05:00+01:00"), taken.at());
    assertEquals(Source.FILE_NAME, taken.source());
  }

  @Test
  void aDateWithoutATimeMeansSixInTheEvening() {
    assertEquals(
        OffsetDateTime.parse("2026-04-11T18:00:00+01:00"),
        taken(clues("", "", "", "2026-04-11", ""), FARM).at());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "    :  :     :  :  ", "0000:00:00 00:00:00"})
  void withoutAnyClueThePhotoIsRefused(String camera) {
    NoTime none = none(clues("", camera, "", "", "18:00"));
    assertEquals("nothing tells when the photo was taken", none.reason());
    assertEquals(REMEDY, none.remedy());
  }

  @Test
  void aCameraTimeThatCannotBeReadIsSaid() {
    NoTime none = none(clues("", "2026:02:30 10:00:00", "", "", ""));
    assertEquals(
        "nothing tells when the photo was taken: the camera's time \"2026:02:30 10:00:00\" cannot be"
            + " read",
        none.reason());
    TakenAt taken = taken(clues("", "2026:02:30 10:00:00", "", "2026-03-01", ""), FARM);
    assertEquals("the camera's time \"2026:02:30 10:00:00\" cannot be read", taken.clockDoubt());
    assertEquals(Source.FILE_NAME, taken.source());
  }

  @Test
  void aCameraThatLostItsClockGivesWayToTheFileName() {
    TakenAt taken = taken(clues("", "1970:01:01 00:12:00", "", "2026-04-11", ""), FARM);
    assertEquals(OffsetDateTime.parse("2026-04-11T18:00:00+01:00"), taken.at());
    assertEquals("the camera's clock says 1970-01-01; the file name is used", taken.clockDoubt());
  }

  @Test
  void aCameraThatLostItsClockIsDoubtedWhereNothingElseTellsTheTime() {
    TakenAt taken = taken(clues("", "2001:01:01 00:12:00", "", "", ""), FARM);
    assertEquals(Source.CAMERA, taken.source());
    assertEquals("the year 2001 is before 2015", taken.clockDoubt());
  }

  @Test
  void aTimeInTheFutureIsDoubtedOnlyWhereThePresentIsGiven() {
    TimeClues clues = clues("", "2026:07:01 18:20:00", "", "", "");
    assertEquals("", taken(clues, FARM).clockDoubt());
    // 17:00 UTC is 18:00 in Lisbon's summer: 20 minutes before the photo, 10 are allowed.
    FarmClock now =
        new FarmClock(DAY, Duration.ZERO, Optional.of(Instant.parse("2026-07-01T17:00:00Z")));
    assertEquals(
        "the time 2026-07-01T18:20+01:00 is in the future", taken(clues, now).clockDoubt());
    FarmClock soon =
        new FarmClock(DAY, Duration.ZERO, Optional.of(Instant.parse("2026-07-01T17:12:00Z")));
    assertEquals("", taken(clues, soon).clockDoubt());
  }

  /** The farm's day begins at 04:00: at 03:59 it is still the evening before. */
  @ParameterizedTest
  @CsvSource({
    "2026:07:01 18:20:00, 2026-07-01",
    "2026:07:02 00:20:00, 2026-07-01",
    "2026:07:02 03:59:59, 2026-07-01",
    "2026:07:02 00:20:00, 2026-07-02"
  })
  void aNameMaySayTheCalendarDayOrTheFarmsEvening(String camera, String named) {
    assertEquals("", taken(clues("", camera, "", named, ""), FARM).clockDoubt());
  }

  @ParameterizedTest
  @CsvSource({
    "2026:07:02 04:00:00, 2026-07-01, 2026-07-02",
    "2026:07:02 18:20:00, 2026-07-01, 2026-07-02",
    "2026:07:01 23:59:59, 2026-07-02, 2026-07-01",
    "2026:07:03 00:20:00, 2026-07-01, 2026-07-03"
  })
  void aNameThatIsADayOffIsDoubtedAndTheCameraBelieved(String camera, String named, String said) {
    TakenAt taken = taken(clues("", camera, "", named, ""), FARM);
    assertEquals(
        "the camera's clock says " + said + ", the file name " + named, taken.clockDoubt());
    assertEquals(Source.CAMERA, taken.source());
  }

  @Test
  void aTimeThatClocksSkipIsMovedForwardAndDoubted() {
    TakenAt taken = taken(clues("", "2026:03:29 01:30:00", "", "", ""), FARM);
    assertEquals(OffsetDateTime.parse("2026-03-29T02:30:00+01:00"), taken.at());
    assertEquals(
        "the time 2026-03-29T01:30 does not exist: clocks went forward over it",
        taken.clockDoubt());
  }

  @Test
  void aTimeThatComesTwiceIsTheFirst() {
    TakenAt taken = taken(clues("", "2026:10:25 01:30:00", "", "", ""), FARM);
    assertEquals(OffsetDateTime.parse("2026-10-25T01:30:00+01:00"), taken.at());
    assertEquals("", taken.clockDoubt());
  }

  private static TimeClues clues(
      String manifest, String camera, String offset, String date, String time) {
    PhotoTags tags =
        new PhotoTags(1, given(camera), given(offset), Optional.empty(), Optional.empty());
    return new TimeClues(given(manifest), tags, named(date, time, ""));
  }

  private static PhotoName named(String date, String time, String impossible) {
    return new PhotoName(
        given(date).map(LocalDate::parse),
        given(time).map(LocalTime::parse),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        given(impossible));
  }

  @Test
  void aDayInTheNameThatNoCalendarHasIsSaidThoughTheCameraTells() {
    TimeClues clues = clues("", "2026:07:01 18:20:05", "", "", "");
    TakenAt taken =
        taken(new TimeClues(clues.manifest(), clues.tags(), named("", "", "2026-07-41")), FARM);
    assertEquals(OffsetDateTime.parse("2026-07-01T18:20:05+01:00"), taken.at());
    assertEquals("\"2026-07-41\" in the file name is no day or time", taken.clockDoubt());
    NoTime none =
        none(
            new TimeClues(
                Optional.empty(), clues("", "", "", "", "").tags(), named("", "", "2026-07-41")));
    assertEquals(
        "nothing tells when the photo was taken: \"2026-07-41\" in the file name is no day or time",
        none.reason());
  }

  private static Optional<String> given(String text) {
    return Optional.of(text).filter(t -> !t.isEmpty());
  }

  private static TakenAt taken(TimeClues clues, FarmClock clock) {
    return assertInstanceOf(TakenAt.class, CaptureTime.of(clues, clock));
  }

  private static NoTime none(TimeClues clues) {
    return assertInstanceOf(NoTime.class, CaptureTime.of(clues, FARM));
  }
}
