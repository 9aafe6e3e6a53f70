// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The campaign must see what is lost, doubled, changed or half. */
class RunStateTest {
  private static final Map<String, String> TABLES =
      Map.of(
          "photos.csv",
          "p",
          "sites.csv",
          "s",
          "rafts.csv",
          "r",
          "verdicts.csv",
          "v",
          "curves.csv",
          "c",
          "worklist.csv",
          "w",
          "forecast.csv",
          "f");

  @TempDir private Path folder;

  @Test
  void lostDoubledAndChangedRowsAreCounted() {
    RunState should =
        new RunState(
            Map.of("photos a", List.of("1"), "photos b", List.of("2"), "photos c", List.of("3")),
            TABLES);
    RunState is =
        new RunState(
            Map.of(
                "photos a", List.of("1", "1"), "photos b", List.of("9"), "photos d", List.of("4")),
            TABLES);

    // c is lost; a is there twice and d is new; b says something else.
    assertEquals(new RunState.Difference(1, 2, 1), is.from(should));
    assertEquals(new RunState.Difference(0, 0, 0), should.from(should));
  }

  @Test
  void aTableThatSaysSomethingElseIsCorrupt() {
    Map<String, String> other = new java.util.TreeMap<>(TABLES);
    other.put("sites.csv", "half");

    assertEquals(
        new RunState.Difference(0, 0, 1),
        new RunState(Map.of(), other).from(new RunState(Map.of(), TABLES)));
  }

  @Test
  void resultsAreWholeWithEveryFileThatTheyListAndNoOther() throws IOException {
    assertFalse(RunState.whole(folder), "nothing is there");
    Files.createDirectories(folder.resolve("plots"));
    Files.writeString(folder.resolve("a.csv"), "a");
    Files.writeString(folder.resolve("plots/b.svg"), "b");
    assertFalse(RunState.whole(folder), "no list");
    Files.writeString(
        folder.resolve("run.json"),
        "{\n  \"program\": \"raftgauge\",\n  \"files\": [\n    \"a.csv\",\n    \"plots/b.svg\"\n  ]\n}\n");
    assertTrue(RunState.whole(folder));
    Files.delete(folder.resolve("a.csv"));
    assertFalse(RunState.whole(folder), "one is missing");
    Files.writeString(folder.resolve("c.csv"), "c");
    assertFalse(RunState.whole(folder), "another is there instead");
  }

  @Test
  void aCaseIsReadAsItWasWritten() {
    CaseRow row = new CaseRow(7, "ANY", "most", "SETTLE:1", new Outcome(1, 2, 3, ""));
    assertEquals(row, CaseRow.parse(row.line()));
    CaseRow bad = new CaseRow(8, "STEP", "empty", "x", Outcome.failed("a, b\nc"));
    assertEquals(bad, CaseRow.parse(bad.line()));
    assertFalse(bad.outcome().good());
  }

  @Test
  void aThirdOfTheKillsLiesBetweenCommitAndPublication() {
    long between = 0;
    for (int number = 0; number < 306; number++) {
      between += Kills.When.of(number) == Kills.When.BETWEEN ? 1 : 0;
    }
    assertEquals(102, between);
  }

  @Test
  void theSameSeedGivesTheSamePondAndPhotos() throws IOException {
    SmallPond.write(folder.resolve("b1"), folder.resolve("p1"), 5);
    SmallPond.write(folder.resolve("b2"), folder.resolve("p2"), 5);
    String photo = SmallPond.FIRST + "/K-1.jpg";
    assertEquals(-1, Files.mismatch(folder.resolve("p1/" + photo), folder.resolve("p2/" + photo)));
    assertEquals(
        1 + SmallPond.BOARDS * SmallPond.EVENINGS,
        Files.readAllLines(folder.resolve("p1/manifest.csv")).size());
  }
}
