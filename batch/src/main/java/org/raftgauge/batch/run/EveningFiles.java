// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.batch.plot.RaftPlots;
import org.raftgauge.batch.print.Paper;
import org.raftgauge.batch.print.PrintWorklist;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.EveningResult;
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
            raft -> board(raft, result, book));
    for (Paper paper : new Paper[] {Paper.A4, Paper.LETTER}) {
      String name = "worklist-" + paper.name().toLowerCase(Locale.ROOT) + ".pdf";
      PrintWorklist.print(sheet, paper, folder.resolve(name));
    }
    PondFiles.write(folder, result, book);
    return RaftPlots.write(folder.resolve("plots"), result.growth(), book.units());
  }

  private static Optional<PrintWorklist.Board> board(
      String raft, EveningResult result, CropBook book) {
    LocalDate evening = result.evening();
    return book.plantingsOn(raft, evening).stream()
        .findFirst()
        .flatMap(planting -> book.layout(planting.layout(), evening))
        .map(layout -> new PrintWorklist.Board(layout, planted(raft, evening, book)));
  }

  /** Returns the sites of a raft where a plant stands as an evening ends. */
  private static Set<SiteId> planted(String raft, LocalDate evening, CropBook book) {
    Instant end = book.farmDay().start(evening.plusDays(1)).minusNanos(1);
    return book.plants().stream()
        .flatMap(life -> life.stays().stream())
        .filter(stay -> stay.planting().raft().equals(raft) && stay.holdsAt(end))
        .map(PlantLife.Stay::site)
        .collect(Collectors.toSet());
  }
}
