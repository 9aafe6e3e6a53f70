// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;

/** Reads photos back as they were measured. */
final class ReadMeasures {

  private ReadMeasures() {}

  /** Reads a photo by the hash of its bytes. */
  static Optional<Kept> bySha256(Connection database, String sha256) throws SQLException {
    return photos(database, "SELECT * FROM photos WHERE sha256 = ?", sha256).stream().findFirst();
  }

  /** Reads the used photos that show a raft, in the order of their hashes. */
  static List<Kept> byRaft(Connection database, String raft) throws SQLException {
    String sql =
        "SELECT DISTINCT photos.* FROM photos JOIN rafts USING (sha256)"
            + " WHERE raft = ? AND measured_status = 'used' ORDER BY sha256";
    return photos(database, sql, raft);
  }

  /** Reads the photos of a path or folder; where there is none, those whose hash begins so. */
  static List<Kept> named(Connection database, String name) throws SQLException {
    if (name.endsWith("/")) {
      String sql =
          "SELECT * FROM photos WHERE substr(photo, 1, length(?)) = ? ORDER BY photo, sha256";
      return photos(database, sql, name, name);
    }
    List<Kept> byPath =
        photos(database, "SELECT * FROM photos WHERE photo = ? ORDER BY sha256", name);
    return byPath.isEmpty() && name.matches("[0-9a-f]{8,64}")
        ? photos(database, "SELECT * FROM photos WHERE sha256 GLOB ? ORDER BY sha256", name + "*")
        : byPath;
  }

  /**
   * Reads the photos whose path ends in the one given, from a slash on, or is the end of it; of a
   * folder, those in one whose path does so.
   */
  static List<Kept> endingIn(Connection database, String path) throws SQLException {
    String sql =
        path.endsWith("/")
            ? "SELECT * FROM photos WHERE instr('/' || photo, '/' || ?) > 0 ORDER BY photo, sha256"
            : "SELECT * FROM photos WHERE substr('/' || photo, -length('/' || ?1)) = '/' || ?1"
                + " OR substr('/' || ?1, -length('/' || photo)) = '/' || photo"
                + " ORDER BY photo, sha256";
    return photos(database, sql, path);
  }

  private static List<Kept> photos(Connection database, String sql, String... values)
      throws SQLException {
    Map<String, List<RaftMeasure>> rafts = ReadRafts.of(database, sql, values);
    List<Kept> photos = new ArrayList<>();
    Database.each(database, row -> photos.add(photo(rafts, row)), sql, (Object[]) values);
    return photos;
  }

  /**
   * Reads the photos of some days that show rafts, used or held, in the order of their hashes.
   *
   * @param days first and last
   * @param hashes the least, and the one that is too large
   */
  static List<Kept> byDays(Connection database, List<LocalDate> days, List<String> hashes)
      throws SQLException {
    String sql =
        "SELECT * FROM photos WHERE measured_status IN ('used', 'held')"
            + " AND substr(taken_at, 1, 10) BETWEEN ? AND ? AND sha256 >= ? AND sha256 < ?"
            + " ORDER BY sha256";
    return photos(
        database,
        sql,
        days.get(0).toString(),
        days.get(1).toString(),
        hashes.get(0),
        hashes.get(1));
  }

  /** Counts all photos. */
  static long count(Connection database) throws SQLException {
    return Database.query(database, row -> row.getLong(1), "SELECT count(*) FROM photos").get(0);
  }

  /** Returns the latest day of photos that show rafts, used or held, up to one. */
  static Optional<LocalDate> latestDay(Connection database, LocalDate notAfter)
      throws SQLException {
    String sql =
        "SELECT max(substr(taken_at, 1, 10)) FROM photos"
            + " WHERE measured_status IN ('used', 'held') AND substr(taken_at, 1, 10) <= ?";
    try (PreparedStatement query = database.prepareStatement(sql)) {
      query.setString(1, notAfter.toString());
      try (ResultSet row = query.executeQuery()) {
        return row.next()
            ? Optional.ofNullable(row.getString(1)).map(LocalDate::parse)
            : Optional.empty();
      }
    }
  }

  /** Reads the photos of some days that show a raft, used or held, in the order of their hashes. */
  static List<Kept> byRaftDays(Connection database, RaftDays days) throws SQLException {
    String sql =
        "SELECT DISTINCT photos.* FROM photos JOIN rafts USING (sha256)"
            + " WHERE raft = ? AND measured_status IN ('used', 'held')"
            + " AND substr(taken_at, 1, 10) BETWEEN ? AND ? ORDER BY sha256";
    return photos(database, sql, days.raft(), days.first().toString(), days.last().toString());
  }

  private static Kept photo(Map<String, List<RaftMeasure>> rafts, ResultSet row)
      throws SQLException {
    String sha256 = row.getString("sha256");
    PhotoMeasure measure =
        new PhotoMeasure(
            row.getString("photo"),
            sha256,
            row.getString("station"),
            Optional.ofNullable(row.getString("taken_at")).map(OffsetDateTime::parse),
            row.getString("clock_doubt"),
            PhotoStatus.valueOf(row.getString("measured_status").toUpperCase(Locale.ROOT)),
            row.getString("measured_reason"),
            row.getString("measured_remedy"),
            number(row, "sharpness"),
            number(row, "exposure_clipped_fraction"),
            number(row, "light_cast"),
            rafts.getOrDefault(sha256, List.of()),
            WitnessColumns.read(row));
    return new Kept(
        measure,
        new Origin(
            row.getString("settings"),
            row.getString("run"),
            row.getString("version"),
            row.getString("measuring_code")),
        Optional.ofNullable(row.getString("pictured_run")));
  }

  /** Returns a number; empty where there is none. */
  static OptionalDouble number(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
