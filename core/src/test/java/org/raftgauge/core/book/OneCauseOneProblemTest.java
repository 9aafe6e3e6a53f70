// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A mistake is named once, where it is, and not again wherever its part of the book is needed. */
class OneCauseOneProblemTest {
  @TempDir private Path folder;

  /** A book whose diaries name the raft R9, and R8 that plants of R9 were moved to. */
  private BookFolder book() {
    return BookFolder.in(folder)
        .events(
            """
            2026-04-10,died,R9,A1,,,,,
            2026-04-12,moved,R9,A2,R8,A1,,,small
            2026-04-13,died,R8,A1,,,,,
            """)
        .with(
            "placements.csv",
            "station,slot,raft,from,to\nover-pond,left,R9,2026-04-06,\nover-pond,right,R8,2026-04-12,\n")
        .with(
            "weighings.csv", "raft,site,weighed_at,fresh_weight_g\nR9,A3,2026-05-01T18:00,152.5\n")
        .with("harvests.csv", "raft,harvested_at,heads,total_weight_g\nR9,2026-05-02,4,610\n")
        .with("calls.csv", "raft,called_on,call\nR9,2026-05-01,lagging\n")
        .with("climate.csv", "pond,date,mean_air_c\nP9,2026-05-01,21\n");
  }

  @Test
  void theBookWithoutAMistakeIsSound() {
    assertEquals(List.of(), book().plantings("R9,P9,1,basil,,small,,,2026-04-06,,,\n").problems());
  }

  @Test
  void badPlantingRowIsOneProblemWhateverMentionsItsRaft() {
    assertEquals(
        List.of(
            "plantings.csv:5: column transplanted_on: \"6.4.2026\" is not a date; write"
                + " year-month-day, as in 2026-04-06"),
        book().plantings("R9,P9,1,basil,,small,,,6.4.2026,,,\n").problems());
  }

  @Test
  void plantingsSavedWithSemicolonsAreOneProblem() {
    book().plantings("R9,P9,1,basil,,small,,,2026-04-06,,,\n");
    String text = BookFolder.text(folder.resolve("plantings.csv"));
    assertEquals(
        List.of(
            "plantings.csv:1: cells are separated by \";\"; save it with commas between the cells"
                + " and dots in the numbers"),
        book().with("plantings.csv", text.replace(',', ';')).problems());
  }

  @Test
  void eventsSavedWithSemicolonsAreOneProblem() {
    book().plantings("R9,P9,1,basil,,small,,,2026-04-06,,,\n");
    String text = BookFolder.text(folder.resolve("events.csv"));
    List<String> problems =
        BookFolder.standingIn(folder).with("events.csv", text.replace(',', ';')).problems();
    assertEquals(1, problems.size(), () -> String.join("\n", problems));
    assertTrue(problems.get(0).startsWith("events.csv:1: cells are separated by \";\""));
  }

  @Test
  void plantingRowSplitByADecimalCommaIsOneProblem() {
    List<String> problems =
        book().plantings("R9,P9,1,5,basil,,small,,,2026-04-06,,,L9\n").problems();
    assertEquals(1, problems.size(), () -> String.join("\n", problems));
    assertTrue(problems.get(0).startsWith("plantings.csv:5: the row has 13 cells, the header 12"));
  }

  @Test
  void eventSplitByACommaHidesNoMistakeOfOtherRafts() {
    List<String> problems =
        book()
            .plantings("R9,P9,1,basil,,small,,,2026-04-06,,,\n")
            .without("placements.csv")
            .events(
                """
                2026-04-09,died,R1,A1,,,,,
                2026-04-10,died,R9,A1,,,
                2026-04-11,died,R1,A1,,,,,
                2026-04-12,moved,R9,A2,R8,A1,,,small
                2026-04-13,died,R9,A1,,,,,
                """)
            .problems();
    assertEquals(2, problems.size(), () -> String.join("\n", problems));
    assertTrue(problems.get(0).startsWith("events.csv:3: the row has 7 cells, the header 9"));
    assertTrue(
        problems.get(1).startsWith("events.csv:4: column site: \"A1 of R1\" holds no plant"),
        problems.get(1));
  }

