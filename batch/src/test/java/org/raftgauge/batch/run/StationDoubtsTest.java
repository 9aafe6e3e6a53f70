// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.fixture.HandMadeWorkplace;
import org.raftgauge.batch.fixture.SilentProgress;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.evening.StationDoubt;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.problem.InputException;

/** Runs over evenings of which the last three show marks that no longer fit. */
class StationDoubtsTest {
  private static final int LAST = 13;
  private static final int FIRST_BAD = 11;

  @TempDir private Path folder;

  private final HandMadeMeasurer measurer = new HandMadeMeasurer("s");
  private List<LocalDate> changedOn = List.of();

  @BeforeEach
  void makeFolders() throws IOException {
    Files.createDirectories(folder.resolve("book"));
    Files.createDirectories(folder.resolve("photos"));
  }

  private HandMadeFarm farm() {
    Station bench =
        new Station(
            "bench",
            Station.Kind.PASSING,
            1,
            640,
            480,
            new Lens(700, 700, 320, 240, 0, 0, 0, 0, 0),
            1600,
            List.of(),
            Duration.ZERO,
            changedOn,
            Optional.empty());
    return new HandMadeFarm("R1") {
      @Override
      public CropBook book() {
        CropBook none = super.book();
        return new CropBook(
            none.settings(),
            Map.of("bench", bench),
            none.layouts(),
            none.crops(),
            none.plantings(),
            none.diary(),
            none.tenures(),
            none.plants(),
            none.broken());
      }
    };
  }

  private void photos(int from, int to) throws IOException {
    for (int day = from; day <= to; day++) {
      double misfit = day < FIRST_BAD ? 0.40 + 0.02 * (day % 3) : 4;
      Files.writeString(
          folder.resolve("photos/day" + day + ".txt"),
          String.format(
              Locale.ROOT,
              "rafts=R1 area=10 at=2026-04-%02dT18:00:00+01:00 pose_error=%.2f",
              day,
              misfit));
    }
  }

  private RunSummary run() throws InputException, IOException {
    HandMadeFarm farm = farm();
    Tools tools =
        new Tools(
            farm,
            measurer,
            new RunPictures(farm, EnumSet.noneOf(RunPictures.Kind.class)),
            new SilentProgress());
    RunRequest request =
        new RunRequest(
            folder.resolve("photos"),
            folder.resolve("book"),
            Optional.of(folder.resolve("out")),
            2,
            Duration.ofMillis(50),
            OffsetDateTime.parse("2026-04-20T07:00:00+01:00").plusNanos(System.nanoTime()));
    return RunFolder.run(request, HandMadeWorkplace.find(folder.resolve("photos")), tools);
  }

  private String text(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  @Test
  void photosOfAStationOutOfControlAreHeldWithReasonAndRemedy() throws Exception {
    photos(1, LAST);

    RunSummary run = run();

    assertEquals(3, run.photos().get(PhotoStatus.HELD), run.attention().toString());
    String line = run.attention().get(0);
    assertTrue(
        line.startsWith(
            "day11.txt: the station is not as it was: since 2026-04-11 (1 evening): marks or edges"
                + " fit worse than they did (pose error 4.00 mm, usually 0.42 mm); check for bent"
                + " boards"),
        line);
    assertTrue(line.contains("then photograph again; if it was changed on purpose, write"), line);
    assertTrue(line.endsWith("changed_on: [2026-04-11] into stations/bench.yaml"), line);
    String held =
        text("out/sites.csv").lines().filter(r -> r.startsWith("day12")).findFirst().get();
    assertTrue(held.contains(",R1,P1,butterhead,,L1,A1,R1/A1,2026-04-12T18:00:00+01:00,6.750,,,,"));
    assertTrue(text("out/run.json").contains("\"held\": true"));
  }

  @Test
  void theEveningSaysWhatMovedAndWhatToDoAndAsksForNoPhotoTwice() throws Exception {
    photos(1, LAST);

    var judged = run().judged().orElseThrow();

    assertEquals(List.of("bench"), judged.stations().stream().map(StationDoubt::station).toList());
    var first = judged.worklist().get(0);
    assertEquals("check the station", first.action().words());
    assertTrue(
        first.why().startsWith("Since 2026-04-11 (3 evenings): marks or edges fit worse"),
        first.why());
    assertTrue(first.why().endsWith("Its photos of this evening are held, rafts: 1."), first.why());
    assertEquals(0, judged.worklist().stream().filter(t -> t.why().startsWith("Held")).count());
  }

  @Test
  void secondRunSaysTheSameAndMeasuresNothing() throws Exception {
    photos(1, LAST);
    run();
    String sites = text("out/sites.csv");
    String worklist = text("out/worklist.csv");

    RunSummary again = run();

    assertEquals(LAST, measurer.calls());
    assertEquals(3, again.photos().get(PhotoStatus.HELD));
    assertEquals(sites, text("out/sites.csv"));
    assertEquals(worklist, text("out/worklist.csv"));
  }

  @Test
  void orderInWhichEveningsAreMeasuredChangesNothing() throws Exception {
    photos(1, LAST);
    run();
    String atOnce = text("out/sites.csv");
    Files.delete(folder.resolve("book/history.db"));
    for (int day = 1; day <= LAST; day++) {
      Files.delete(folder.resolve("photos/day" + day + ".txt"));
    }

    photos(FIRST_BAD, LAST);
    assertEquals(0, run().photos().get(PhotoStatus.HELD), "no past to judge by yet");
    photos(1, FIRST_BAD - 1);
    run();

    assertEquals(atOnce, text("out/sites.csv"));
  }

  @Test
  void changeMadeOnPurposeStartsThePastAnewAndLeavesEarlierEveningsAsTheyWere() throws Exception {
    photos(1, LAST);
    run();
    changedOn = List.of(LocalDate.of(2026, 4, 12));

    RunSummary run = run();

    assertEquals(1, run.photos().get(PhotoStatus.HELD), run.attention().toString());
    assertTrue(run.attention().get(0).startsWith("day11.txt"));
    assertEquals(LAST, measurer.calls(), "the station's history changes no measure");
  }
}
