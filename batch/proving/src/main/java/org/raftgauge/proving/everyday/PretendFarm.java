// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.everyday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Workplace;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.batch.run.RunFolder;
import org.raftgauge.batch.run.RunRequest;
import org.raftgauge.batch.run.Tools;
import org.raftgauge.batch.store.Steps;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.problem.InputException;

/** A farm of many rafts that is run like any other, but for photos that nobody took. */
final class PretendFarm {
  static final String LAYOUT = "deck-24";
  private static final SiteGrid GRID = new SiteGrid(6, 4, 90, 100, 140, 140, 0);
  private static final LocalDate PLANTED = LocalDate.of(2026, 4, 6);
  private static final int FIRST_AGE = 4;
  private static final int RAFTS_A_POND = 50;

  private final Path work;
  private final int rafts;
  private final int evenings;

  /**
   * @param work an empty folder
   * @param rafts number of rafts of 24 sites
   * @param evenings on which each is photographed, two days apart
   */
  PretendFarm(Path work, int rafts, int evenings) {
    this.work = work;
    this.rafts = rafts;
    this.evenings = evenings;
  }

  /** Runs it and returns the page. */
  Path page(long seed) throws InputException, IOException {
    Path book = Files.createDirectories(work.resolve("book"));
    Path photos = Files.createDirectories(work.resolve("photos"));
    write(book);
    for (int raft = 0; raft < rafts; raft++) {
      for (int evening = 0; evening < evenings; evening++) {
        LocalDate day = PLANTED.plusDays(FIRST_AGE + 2L * evening);
        Files.writeString(photos.resolve(day + "_" + name(raft) + ".jpg"), name(raft) + " " + day);
      }
    }
    BookWorkplace workplace = new BookWorkplace();
    Workplace.OpenBook open = workplace.open(book);
    Tools tools =
        new Tools(
            open.farm(),
            new PretendMeasurer(GRID, PLANTED, seed),
            new RunPictures(open.farm(), EnumSet.noneOf(RunPictures.Kind.class)),
            new SilentProgress(),
            open.page(),
            open.forecasts(),
            Steps.NONE);
    RunRequest request =
        new RunRequest(
            photos,
            book,
            Optional.of(work.resolve("out")),
            1,
            Duration.ZERO,
            PLANTED.plusDays(60).atTime(LocalTime.NOON).atOffset(ZoneOffset.UTC));
    return RunFolder.run(request, workplace.photos(photos), tools).folder().resolve("report.html");
  }

  private static String name(int raft) {
    return String.format(Locale.ROOT, "LF-%04d", raft + 1);
  }

  private void write(Path book) throws IOException {
    Files.createDirectories(book.resolve("stations"));
    Files.writeString(book.resolve("book.yaml"), "time_zone: UTC\nstation: bench\n");
    Files.writeString(
        book.resolve("stations/bench.yaml"),
        """
        kind: passing
        image_width_px: 2000
        image_height_px: 3000
        lens: {fx_px: 3000, k1: -0.1}
        camera_height_mm: 1500
        """);
    Files.writeString(
        book.resolve("layouts.yaml"),
        """
        layouts:
          deck-24:
            board: {width_mm: 600, length_mm: 900}
            sites: {rows: 6, columns: 4, first_x_mm: 90, first_y_mm: 100, pitch_x_mm: 140, pitch_y_mm: 140}
        """);
    Files.writeString(
        book.resolve("crops.yaml"),
        """
        crops:
          batavia:
            colour_model: green-leaf
            height_model: {scale_mm: 5, exponent: 0.5}
        """);
    StringBuilder rows =
        new StringBuilder(
            "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot\n");
    for (int raft = 0; raft < rafts; raft++) {
      rows.append(
          String.format(
              Locale.ROOT,
              "%s,P%d,%d,batavia,,%s,,,%s,,,%n",
              name(raft),
              1 + raft / RAFTS_A_POND,
              1 + raft % RAFTS_A_POND,
              LAYOUT,
              PLANTED));
    }
    Files.writeString(book.resolve("plantings.csv"), rows);
  }
}
