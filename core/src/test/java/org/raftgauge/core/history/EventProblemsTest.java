// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.raftgauge.core.book.BookFolder.at;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.BookFolder;
import org.raftgauge.core.book.CropBook;

/** Events that cannot have happened so are named with what stands in their way. */
class EventProblemsTest extends PlantHistory {
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
