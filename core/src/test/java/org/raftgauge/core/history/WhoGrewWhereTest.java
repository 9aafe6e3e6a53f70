// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.raftgauge.core.book.BookFolder.at;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.book.BookFolder;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;

/** Plants through plantings and events; R1 is a 2 x 3 board, R2 a 1 x 4, T1 a tray of 4 sites. */
class WhoGrewWhereTest {
  @TempDir Path folder;

  private BookFolder book() {
    return BookFolder.in(folder);
  }

  private CropBook with(String events) {
    return book().events(events).sound();
  }

  private static Optional<String> plant(CropBook book, String spot, String when) {
    return grown(book, spot, when).map(Grown::plant);
  }

  private static Optional<Grown> grown(CropBook book, String spot, String when) {
    int slash = spot.indexOf('/');
    SiteId site = SiteId.parse(spot.substring(slash + 1));
    return WhoGrewWhere.of(book).at(spot.substring(0, slash), site, at(when));
  }

  private static String planted(CropBook book, String raft, String when) {
    NavigableSet<SiteId> sites = WhoGrewWhere.of(book).plantedSites(raft, at(when));
    return sites.stream().map(SiteId::toString).collect(Collectors.joining(" "));
  }

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

  @Test
  void movedPlantCarriesItsNameAndAge() {
    CropBook book = with("2026-04-20,died,R1,B3,,,,,\n2026-04-21T10:00,moved,R1,A1,,B3,,,\n");
    assertEquals(Optional.empty(), plant(book, "R1/A1", "2026-04-21T18:00"));
    Grown grown = grown(book, "R1/B3", "2026-04-21T18:00").orElseThrow();
    assertEquals("R1/A1/2026-04-06", grown.plant());
    assertEquals(OptionalDouble.of(15.75), grown.dat());
    PlantLife life = WhoGrewWhere.of(book).life("R1/A1/2026-04-06").orElseThrow();
    assertEquals(
        List.of(PlantLife.Ending.MOVED, PlantLife.Ending.NONE),
        life.stays().stream().map(PlantLife.Stay::ending).toList());
    assertEquals(Optional.empty(), WhoGrewWhere.of(book).life("R1/A9/2026-04-06"));
  }

  @Test
  void twoPlantsMayChangePlacesInOneRow() {
    CropBook book = with("2026-04-21,moved,R1,A1;B2,,B2;A1,,,\n");
    assertEquals(Optional.of("R1/B2/2026-04-06"), plant(book, "R1/A1", "2026-04-21T18:00"));
    assertEquals(Optional.of("R1/A1/2026-04-06"), plant(book, "R1/B2", "2026-04-21T18:00"));
  }

  @Test
  void respacingAWholeRaftOntoTwoIsOneRow() {
    // 6 plants; the first 4 fill the strip R5, the other 2 go on to R6.
    CropBook book = with("2026-04-20T10:00,moved,R1,,R5;R6,,ana,,strip\n");
    assertEquals("", planted(book, "R1", "2026-04-20T18:00"));
    assertEquals("A1 A2 A3 A4", planted(book, "R5", "2026-04-20T18:00"));
    assertEquals("A1 A2", planted(book, "R6", "2026-04-20T18:00"));
    assertEquals(Optional.of("R1/B1/2026-04-06"), plant(book, "R5/A4", "2026-04-20T18:00"));
    assertEquals(Optional.of("R1/B2/2026-04-06"), plant(book, "R6/A1", "2026-04-20T18:00"));
    assertEquals(Set.of("R2", "R5", "R6", "T1"), book.expectedRafts(LocalDate.of(2026, 4, 20)));
    Planting there = book.plantingsOn("R6", LocalDate.of(2026, 4, 20)).get(0);
    assertEquals("strip", there.layout());
    assertEquals("basil", there.crop());
    assertEquals("L1", there.lot());
    assertEquals(Optional.of(LocalDate.of(2026, 4, 6)), there.transplantedOn());
    assertEquals(Set.of(SiteId.parse("A1"), SiteId.parse("A2")), there.sites());
  }

