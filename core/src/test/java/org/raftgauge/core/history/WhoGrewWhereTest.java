// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.raftgauge.core.book.BookFolder.at;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.book.CropBook;

/** Plants through plantings and events on their own sites. */
class WhoGrewWhereTest extends PlantHistory {
  @Test
  void plantIsNamedByRaftSiteAndDay() {
    CropBook book = book().sound();
    assertEquals(Optional.of("R1/B3/2026-04-06"), plant(book, "R1/B3", "2026-04-16T18:00"));
    assertEquals(Optional.of("T1/A1/2026-04-01"), plant(book, "T1/A1", "2026-04-16T18:00"));
    assertEquals("A1 A2 A3 B1 B2 B3", planted(book, "R1", "2026-04-16T18:00"));
  }

  @Test
  void siteOutsideThePlantingsSitesIsNotPlanted() {
    CropBook book = book().sound();
    assertEquals(Optional.empty(), plant(book, "T1/A3", "2026-04-16T18:00"));
    assertEquals(Optional.empty(), plant(book, "R1/C1", "2026-04-16T18:00"));
    assertEquals(Optional.empty(), plant(book, "R9/A1", "2026-04-16T18:00"));
    assertEquals("A1 A2 B1 B2", planted(book, "T1", "2026-04-16T18:00"));
  }

  @Test
  void nothingStandsBeforeTheFarmsDayOfTransplanting() {
    CropBook book = book().sound();
    assertEquals(Optional.empty(), plant(book, "R1/A1", "2026-04-06T03:59"));
    assertTrue(plant(book, "R1/A1", "2026-04-06T04:00").isPresent());
  }

  @Test
  void agesCountCalendarDaysAndTheLocalClock() {
    // 18:00 is 0.75 of a day; 20 March to 16 April is 27 days, 6 to 16 April 10.
    Grown grown = grown(book().sound(), "R1/A1", "2026-04-16T18:00").orElseThrow();
    assertEquals(OptionalDouble.of(10.75), grown.dat());
    assertEquals(OptionalDouble.of(27.75), grown.das());
    assertEquals(OptionalDouble.empty(), grown.dac());
    assertEquals(OptionalDouble.of(10.75), grown.age());
    assertEquals("basil", grown.planting().crop());
  }

  @Test
  void trayRunsOnDaysAfterSowing() {
    Grown grown = grown(book().sound(), "T1/A1", "2026-04-11T12:00").orElseThrow();
    assertEquals(OptionalDouble.empty(), grown.dat());
    assertEquals(OptionalDouble.of(10.5), grown.das());
    assertEquals(OptionalDouble.of(10.5), grown.age());
  }

  // ---- plants that go

  @ParameterizedTest
  @ValueSource(strings = {"died", "harvested", "weighed", "thinned"})
  void plantThatIsGoneLeavesItsSiteUnplanted(String kind) {
    CropBook book = with("2026-05-01T10:00," + kind + ",R1,A2;B1-B2,,,,,\n");
    assertEquals("A1 A2 A3 B1 B2 B3", planted(book, "R1", "2026-05-01T09:59"));
    assertEquals("A1 A3 B3", planted(book, "R1", "2026-05-01T10:00"));
  }

  @Test
  void wholeRaftHarvestedIsNotExpectedAnyMore() {
    CropBook book = with("2026-05-01T10:00,harvested,R1,,,,,,\n");
    assertEquals("", planted(book, "R1", "2026-05-01T18:00"));
    assertTrue(book.expectedRafts(LocalDate.of(2026, 4, 30)).contains("R1"));
    assertTrue(!book.expectedRafts(LocalDate.of(2026, 5, 1)).contains("R1"));
    // A photo of that day from before the harvest still finds its planting.
    assertEquals(1, book.plantingsOn("R1", LocalDate.of(2026, 5, 1)).size());
    assertEquals(0, book.plantingsOn("R1", LocalDate.of(2026, 5, 2)).size());
    assertEquals(1, book.plantingsAt("R1", at("2026-05-01T09:59")).size());
    assertEquals(0, book.plantingsAt("R1", at("2026-05-01T10:00")).size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"weighed", "thinned"})
  void noteThatBeginsWithKeptLeavesThePlant(String kind) {
    CropBook book = with("2026-05-01," + kind + ",R1,A2,,,ana,Kept in its hole,\n");
    assertEquals(Optional.of("R1/A2/2026-04-06"), plant(book, "R1/A2", "2026-05-01T18:00"));
  }

