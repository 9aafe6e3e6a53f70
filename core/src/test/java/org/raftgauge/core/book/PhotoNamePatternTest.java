// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PhotoNamePatternTest {

  @Test
  void dateAndRaftAreRead() {
    PhotoName name = new PhotoNamePattern("{date}_{raft}").parse("2026-04-16_DR-0401.jpg");
    assertEquals(Optional.of(LocalDate.of(2026, 4, 16)), name.date());
    assertEquals(Optional.of("DR-0401"), name.raft());
    assertEquals(Optional.empty(), name.time());
    assertEquals(Optional.empty(), name.station());
    assertEquals(Optional.empty(), name.slot());
  }

  @Test
  void dateWithoutATimeMeansSixInTheEvening() {
    PhotoName name = new PhotoNamePattern("{date}_{raft}").parse("2026-04-16_R1.jpg");
    assertEquals(Optional.of(LocalDateTime.of(2026, 4, 16, 18, 0)), name.takenAt());
    assertEquals(Optional.empty(), PhotoName.silent().takenAt());
  }

  @ParameterizedTest
  @CsvSource({"1830, 18:30", "18-30, 18:30", "183015, 18:30:15", "18-30-15, 18:30:15"})
  void timesAreReadAsCamerasWriteThem(String text, LocalTime time) {
    PhotoName name =
        new PhotoNamePattern("{station}_{date}_{time}_{slot}")
            .parse("pond-a_20260416_" + text + "_left.JPG");
    assertEquals(Optional.of(time), name.time());
    assertEquals(Optional.of(LocalDate.of(2026, 4, 16)), name.date());
    assertEquals(Optional.of("pond-a"), name.station());
    assertEquals(Optional.of("left"), name.slot());
  }

  @Test
  void foldersAndCapitalsDoNotMatter() {
    PhotoNamePattern pattern = new PhotoNamePattern("IMG_{date}_{raft}");
    assertEquals(Optional.of("R1"), pattern.parse("evening/2026/img_2026-04-16_R1.jpeg").raft());
    assertEquals(Optional.of("R1"), pattern.parse("C:\\photos\\img_2026-04-16_R1.jpeg").raft());
  }

  @Test
  void restOfTheNameMayBeAnything() {
    PhotoNamePattern pattern = new PhotoNamePattern("{date}_{raft}_{any}");
    assertEquals(Optional.of("R1"), pattern.parse("2026-04-16_R1_copy (2).jpg").raft());
  }

  @Test
  void signsOfThePatternStandForThemselves() {
    PhotoNamePattern pattern = new PhotoNamePattern("{raft}.+{date}");
    assertEquals(Optional.of("R1"), pattern.parse("R1.+2026-04-16.jpg").raft());
    assertEquals(PhotoName.silent(), pattern.parse("R1xx2026-04-16.jpg"));
  }

  @Test
  void aDayThatNoCalendarHasStillLeavesTheRaft() {
    PhotoName name = new PhotoNamePattern("{date}_{time}_{raft}").parse("2026-02-30_1820_R1.jpg");
    assertEquals(Optional.of("2026-02-30"), name.impossible());
    assertEquals(Optional.empty(), name.date());
    assertEquals(Optional.of(LocalTime.of(18, 20)), name.time());
    assertEquals(Optional.of("R1"), name.raft());
    PhotoName late = new PhotoNamePattern("{date}_{time}_{raft}").parse("2026-02-28_2561_R1.jpg");
    assertEquals(Optional.of("2561"), late.impossible());
    assertEquals(Optional.of(LocalDate.of(2026, 2, 28)), late.date());
  }

  @ParameterizedTest
  @ValueSource(strings = {"IMG_0001.jpg", "2026-04-16.jpg", "_R1.jpg", ""})
  void nameOfAnotherKindSaysNothing(String fileName) {
    assertEquals(PhotoName.silent(), new PhotoNamePattern("{date}_{raft}").parse(fileName));
  }

  @ParameterizedTest
  @ValueSource(strings = {"{date}_{date}", "{day}_{raft}", "{}"})
  void patternOfUnknownOrRepeatedFieldsIsRefused(String text) {
    assertEquals(
        "photo name must hold fields of [date, time, raft, station, slot, any] once each, got \""
            + text
            + "\"",
        assertThrows(IllegalArgumentException.class, () -> new PhotoNamePattern(text))
            .getMessage());
  }
}