  @Test
  void respacingMayKeepSomePlantsOnTheirRaft() {
    CropBook book = with("2026-04-20T10:00,moved,R1,,R1;R5,A1;A3;B2,,,small\n");
    assertEquals("A1 A3 B2", planted(book, "R1", "2026-04-20T18:00"));
    assertEquals("A1 A3 B2", planted(book, "R5", "2026-04-20T18:00"));
    assertEquals(Optional.of("R1/A1/2026-04-06"), plant(book, "R1/A1", "2026-04-20T18:00"));
    assertEquals(Optional.of("R1/A2/2026-04-06"), plant(book, "R1/A3", "2026-04-20T18:00"));
    assertEquals(Optional.of("R1/B1/2026-04-06"), plant(book, "R5/A1", "2026-04-20T18:00"));
  }

  @Test
  void rowThatBeginsOnTheDayOfTheMoveDescribesThePlantsMoved() {
    CropBook book =
        book()
            .change("plantings.csv", "2026-04-06,,,L1", "2026-04-06,,2026-04-20,L1")
            .change(
                "plantings.csv",
                "T1,",
                "R5,P7,1,basil,,strip,,2026-03-20,2026-04-20,,2026-05-10,L1\n"
                    + "R6,P7,2,basil,,strip,,2026-03-20,2026-04-20,,,L1\nT1,")
            .events("2026-04-20T10:00,moved,R1,,R5;R6,,,,\n")
            .sound();
    assertEquals("A1 A2 A3 A4", planted(book, "R5", "2026-04-20T18:00"));
    assertEquals("A1 A2", planted(book, "R6", "2026-04-20T18:00"));
    Grown grown = grown(book, "R5/A4", "2026-04-21T18:00").orElseThrow();
    assertEquals("R1/B1/2026-04-06", grown.plant());
    assertEquals(OptionalDouble.of(15.75), grown.dat());
    assertEquals("P7", grown.planting().pond());
    // The row's end is the end of what was moved there.
    assertEquals(Optional.empty(), plant(book, "R5/A4", "2026-05-10T18:00"));
    assertEquals(Optional.of("R1/B2/2026-04-06"), plant(book, "R6/A1", "2026-05-10T18:00"));
    assertEquals(14, book.plants().size()); // 6 of R1, 4 of R2, 4 of T1: none begun by R5 and R6
  }

  @Test
  void moveOnTheLastDayOfAPlantingTakesItsPlantsThoughNewOnesFollow() {
    CropBook book =
        book()
            .change("plantings.csv", "2026-04-06,,,L1", "2026-04-06,,2026-04-20,L1")
            .change("plantings.csv", "T1,", "R1,P1,1,lettuce,,small,,,2026-04-20,,,L9\nT1,")
            .events("2026-04-20T10:00,moved,R1,,R5;R6,,,,strip\n")
            .sound();
    assertEquals(Optional.of("R1/A1/2026-04-06"), plant(book, "R5/A1", "2026-04-20T18:00"));
    assertEquals(Optional.of("R1/A1/2026-04-20"), plant(book, "R1/A1", "2026-04-20T18:00"));
  }

  @Test
  void movingFromATrayIsTheTransplanting() {
    CropBook book = with("2026-04-15,moved,T1,,R5,,,,small\n");
    Grown grown = grown(book, "R5/A1", "2026-04-17T12:00").orElseThrow();
    assertEquals("T1/A1/2026-04-01", grown.plant());
    assertEquals(OptionalDouble.of(2.5), grown.dat());
    assertEquals(OptionalDouble.of(16.5), grown.das());
  }

