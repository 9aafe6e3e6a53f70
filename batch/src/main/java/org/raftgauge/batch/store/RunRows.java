// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The table of runs, and what a run says of its photos. */
final class RunRows {

  private RunRows() {}

  /** Settles photos and records their run; returns the number of photos. */
  static int settle(Connection database, List<Settled> photos, RunRecord run, Path folder)
      throws SQLException {
    for (Settled photo : photos) {
      settle(database, photo);
    }
    for (String sha256 : run.pictured()) {
      Database.update(
          database, "UPDATE photos SET pictured_run = ? WHERE sha256 = ?", run.run(), sha256);
    }
    Database.update(
        database,
        "INSERT INTO runs (run, started_at, version, folder, photos, published)"
            + " VALUES (?, ?, ?, ?, ?, 0)",
        run.run(),
        run.startedAt().toString(),
        run.version(),
        folder.toAbsolutePath().toString(),
        run.photos());
    return photos.size();
  }

  private static void settle(Connection database, Settled settled) throws SQLException {
    String sha256 = settled.photo().sha256();
    Database.update(
        database,
        "UPDATE photos SET status = ?, reason = ?, remedy = ? WHERE sha256 = ?",
        settled.photo().status().name().toLowerCase(Locale.ROOT),
        settled.photo().reason(),
        settled.photo().remedy(),
        sha256);
    for (int place = 0; place < settled.rafts().size(); place++) {
      Database.update(
          database,
          "UPDATE rafts SET settled = ?, settled_why = ? WHERE sha256 = ? AND place = ?",
          settled.rafts().get(place).kind().name().toLowerCase(Locale.ROOT),
          settled.rafts().get(place).why(),
          sha256,
          place);
    }
  }

  static Optional<Path> folder(Connection database, String run) throws SQLException {
    return Database.query(
            database,
            row -> Path.of(row.getString(1)),
            "SELECT folder FROM runs WHERE run = ? AND published = 1",
            run)
        .stream()
        .findFirst();
  }

  static List<RunRecord.Unpublished> unpublished(Connection database) throws SQLException {
    return Database.query(
        database,
        row -> new RunRecord.Unpublished(row.getString(1), Path.of(row.getString(2))),
        "SELECT run, folder FROM runs WHERE published = 0 ORDER BY run");
  }

  static Optional<Instant> latest(Connection database) throws SQLException {
    return Database.query(
            database,
            row -> OffsetDateTime.parse(row.getString(1)).toInstant(),
            "SELECT started_at FROM runs")
        .stream()
        .max(Comparator.naturalOrder());
  }
}
