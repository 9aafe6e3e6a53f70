// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/** The table of corrections; rows are only ever added. */
final class CorrectionRows {
  private static final String INSERT =
      "INSERT INTO corrections (correction, kind, entered_at, entered_by, reason, sha256, photo,"
          + " raft, to_raft, shift_s, undoes) VALUES (?,?,?,?,?,?,?,?,?,?,?)";

  private CorrectionRows() {}

  static List<Correction> read(Connection database) throws SQLException {
    return Database.query(
        database, CorrectionRows::correction, "SELECT * FROM corrections ORDER BY correction");
  }

  static List<Correction> add(Connection database, List<Correction> corrections)
      throws SQLException {
    int last =
        Database.query(
                database,
                row -> row.getInt(1),
                "SELECT coalesce(max(correction), 0) FROM corrections")
            .get(0);
    List<Correction> added = new ArrayList<>();
    for (Correction each : corrections) {
      Correction numbered = new Correction(last + added.size() + 1, each.entry(), each.change());
      insert(database, numbered);
      added.add(numbered);
    }
    return added;
  }

  private static void insert(Connection database, Correction each) throws SQLException {
    Columns columns = Columns.of(each.change());
    Database.update(
        database,
        INSERT,
        each.number(),
        columns.kind,
        each.entry().at().toString(),
        each.entry().by(),
        each.entry().reason(),
        columns.photo.sha256(),
        columns.photo.name(),
        columns.raft,
        columns.toRaft,
        columns.shiftS,
        columns.undoes);
  }

  private static Correction correction(ResultSet row) throws SQLException {
    return new Correction(
        row.getInt("correction"),
        new Correction.Entry(
            OffsetDateTime.parse(row.getString("entered_at")),
            row.getString("entered_by"),
            row.getString("reason")),
        change(row));
  }

  private static Correction.Change change(ResultSet row) throws SQLException {
    Correction.Photo photo = new Correction.Photo(row.getString("sha256"), row.getString("photo"));
    String kind = row.getString("kind");
    return switch (kind) {
      case "exclude" -> new Correction.Exclude(photo);
      case "move" -> new Correction.Move(photo, row.getString("raft"), row.getString("to_raft"));
      case "clock" -> new Correction.Clock(photo, Duration.ofSeconds(row.getLong("shift_s")));
      case "undo" -> new Correction.Undo(row.getInt("undoes"));
      default -> throw new SQLException("unknown kind of correction \"" + kind + "\"");
    };
  }

  /** The columns of a change. */
  private record Columns(
      String kind, Correction.Photo photo, String raft, String toRaft, long shiftS, int undoes) {
    private static final Correction.Photo NONE = new Correction.Photo("", "");

    static Columns of(Correction.Change change) {
      if (change instanceof Correction.Exclude exclude) {
        return new Columns("exclude", exclude.photo(), "", "", 0, 0);
      }
      if (change instanceof Correction.Move move) {
        return new Columns("move", move.photo(), move.raft(), move.toRaft(), 0, 0);
      }
      if (change instanceof Correction.Clock clock) {
        return new Columns("clock", clock.photo(), "", "", clock.shift().toSeconds(), 0);
      }
      return new Columns("undo", NONE, "", "", 0, ((Correction.Undo) change).number());
    }
  }
}
