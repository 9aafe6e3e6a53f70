// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.store.Corrections;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;

/** Plants that meet, split by their sizes on the evening before. */
class BordersOfEveningsTest {
  private static final String BEFORE = "rafts=R1 areas=20;10;10;5 at=2026-04-09T18:00:00+01:00";
  private static final String MEET =
      "rafts=R1 areas=36;18;22;9 meet=-0.1003 at=2026-04-11T18:00:00+01:00";

  @TempDir private Path folder;
  private RunFixture runs;

  @BeforeEach
  void makeFolders() throws IOException {
    runs = new RunFixture(folder);
  }

  @Test
  void theEveningBeforeMovesTheBorderInOneRunAndFromTheHistory() throws Exception {
    // Open plants of equal size before. The pair's spread by the photo is 0.06 (nothing shared),
    // squared 0.0036; by the sizes before 2 x (0.0009 + 2 x 0.0001) = 0.0022: weight 0.62069.
    // 0.62069 x 0.1003 at 1 cm2 for 0.1 is 0.623 cm2 on the deck, x 0.95 for the height: 0.59.
    runs.photo("a.txt", BEFORE);
    runs.photo("b.txt", MEET);
    runs.run("out");
    assertTrue(runs.areas("b.txt").contains("A1=36.00 A2=18.59 B1=21.41"), runs.areas("b.txt"));
    assertTrue(runs.text("out/sites.csv").contains(",0.59\r\n"), runs.text("out/sites.csv"));

    Files.delete(folder.resolve("photos/a.txt"));
    runs.run("out");
    assertTrue(runs.areas("b.txt").contains("A2=18.59 B1=21.41"), runs.areas("b.txt"));
  }

  @Test
  void whatStoodOnTheRaftEarlierChangesNothing() throws Exception {
    // Verdicts and forecasts read this crop's evenings alone, the tables all that the raft ever
    // saw:
    // where plants met long ago must not decide how many evenings of these ones are read.
    for (int day = 5; day <= 9; day++) {
      String at = " at=2026-04-0" + day + "T18:00:00+01:00";
      runs.photo(day + ".txt", "rafts=R1 areas=20;" + (day + 1) + ";" + (day + 2) + ";5" + at);
    }
    runs.photo("b.txt", MEET);
    runs.run("out");
    String alone = runs.areas("b.txt");

    runs.photo("old.txt", "rafts=R1 areas=0;0;0;0 meet=-0.1003 at=2026-01-09T18:00:00+01:00");
    runs.run("out");
    assertEquals(alone, runs.areas("b.txt"));
  }

  @Test
  void aPhotoWithoutAnEveningBeforeIsSplitAsItStands() throws Exception {
    runs.photo("b.txt", MEET);
    runs.run("out");

    assertTrue(runs.areas("b.txt").contains("A2=18.00 B1=22.00"), runs.areas("b.txt"));
  }

  @Test
  void aBoardThatIsFoundTurnedTakesItsBordersAlong() throws Exception {
    // Lying turned, what is measured at A2 and B1 stands at B1 and A2; those were equal before.
    runs.photo("a.txt", "rafts=R1 areas=30;10;10;5 at=2026-04-09T18:00:00+01:00");
    runs.photo(
        "b.txt",
        "rafts=R1 areas=9;18;22;60 meet=-0.1003 pose=outline at=2026-04-11T18:00:00+01:00");
    runs.run("out");

    String areas = runs.areas("b.txt");
    assertTrue(areas.contains("A1=60.00 A2=21.41 B1=18.59"), areas);
  }

  @Test
  void aTurnedBoardIsDrawnAsThePhotoItselfSplitsIt() {
    PhotoMeasure before =
        measured("a.txt", "rafts=R1 areas=30;10;10;5 at=2026-04-09T18:00:00+01:00");
    PhotoMeasure turned =
        measured(
            "b.txt",
            "rafts=R1 areas=9;18;22;60 meet=-0.1003 pose=outline at=2026-04-11T18:00:00+01:00");
    Farm farm = new HandMadeFarm("R1");
    SettlePhotos settled =
        SettlePhotos.of(
            new SettlePhotos.Looked(List.of(before, turned), List.of()),
            Corrections.of(List.of(), Instant.MAX),
            StationDoubts.of(List.of(), farm),
            farm);

    var drawn = settled.changed().get(turned.sha256()).photo().rafts().get(0).sites();
    assertEquals(22, drawn.get(1).projectedAreaCm2().orElseThrow(), 1e-9);
    var told = settled.photos().get(1).photo().rafts().get(0).sites();
    assertEquals(21.41, told.get(1).projectedAreaCm2().orElseThrow(), 0.01);
  }

  private static PhotoMeasure measured(String name, String says) {
    byte[] bytes = says.getBytes(StandardCharsets.UTF_8);
    return new HandMadeMeasurer("s").measure(bytes, PhotoFacts.of(name)).measure();
  }

  @Test
  void theHistoryKeepsWhatThePhotoAloneSaid() throws Exception {
    runs.photo("a.txt", BEFORE);
    runs.photo("b.txt", MEET);
    runs.run("out");

    try (var history = org.raftgauge.batch.store.History.open(folder.resolve("book/history.db"))) {
      var site = history.named("b.txt").get(0).measure().rafts().get(0).sites().get(1);
      assertEquals(18, site.projectedAreaCm2().orElseThrow(), 1e-9);
      assertEquals(0, site.movedCm2());
    }
  }
}
