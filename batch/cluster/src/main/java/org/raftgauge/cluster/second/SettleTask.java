// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.raftgauge.batch.run.Collected;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.Measured;
import org.raftgauge.batch.run.SettleRafts;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.first.Stored;
import org.raftgauge.cluster.rows.RecordRows;
import org.raftgauge.cluster.rows.ReportColumns;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.report.PhotosTable;
import org.raftgauge.core.report.RaftRows;
import org.raftgauge.core.report.RaftsTable;
import org.raftgauge.core.report.SitePlant;
import org.raftgauge.core.report.SitesTable;

/** Settles the photos of a group of rafts and makes their rows of the reports. */
final class SettleTask implements FlatMapGroupsFunction<String, Row, Row> {
  private static final long serialVersionUID = 1;

  /** Columns after those of {@link Stored}: round, known, and whether the run has the photo. */
  private static final int KNOWN = 4;

  private static final int IN_RUN = 5;

  private final Broadcast<BookFiles> book;
  private final Broadcast<List<Row>> doubts;

  SettleTask(Broadcast<BookFiles> book, Broadcast<List<Row>> doubts) {
    this.book = book;
    this.doubts = doubts;
  }

  @Override
  public Iterator<Row> call(String island, Iterator<Row> rows) {
    List<Measured> run = new ArrayList<>();
    List<PhotoMeasure> earlier = new ArrayList<>();
    while (rows.hasNext()) {
      Row row = rows.next();
      Measured measured = RecordRows.of(Stored.class).record(row).measured();
      if (row.getBoolean(IN_RUN)) {
        run.add(row.getBoolean(KNOWN) ? known(measured) : measured);
      } else {
        earlier.add(measured.measure());
      }
    }
    run.sort(Comparator.comparing(m -> m.measure().photo()));
    BookFiles.Opened opened = book.value().open();
    Farm farm = opened.book().farm();
    Collected collected =
        SettleRafts.settle(
            new SettleRafts.Photos(run, others(run, earlier)),
            Charted.by(doubts.value(), opened.corrections(), Instant.MAX),
            farm);
    return rows(collected, farm).stream().map(RecordRows.of(ReportRow.class)::row).iterator();
  }

  private static Measured known(Measured measured) {
    return new Measured(
        measured.measure(), measured.settings(), Measured.Source.HISTORY, false, "");
  }

  /** Leaves out copies of each other and of the run's photos. */
  private static List<PhotoMeasure> others(List<Measured> run, List<PhotoMeasure> earlier) {
    Set<String> hashes = new HashSet<>();
    run.forEach(m -> hashes.add(m.measure().sha256()));
    return earlier.stream()
        .sorted(Comparator.comparing(PhotoMeasure::photo))
        .filter(photo -> hashes.add(photo.sha256()))
        .toList();
  }

  private static List<ReportRow> rows(Collected collected, Farm farm) {
    List<ReportRow> rows = new ArrayList<>();
    Map<String, Set<Planting>> plantings = new HashMap<>();
    for (RaftRows raft : collected.rafts()) {
      String day = day(raft.photo(), farm);
      Set<Planting> all = new HashSet<>();
      List<List<String>> sites = ReportColumns.cells(SitesTable.csv(List.of(raft))).rows();
      for (int i = 0; i < sites.size(); i++) {
        Optional<Planting> planting = raft.sites().get(i).plant().map(SitePlant::planting);
        planting.ifPresent(all::add);
        rows.add(
            new ReportRow(
                "sites", planting.map(Cycles::of).orElse(Cycles.NONE), day, i, sites.get(i)));
      }
      List<String> cells = ReportColumns.cells(RaftsTable.csv(List.of(raft))).rows().get(0);
      rows.add(new ReportRow("rafts", Cycles.of(all), day, 0, cells));
      plantings.computeIfAbsent(raft.photo().photo(), p -> new HashSet<>()).addAll(all);
    }
    for (PhotoMeasure photo : collected.photos()) {
      List<String> cells = ReportColumns.cells(PhotosTable.csv(List.of(photo))).rows().get(0);
      String cycle = Cycles.of(plantings.getOrDefault(photo.photo(), Set.of()));
      rows.add(new ReportRow("photos", cycle, day(photo, farm), 0, cells));
    }
    return rows;
  }

  private static String day(PhotoMeasure photo, Farm farm) {
    Optional<OffsetDateTime> at = photo.takenAt();
    return at.map(t -> farm.evening(t).toString()).orElse(ReportRow.UNDATED);
  }
}
