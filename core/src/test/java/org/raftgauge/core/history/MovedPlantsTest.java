// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;

/** Plants that move to other sites and rafts. */
class MovedPlantsTest extends PlantHistory {
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
}