  @Test
  void wholeRaftThinnedKeepsAPlantAtEachSite() {
    assertEquals(
        "A1 A2 A3 B1 B2 B3",
        planted(with("2026-05-01,thinned,R1,,,,,,\n"), "R1", "2026-05-01T18:00"));
  }

  @Test
  void cleaningChangesNothing() {
    assertEquals(
        "A1 A2 A3 B1 B2 B3",
        planted(with("2026-05-01,cleaned,R1,,,,,,\n"), "R1", "2026-05-01T18:00"));
  }

  @Test
  void endOfThePlantingEndsAllThatIsLeft() {
    CropBook book =
        book().change("plantings.csv", "2026-04-06,,,L1", "2026-04-06,,2026-05-06,L1").sound();
    assertTrue(plant(book, "R1/A1", "2026-05-06T03:59").isPresent());
    assertEquals(Optional.empty(), plant(book, "R1/A1", "2026-05-06T04:00"));
  }

  // ---- new plants

  @Test
  void replacementIsANewPlantThatRunsFromItsOwnDay() {
    CropBook book = with("2026-04-10T09:00,replaced,R1,A2,,,,,\n");
    assertEquals(Optional.of("R1/A2/2026-04-06"), plant(book, "R1/A2", "2026-04-10T08:59"));
    Grown grown = grown(book, "R1/A2", "2026-04-12T18:00").orElseThrow();
    assertEquals("R1/A2/2026-04-10", grown.plant());
    assertEquals(OptionalDouble.of(2.75), grown.dat());
    assertEquals(OptionalDouble.empty(), grown.das());
  }

  @Test
  void replacementInATrayIsSownAnew() {
    Grown grown =
        grown(with("2026-04-10,replaced,T1,A1,,,,,\n"), "T1/A1", "2026-04-12T12:00").orElseThrow();
    assertEquals(OptionalDouble.of(2.5), grown.das());
    assertEquals(OptionalDouble.empty(), grown.dat());
  }

  @Test
  void deadPlantMayBeReplacedLater() {
    CropBook book = with("2026-04-08,died,R1,A2,,,,,\n2026-04-10,replaced,R1,A2,,,,,\n");
    assertEquals(Optional.empty(), plant(book, "R1/A2", "2026-04-09T18:00"));
    assertEquals(Optional.of("R1/A2/2026-04-10"), plant(book, "R1/A2", "2026-04-10T18:00"));
  }

  @Test
  void twoReplacementsInADayHaveTwoNames() {
    CropBook book =
        with("2026-04-10T09:00,replaced,R1,A2,,,,,\n2026-04-10T15:00,replaced,R1,A2,,,,,\n");
    assertEquals(Optional.of("R1/A2/2026-04-10"), plant(book, "R1/A2", "2026-04-10T12:00"));
    assertEquals(Optional.of("R1/A2/2026-04-10/2"), plant(book, "R1/A2", "2026-04-10T18:00"));
  }

  @Test
  void cutRestartsTheAgeOnDaysAfterCut() {
    CropBook book = with("2026-05-01T10:00,cut,R1,,,,,,\n2026-05-11T10:00,cut,R1,A1,,,,,\n");
    assertEquals(
        OptionalDouble.empty(), grown(book, "R1/A1", "2026-05-01T09:00").orElseThrow().dac());
    Grown grown = grown(book, "R1/A1", "2026-05-04T12:00").orElseThrow();
    assertEquals("R1/A1/2026-04-06", grown.plant());
    assertEquals(OptionalDouble.of(3.5), grown.dac());
    assertEquals(OptionalDouble.of(3.5), grown.age());
    assertEquals(OptionalDouble.of(28.5), grown.dat());
    assertEquals(
        OptionalDouble.of(1.5), grown(book, "R1/A1", "2026-05-12T12:00").orElseThrow().dac());
    assertEquals(
        OptionalDouble.of(11.5), grown(book, "R1/A2", "2026-05-12T12:00").orElseThrow().dac());
  }

  // ---- moves
}
