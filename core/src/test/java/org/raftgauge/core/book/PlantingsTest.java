// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.core.problem.Problem;

/** Reading of plantings.csv, and which raft holds what on an evening. */
class PlantingsTest {
  @TempDir Path folder;

  private BookFolder book() {
    return BookFolder.in(folder);
  }

  @Test
  void plantingIsReadAsWritten() {
    Planting planting = book().sound().plantings().get(2);
    assertEquals(
        new Planting(
            "T1",
            "P2",
            "",
            "basil",
            "",
            "small",
            SiteNames.parse("A1;A2;B1;B2"),
            Optional.of(LocalDate.of(2026, 4, 1)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            "L3"),
        planting);
  }

  @Test
  void optionalColumnsMayBeLeftOut() {
    CropBook book =
        book()
            .with("plantings.csv", "raft,crop,layout,transplanted_on\nR1,basil,small,2026-04-06\n")
            .sound();
    assertEquals("", book.plantings().get(0).pond());
    assertEquals(Set.of("R1"), book.expectedRafts(LocalDate.of(2026, 4, 6)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "R9,P1,1,bazil,,small,,2026-03-20,2026-04-06,,,|crop|\"bazil\" is unknown; did you mean"
            + " \"basil\"? known: basil, lettuce",
        "R9,P1,1,basil,,smal,,2026-03-20,2026-04-06,,,|layout|\"smal\" is unknown; did you mean"
            + " \"small\"? known: small, strip",
        "R9,P1,1,basil,,small,A1-D1,2026-03-20,2026-04-06,,,|sites|\"C1\" is not a site of layout"
            + " small; its sites run from A1 to B3",
        "R9,P1,1,basil,,small,first row,2026-03-20,2026-04-06,,,|sites|\"first row\" does not name"
            + " sites; write sites as in A1;B2, or a range as in A1-C3",
        "R9,P1,1,basil,,small,,2026-04-07,2026-04-06,,,|transplanted_on|\"2026-04-06\" is before"
            + " sown_on 2026-04-07; mend one of the two dates",
        "R9,P1,1,basil,,small,,2026-03-20,2026-04-06,,2026-04-06,|ended_on|\"2026-04-06\" is not"
            + " after transplanted_on 2026-04-06; write the first day on which the planting is no"
            + " longer there",
        "R9,P1,1,basil,,small,,2026-03-20,,,2026-03-01,|ended_on|\"2026-03-01\" is not after"
            + " sown_on 2026-03-20; write the first day on which the planting is no longer there",
        "R9,P1,1,basil,,small,,2026-03-20,2026-04-06,2026-04-01,,|harvest_by|\"2026-04-01\" is"
            + " before transplanted_on 2026-04-06; mend one of the two dates",
        "R9,P1,1,basil,,small,,,,,,|transplanted_on|neither sown_on nor transplanted_on is given;"
            + " fill in one of the two, as in 2026-04-06",
        "R9,P1,1,basil,,small,,20.3.2026,2026-04-06,,,|sown_on|\"20.3.2026\" is not a date; write"
            + " year-month-day, as in 2026-04-06",
        ",P1,1,basil,,small,,2026-03-20,2026-04-06,,,|raft|the cell is blank; fill it in",
        "R9,P1,1,,,small,,2026-03-20,2026-04-06,,,|crop|the cell is blank; fill it in",
        "../R9,P1,1,basil,,small,,2026-03-20,2026-04-06,,,|raft|\"../R9\" is not a name: it"
            + " begins with \".\"; write at most 32 letters, digits, spaces and . - _ ' ( ) & + #,"
            + " beginning with a letter or digit",
        "R1,P1,1,basil,,small,B1,2026-03-20,2026-04-08,,,|raft|\"R1\" holds the planting of line 2"
            + " on the same sites and days; write ended_on of the earlier one, or give each its own"
            + " sites"
      })
  void faultOfARowIsNamedWithLineAndColumn(String row, String column, String text) {
    List<String> problems = book().plantings(row + "\n").problems();
    assertTrue(
        problems.contains("plantings.csv:5: column " + column + ": " + text),
        () -> String.join("\n", problems));
  }

  @Test
  void rowWithABadDateIsLeftOutAndTheOthersStay() {
    BookReading reading =
        book()
            .plantings("R9,P1,1,basil,,small,,soon,,,,\nR8,P1,8,basil,,small,,,2026-04-06,,,\n")
            .read();
    assertEquals(1, reading.problems().size());
    assertEquals(
        List.of("R1", "R2", "T1", "R8"),
        reading.book().plantings().stream().map(Planting::raft).toList());
  }

  @Test
  void raftWithAnUnknownLayoutIsExpectedAllTheSame() {
    CropBook book =
        book().plantings("R9,P1,1,basil,,smol,,,2026-04-06,,2026-05-06,\n").read().book();
    assertEquals(1, book.plantingsOn("R9", LocalDate.of(2026, 5, 5)).size());
    assertEquals(0, book.plantingsOn("R9", LocalDate.of(2026, 5, 6)).size());
    assertTrue(book.expectedRafts(LocalDate.of(2026, 5, 5)).contains("R9"));
    assertEquals(Optional.empty(), book.layout("smol", LocalDate.of(2026, 5, 5)));
  }

  @Test
  void plantingHoldsFromItsFirstDayUntilTheDayBeforeItsEnd() {
    CropBook book =
        book().change("plantings.csv", "2026-04-06,,,L1", "2026-04-06,,2026-05-06,L1").sound();
    assertEquals(0, book.plantingsOn("R1", LocalDate.of(2026, 4, 5)).size());
    assertEquals(1, book.plantingsOn("R1", LocalDate.of(2026, 4, 6)).size());
    assertEquals(1, book.plantingsOn("R1", LocalDate.of(2026, 5, 5)).size());
    assertEquals(0, book.plantingsOn("R1", LocalDate.of(2026, 5, 6)).size());
    assertEquals(0, book.plantingsOn("R7", LocalDate.of(2026, 5, 5)).size());
  }

  @Test
  void trayHoldsFromTheDayOfSowing() {
    CropBook book = book().sound();
    assertEquals(Set.of(), book.expectedRafts(LocalDate.of(2026, 3, 31)));
    assertEquals(Set.of("T1"), book.expectedRafts(LocalDate.of(2026, 4, 1)));
    assertEquals(Set.of("R1", "R2", "T1"), book.expectedRafts(LocalDate.of(2026, 4, 6)));
  }

  @Test
  void oneRaftMayHoldSeveralCropsOnDifferentSites() {
    CropBook book =
        book()
            .change("plantings.csv", "basil,,small,,2026-03-20", "basil,,small,A1-A3,2026-03-20")
            .with(
                "plantings.csv",
                """
                raft,crop,layout,sites,transplanted_on
                R1,basil,small,A1-A3,2026-04-06
                R1,lettuce,small,B1-B2,2026-04-08
                """)
            .sound();
    assertEquals(
        List.of("basil"),
        book.plantingsOn("R1", LocalDate.of(2026, 4, 7)).stream().map(Planting::crop).toList());
    List<Planting> both = book.plantingsOn("R1", LocalDate.of(2026, 4, 8));
    assertEquals(List.of("basil", "lettuce"), both.stream().map(Planting::crop).toList());
    assertTrue(both.get(0).holds(SiteId.parse("A3")));
    assertTrue(!both.get(0).holds(SiteId.parse("B1")));
  }

  @Test
  void plantingsThatShareABoardMustNameOneLayout() {
    String shared =
        "raft,crop,layout,sites,transplanted_on,ended_on\nR1,basil,small,A1,2026-04-06,";
    String second = "\nR1,lettuce,strip,A2,2026-04-08,\n";
    assertEquals(
        List.of(
            "plantings.csv:3: column layout: line 2 has raft \"R1\" in layout \"small\" on the same"
                + " days, this one in \"strip\"; a board has one layout: mend the wrong one, or"
                + " write ended_on of the earlier planting"),
        book().with("plantings.csv", shared + second).problems());
    book().with("plantings.csv", shared + "2026-04-08" + second).sound();
    assertEquals(
        1,
        book().with("plantings.csv", shared + second.replace("strip", "strpi")).problems().size(),
        "a layout that is unknown is one problem, not two");
  }

  @Test
  void newPlantingMayBeginOnTheDayTheOldOneEnds() {
    CropBook book =
        book()
            .change("plantings.csv", "2026-04-06,,,L1", "2026-04-06,,2026-05-06,L1")
            .change("plantings.csv", "T1,", "R1,P1,1,lettuce,,small,,,2026-05-06,,,L9\nT1,")
            .sound();
    assertEquals("basil", book.plantingsOn("R1", LocalDate.of(2026, 5, 5)).get(0).crop());
    assertEquals("lettuce", book.plantingsOn("R1", LocalDate.of(2026, 5, 6)).get(0).crop());
  }

  @Test
  void varietyThatIsNearlyListedIsWarnedOfOnceAndMeasuredAsTheCrop() {
    BookReading reading =
        book()
            .change(
                "crops.yaml",
                "mean_to_top: 0.6}\n",
                "mean_to_top: 0.6}\n    varieties: {red oak: {emerged_by_das: 7}}\n")
            .plantings(
                """
                R3,P1,3,lettuce,Red Oak,strip,,,2026-04-06,,,
                R4,P1,4,lettuce,Red Oak,strip,,,2026-04-06,,,
                R5,P1,5,lettuce,rad oak,strip,,,2026-04-06,,,
                R6,P1,6,lettuce,red oak,strip,,,2026-04-06,,,
                R7,P1,7,lettuce,Lollo,strip,,,2026-04-06,,,
                R8,P1,8,basil,rad oak,strip,,,2026-04-06,,,
                """)
            .read();
    String found = " is not listed under lettuce and measured as that";
    String remedy = "did you mean \"red oak\"? known: red oak";
    assertEquals(
        List.of(
            Problem.warning("plantings.csv:5: column variety", "\"Red Oak\"" + found, remedy),
            Problem.warning("plantings.csv:7: column variety", "\"rad oak\"" + found, remedy)),
        reading.problems());
    CropBook book = reading.book();
    Planting slipped = book.plantingsOn("R3", LocalDate.of(2026, 4, 6)).get(0);
    assertEquals("lettuce", book.crop(slipped).orElseThrow().name());
  }

  @Test
  void rowThatStandsTwiceIsTheTablesProblemAlone() {
    assertEquals(
        List.of("plantings.csv:5: the row is the same as line 2; delete one of the two"),
        book().plantings("R1,P1,1,basil,,small,,2026-03-20,2026-04-06,,,L1\n").problems());
  }

  @Test
  void berthOfSeveralRaftsThatStillStandIsWarnedOfInOneLine() {
    String rows =
        """
        raft,pond,berth,crop,layout,sown_on,transplanted_on,ended_on
        R1,P1,1,basil,small,,2026-04-06,
        R2,P1,1,basil,small,,2026-04-08,
        R3,P2,1,basil,small,,2026-04-06,
        R4,P1,2,basil,small,,2026-04-06,2026-05-06
        R5,P1,2,basil,small,,2026-05-06,
        R6,P1,,basil,small,,2026-04-06,
        R7,P1,,basil,small,,2026-04-06,
        T1,N,rack,basil,small,2026-04-06,,
        T2,N,rack,basil,small,2026-04-06,,
        """;
    assertEquals(
        List.of(
            Problem.warning(
                "plantings.csv: column berth",
                "several rafts stand at one berth: pond P1, berth 1 (R1, R2)",
                "write each raft's own place, or ended_on of those that are gone")),
        book().with("plantings.csv", rows).read().problems());
    StringBuilder many = new StringBuilder("raft,berth,crop,layout,transplanted_on\n");
    for (int i = 0; i < 10; i++) {
      many.append("R" + i + "," + i / 2 + ",basil,small,2026-04-06\n");
    }
    assertTrue(
        book()
            .with("plantings.csv", many.toString())
            .read()
            .problems()
            .toString()
            .contains(": berth 0 (R0, R1); berth 1 (R2, R3); berth 2 (R4, R5); and at 2 more; "));
  }

  @Test
  void berthOfVeryManyRaftsNamesAFew() {
    StringBuilder rows = new StringBuilder("raft,berth,crop,layout,transplanted_on\n");
    for (int i = 100; i < 400; i++) {
      rows.append("R" + i + ",1,basil,small,2026-04-06\n");
    }
    assertEquals(
        "several rafts stand at one berth: berth 1 (R100, R101, R102, 297 more)",
        book().with("plantings.csv", rows.toString()).read().problems().get(0).found());
  }
}