  @Test
  void gapMayBeFilledFromAnotherRaftOfTheSameCrop() {
    CropBook book =
        book()
            .change("plantings.csv", "T1,", "R3,P1,3,basil,,small,,2026-03-20,2026-04-06,,,L8\nT1,")
            .events("2026-04-10,died,R1,A1,,,,,\n2026-04-11,moved,R3,B3,R1,A1,,,\n")
            .sound();
    Grown grown = grown(book, "R1/A1", "2026-04-11T18:00").orElseThrow();
    assertEquals("R3/B3/2026-04-06", grown.plant());
    assertEquals("L1", grown.planting().lot()); // counted with the raft it stands on
    assertEquals(1, book.plantingsOn("R1", LocalDate.of(2026, 4, 11)).size());
  }

  @Test
  void secondMoveOntoARaftFillsTheFreeSites() {
    CropBook book =
        with(
            "2026-04-20T10:00,moved,R1,A1;A2,R5,,,,small\n2026-04-20T11:00,moved,R1,B1;B2,R5,,,,small\n");
    assertEquals("A1 A2 A3 B1", planted(book, "R5", "2026-04-20T18:00"));
    assertEquals(Optional.of("R1/B1/2026-04-06"), plant(book, "R5/A3", "2026-04-20T18:00"));
  }

  // ---- what does not fit together

  private void problem(String events, String... expected) {
    assertEquals(List.of(expected), book().events(events).problems());
  }

  @Test
  void targetThatIsOccupiedIsNamedAndThePlantStays() {
    String events = "2026-04-21,moved,R1,A1,,B3,,,\n";
    problem(
        events,
        "events.csv:2: column to_site: \"B3 of R1\" holds the plant R1/B3/2026-04-06; write first"
            + " what became of that plant (moved, harvested, died), or name another site");
    CropBook book = BookFolder.in(folder).events(events).read().book();
    assertEquals(Optional.of("R1/A1/2026-04-06"), plant(book, "R1/A1", "2026-04-21T18:00"));
    assertEquals(Optional.of("R1/B3/2026-04-06"), plant(book, "R1/B3", "2026-04-21T18:00"));
  }

  @Test
  void plantThatHasToStayKeepsItsSiteFromTheNext() {
    // A2 cannot go to B3, so A1 cannot go to A2 either.
    String events = "2026-04-21,moved,R1,A1;A2,,A2;B3,,,\n";
    String remedy =
        "; write first what became of that plant (moved, harvested, died), or name another site";
    problem(
        events,
        "events.csv:2: column to_site: \"A2 of R1\" holds the plant R1/A2/2026-04-06" + remedy,
        "events.csv:2: column to_site: \"B3 of R1\" holds the plant R1/B3/2026-04-06" + remedy);
    CropBook book = BookFolder.in(folder).events(events).read().book();
    assertEquals(Optional.of("R1/A1/2026-04-06"), plant(book, "R1/A1", "2026-04-21T18:00"));
    assertEquals(Optional.of("R1/A2/2026-04-06"), plant(book, "R1/A2", "2026-04-21T18:00"));
  }

  @Test
  void raftNamedTwiceIsFilledOnce() {
    CropBook book =
        BookFolder.in(folder).events("2026-04-20,moved,R1,,R5;R5,,,,strip\n").read().book();
    assertEquals("A1 A2 A3 A4", planted(book, "R5", "2026-04-20T18:00"));
    assertEquals("B2 B3", planted(book, "R1", "2026-04-20T18:00"));
  }

  @Test
  void plantingOfThatDayTellsTheLayoutBeforeToLayoutDoes() {
    CropBook book =
        BookFolder.in(folder)
            .events("2026-04-19,harvested,R2,A1-A3,,,,,\n2026-04-20,moved,R1,,R2;R5,,,,small\n")
            .sound();
    assertEquals("A1 A2 A3 A4", planted(book, "R2", "2026-04-20T18:00"));
    assertEquals("A1 A2 A3", planted(book, "R5", "2026-04-20T18:00"));
  }