  @Test
  void badEventIsOneProblemAndItsPlantsAreNotMissedLater() {
    List<String> problems =
        book()
            .plantings("R9,P9,1,basil,,small,,,2026-04-06,,,\n")
            .change("events.csv", "2026-04-12,moved", "12.4.2026,moved")
            .problems();
    assertEquals(
        List.of(
            "events.csv:3: column at: \"12.4.2026\" is not a time; write date and time, as in"
                + " 2026-04-06T18:00"),
        problems);
  }

  @Test
  void unreadableCropsLayoutsAreOneProblemEach() {
    List<String> problems =
        book()
            .plantings("R9,P9,1,basil,,small,,,2026-04-06,,,\n")
            .with("layouts.yaml", "layouts:\n  small: {board: [}\n")
            .with("crops.yaml", "crops: [basil\n")
            .problems();
    assertEquals(2, problems.size(), () -> String.join("\n", problems));
    assertTrue(problems.get(0).startsWith("layouts.yaml:2:19: the YAML cannot be read"));
    assertTrue(problems.get(1).startsWith("crops.yaml:2:1: the YAML cannot be read"));
  }

  @Test
  void anotherRaftsMistakesAreStillNamed() {
    List<String> problems =
        book()
            .plantings("R9,P9,1,basil,,small,,,6.4.2026,,,\n")
            .without("placements.csv")
            .with("calls.csv", "raft,called_on,call\nR3,2026-05-01,lagging\n")
            .events("2026-04-10,died,R1,A1,,,,,\n2026-04-11,died,R1,A1,,,,,\n")
            .problems();
    assertEquals(3, problems.size(), () -> String.join("\n", problems));
    assertTrue(problems.get(1).startsWith("calls.csv:2: column raft: \"R3\" is unknown"));
    assertTrue(
        problems.get(2).startsWith("events.csv:3: column site: \"A1 of R1\" holds no plant"));
  }

  @Test
  void decimalCommaInBracesIsNamedWhereItIs() {
    assertEquals(
        List.of(
            "layouts.yaml:3:23: layouts.small.board.width_mm: \"400,5\" is not a number; write a"
                + " dot, as in 400.5"),
        BookFolder.in(folder)
            .change("layouts.yaml", "width_mm: 400", "width_mm: 400,5")
            .problems());
    assertEquals(
        List.of(
            "layouts.yaml:3:39: layouts.small.board.length_mm: \"300,25\" is not a number; write a"
                + " dot, as in 300.25"),
        BookFolder.in(folder)
            .change("layouts.yaml", "length_mm: 300", "length_mm: 300,25")
            .problems());
  }

  @Test
  void severalDecimalCommasInOneMapAreNamedOneByOne() {
    assertEquals(
        List.of(
            "stations/bench.yaml:4:15: lens.fx_px: \"2200,5\" is not a number; write a dot, as in"
                + " 2200.5",
            "stations/bench.yaml:4:27: lens.k1: \"-0,5\" is not a number; write a dot, as in -0.5"),
        BookFolder.in(folder)
            .change("stations/bench.yaml", "{fx_px: 2200}", "{fx_px: 2200,5, k1: -0,5}")
            .problems());
  }

  @Test
  void decimalCommaInAListIsReminded() {
    assertEquals(
        List.of(
            "stations/over-pond.yaml:7:46: slots[0].corners_px[0]: the list has 3 values; write 2"
                + " numbers, with a dot in each, as in 10.5"),
        BookFolder.in(folder)
            .change("stations/over-pond.yaml", "[[10, 10], [500, 12]", "[[10,5, 10], [500, 12]")
            .problems());
  }

  @Test
  void unknownKeyOfDigitsIsNoDecimalComma() {
    List<String> problems =
        BookFolder.in(folder)
            .change("layouts.yaml", "width_mm: 400", "width_mm: 400, 5")
            .problems();
    assertEquals(1, problems.size(), () -> String.join("\n", problems));
    assertTrue(problems.get(0).startsWith("layouts.yaml:3:28: layouts.small.board.5: the key"));
  }
}
