// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.evening;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.raftgauge.batch.forecast.ForecastOfEvening;
import org.raftgauge.batch.run.BookLooks;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.ForecastSource;
import org.raftgauge.batch.run.JudgeHistory;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.History;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.rows.RecordRows;
import org.raftgauge.cluster.rows.ReportColumns;
import org.raftgauge.cluster.second.Charted;
import org.raftgauge.cluster.second.Cycles;
import org.raftgauge.cluster.second.PhotosAtHand;
import org.raftgauge.cluster.second.ReportRow;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.SiteLook;

/** Judges a block of evenings from their photos, as an office computer would from its history. */
final class JudgeTask implements FlatMapGroupsFunction<Integer, Row, Row> {
  private static final long serialVersionUID = 1;

  private final Broadcast<BookFiles> book;
  private final Broadcast<List<Row>> doubts;
  private final Broadcast<Blocks> blocks;

  JudgeTask(Broadcast<BookFiles> book, Broadcast<List<Row>> doubts, Broadcast<Blocks> blocks) {
    this.book = book;
    this.doubts = doubts;
    this.blocks = blocks;
  }

  @Override
  public Iterator<Row> call(Integer block, Iterator<Row> photos) throws IOException {
    BookFiles.Opened opened = book.value().open();
    Farm farm = opened.book().farm();
    List<ReportRow> rows = new ArrayList<>();
    try (PhotosAtHand hand = PhotosAtHand.of(photos, opened)) {
      JudgeHistory.Sources sources = sources(hand.history(), opened, Instant.MAX);
      ForecastSource forecasts =
          new ForecastOfEvening(farm.book(), opened.folder(), looks(hand.history(), opened));
      for (LocalDate evening : blocks.value().evenings(block)) {
        EveningReports.of(JudgeHistory.of(sources, evening, forecasts))
            .forEach((report, csv) -> add(report, csv, farm, evening, rows));
      }
    }
    return rows.stream().map(RecordRows.of(ReportRow.class)::row).iterator();
  }

  private JudgeHistory.Sources sources(History history, BookFiles.Opened opened, Instant by)
      throws IOException {
    return new JudgeHistory.Sources(
        history.measures(by),
        opened.book().farm(),
        Charted.by(doubts.value(), opened.corrections(), by));
  }

  private ForecastOfEvening.Looks looks(History history, BookFiles.Opened opened) {
    return new ForecastOfEvening.Looks() {
      @Override
      public List<SiteLook> between(CropBook known, BookLooks.Evenings evenings)
          throws IOException {
        return BookLooks.between(sources(history, opened, evenings.correctedBy()), known, evenings);
      }

      @Override
      public List<Correction> entered() {
        return opened.corrections();
      }
    };
  }

  private static void add(
      String report, String csv, Farm farm, LocalDate evening, List<ReportRow> rows) {
    ReportColumns.Cells cells = ReportColumns.cells(csv);
    int raft = cells.header().indexOf("raft");
    int site = cells.header().indexOf("site");
    int place = 0;
    for (List<String> row : cells.rows()) {
      String cycle =
          Cycles.on(farm, evening, raft < 0 ? "" : row.get(raft), site < 0 ? "" : row.get(site));
      rows.add(new ReportRow(report, cycle, evening.toString(), place++, row));
    }
  }
}