  @Test
  void plantThatIsAlreadyGoneIsNamedWithWhatBecameOfIt() {
    problem(
        "2026-04-20,died,R1,A1,,,,,\n2026-04-22,harvested,R1,A1;A2,,,,,\n",
        "events.csv:3: column site: \"A1 of R1\" holds no plant then (it died on 2026-04-20); mend"
            + " at, raft or site, or delete the row");
    problem(
        "2026-04-01,died,R1,A1,,,,,\n",
        "events.csv:2: column site: \"A1 of R1\" holds no plant then; mend at, raft or site, or"
            + " delete the row");
  }

  @Test
  void eventOfAnEmptyRaftIsNamed() {
    problem(
        "2026-04-20,harvested,R1,,,,,,\n2026-04-22,cut,R1,,,,,,\n",
        "events.csv:3: column site: \"R1\" holds no plant then; mend at, raft or site, or delete"
            + " the row");
  }

  @Test
  void replacementAtASiteThatIsNotOfThePlantingIsNamed() {
    problem(
        "2026-04-20,replaced,T1,A3,,,,,\n",
        "events.csv:2: column site: \"A3 of T1\" belongs to no planting then; mend at, raft or"
            + " site, or delete the row");
  }

  @Test
  void sitesOfAMoveMustBeAsMany() {
    problem(
        "2026-04-20,moved,R1,A1;A2;A3,R5,A1;A2,,,small\n",
        "events.csv:2: column to_site: 3 sites go to 2; name a site for each, or leave to_site"
            + " blank to fill the free ones in order");
  }

  @Test
  void targetOffItsLayoutIsNamed() {
    problem(
        "2026-04-20,moved,R1,A1,R5,B1,,,strip\n",
        "events.csv:2: column to_site: \"B1\" is not a site of layout strip; its sites run from A1"
            + " to A4");
  }

  @Test
  void plantsThatFindNoPlaceAreCountedAndStay() {
    String events = "2026-04-20,moved,R1,,R5,,,,strip\n";
    problem(
        events,
        "events.csv:2: column to_raft: 2 of 6 plants find no free site; name more rafts, or write"
            + " first what became of the plants there; they stay where they are");
    CropBook book = BookFolder.in(folder).events(events).read().book();
    assertEquals("B2 B3", planted(book, "R1", "2026-04-20T18:00"));
  }

  @Test
  void raftWithoutARowIsTakenToHaveTheLayoutOfTheOtherAndThatIsSaid() {
    problem(
        "2026-04-20,moved,R1,,R11,,,,\n",
        "events.csv:2: column to_raft: \"R11\" has no row in plantings.csv; it is taken to have the"
            + " layout small; fill in to_layout, or mend the name (\"R1\"?)");
  }

  @Test
  void plantingOntoARaftThatHoldsMovedPlantsIsNamed() {
    assertEquals(
        List.of(
            "plantings.csv:5: column raft: A1 of R5 holds R1/A1/2026-04-06, which was moved there;"
                + " write in events.csv what became of that plant (harvested, died, moved)"),
        book()
            .plantings("R5,P1,1,lettuce,,small,,,2026-05-01,,,\n")
            .events("2026-04-20,moved,R1,,R5,,,,\n")
            .problems());
  }

  @Test
  void plantsThatStandDoNotShareASite() {
    CropBook book =
        with(
            """
            2026-04-10,moved,R1,A1-A3,R5,,,,small
            2026-04-12,died,R5,A2,,,,,
            2026-04-14,moved,R5,A3,R5,A2,,,
            2026-04-16,replaced,R1,A1,,,,,
            2026-04-18,moved,R1,,R5,,,,small
            """);
    for (String day : List.of("09", "11", "13", "15", "17", "19")) {
      List<String> spots =
          book.plants().stream()
              .flatMap(life -> life.stays().stream())
              .filter(stay -> stay.holdsAt(at("2026-04-" + day + "T18:00")))
              .map(stay -> stay.planting().raft() + stay.site())
              .toList();
      assertEquals(Set.copyOf(spots).size(), spots.size(), day);
    }
    assertEquals("A1 A2 A3 B1 B2 B3", planted(book, "R5", "2026-04-19T18:00"));
  }
}
