// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.batch.plot.RaftPlots;
import org.raftgauge.batch.print.Paper;
import org.raftgauge.batch.print.PrintWorklist;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.history.WhoGrewWhere;
import org.raftgauge.core.report.CurvesTable;
import org.raftgauge.core.report.VerdictsTable;
import org.raftgauge.core.report.WorklistTable;

/** Writes the tables of an evening, its worklist to print, and its ponds for other programs. */
final class EveningFiles {

  private EveningFiles() {}

  /**
   * Writes verdicts, curves, worklist (table and sheets), ponds and the plots of rafts.
   *
   * @param corrections a line on the corrections that are obeyed, or empty
   */
  static boolean write(Path folder, EveningResult result, CropBook book, String corrections)
      throws IOException {
    Files.writeString(folder.resolve("verdicts.csv"), VerdictsTable.csv(result.verdicts()));
    Files.writeString(folder.resolve("curves.csv"), CurvesTable.csv(result.curves()));
    Files.writeString(folder.resolve("worklist.csv"), WorklistTable.csv(result.worklist()));
    PrintWorklist.Sheet sheet =
        new PrintWorklist.Sheet(
            result.evening(),
            corrections,
            result.worklist(),
            result.hidden(),
            new Boards(book, result.evening())::of);
    AtOnce.of(() -> print(sheet, Paper.A4, folder), () -> print(sheet, Paper.LETTER, folder));
    PondFiles.write(folder, result, book);
    return RaftPlots.write(
        folder.resolve("plots"), result.growth(), book.units(), new OnAllCores());
  }

  private static int print(PrintWorklist.Sheet sheet, Paper paper, Path folder) throws IOException {
    String name = "worklist-" + paper.name().toLowerCase(Locale.ROOT) + ".pdf";
    return PrintWorklist.print(sheet, paper, folder.resolve(name));
  }

  /** The boards of rafts as an evening ends, with the sites where a plant stands then. */
  private static final class Boards {
    private final CropBook book;
    private final LocalDate evening;
    private final WhoGrewWhere plants;

    Boards(CropBook book, LocalDate evening) {
      this.book = book;
      this.evening = evening;
      this.plants = WhoGrewWhere.of(book);
    }

    Optional<PrintWorklist.Board> of(String raft) {
      Instant end = book.farmDay().start(evening.plusDays(1)).minusNanos(1);
      return book.plantingsOn(raft, evening).stream()
          .findFirst()
          .flatMap(planting -> book.layout(planting.layout(), evening))
          .map(layout -> new PrintWorklist.Board(layout, plants.plantedSites(raft, end)));
    }
  }
}
