// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.relief.HeightSource;
import org.raftgauge.core.site.SiteMeasure;

/** Reads photos back as they were measured. */
final class ReadMeasures {

  private ReadMeasures() {}

  /** Reads a photo by the hash of its bytes. */
  static Optional<Kept> bySha256(Connection database, String sha256) throws SQLException {
    try (PreparedStatement query =
        database.prepareStatement("SELECT * FROM photos WHERE sha256 = ?")) {
      query.setString(1, sha256);
      try (ResultSet row = query.executeQuery()) {
        return row.next() ? Optional.of(photo(database, row)) : Optional.empty();
      }
    }
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

  private static List<Kept> photos(Connection database, String sql, String... values)
      throws SQLException {
    List<Kept> photos = new ArrayList<>();
    try (PreparedStatement query = database.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        query.setString(i + 1, values[i]);
      }
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          photos.add(photo(database, row));
        }
      }
    }
    return photos;
  }

  /** Reads the photos of some days that show rafts, used or held, in the order of their hashes. */
  static List<Kept> byDays(Connection database, LocalDate first, LocalDate last)
      throws SQLException {
    String sql =
        "SELECT * FROM photos WHERE measured_status IN ('used', 'held')"
            + " AND substr(taken_at, 1, 10) BETWEEN ? AND ? ORDER BY sha256";
    return photos(database, sql, first.toString(), last.toString());
  }

  /** Reads the photos of some days that show a raft, used or held, in the order of their hashes. */
  static List<Kept> byRaftDays(Connection database, RaftDays days) throws SQLException {
    String sql =
        "SELECT DISTINCT photos.* FROM photos JOIN rafts USING (sha256)"
            + " WHERE raft = ? AND measured_status IN ('used', 'held')"
            + " AND substr(taken_at, 1, 10) BETWEEN ? AND ? ORDER BY sha256";
    return photos(database, sql, days.raft(), days.first().toString(), days.last().toString());
  }

  private static Kept photo(Connection database, ResultSet row) throws SQLException {
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
            rafts(database, sha256),
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

  private static List<RaftMeasure> rafts(Connection database, String sha256) throws SQLException {
    List<RaftMeasure> rafts = new ArrayList<>();
    try (PreparedStatement query =
        database.prepareStatement("SELECT * FROM rafts WHERE sha256 = ? ORDER BY place")) {
      query.setString(1, sha256);
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          rafts.add(raft(row, sites(database, sha256, row.getInt("place"))));
        }
      }
    }
    return rafts;
  }

  private static RaftMeasure raft(ResultSet row, List<SiteMeasure> sites) throws SQLException {
    return new RaftMeasure(
        Optional.ofNullable(row.getString("raft")),
        row.getString("slot"),
        row.getString("layout"),
        PoseSource.valueOf(row.getString("pose_source").toUpperCase(Locale.ROOT)),
        row.getDouble("pose_error_mm"),
        row.getDouble("mm_per_px"),
        row.getDouble("camera_height_mm"),
        row.getInt("half_turn_known") == 1,
        number(row, "canopy_cover"),
        number(row, "leftover_canopy_cm2"),
        sites,
        row.getDouble("quality"),
        row.getString("held"),
        list(row.getString("ruler_sites"), ";").stream().map(SiteId::parse).toList(),
        list(row.getString("notes"), "\n"));
  }

  private static List<String> list(String text, String separator) {
    return text.isEmpty() ? List.of() : Arrays.asList(text.split(separator, -1));
  }

  private static List<SiteMeasure> sites(Connection database, String sha256, int place)
      throws SQLException {
    List<SiteMeasure> sites = new ArrayList<>();
    try (PreparedStatement query =
        database.prepareStatement(
            "SELECT * FROM sites WHERE sha256 = ? AND place = ? ORDER BY rowid")) {
      query.setString(1, sha256);
      query.setInt(2, place);
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          sites.add(site(row));
        }
      }
    }
    return sites;
  }

  private static SiteMeasure site(ResultSet row) throws SQLException {
    return new SiteMeasure(
        SiteId.parse(row.getString("site")),
        number(row, "projected_area_cm2"),
        number(row, "projected_area_se_cm2"),
        number(row, "visible_area_cm2"),
        row.getInt("closed") == 1,
        row.getDouble("shared_outline_fraction"),
        row.getDouble("height_mm"),
        row.getDouble("parallax_factor"),
        shape(row),
        colour(row),
        row.getDouble("quality"),
        row.getString("held"),
        relief(row));
  }

  private static List<SiteMeasure.Relief> relief(ResultSet row) throws SQLException {
    String source = row.getString("height_seen_by");
    return source.isEmpty()
        ? List.of()
        : List.of(
            new SiteMeasure.Relief(
                HeightSource.valueOf(source.toUpperCase(Locale.ROOT)),
                row.getDouble("height_p95_mm"),
                row.getDouble("canopy_volume_cm3"),
                row.getDouble("height_seen_fraction")));
  }

  private static List<SiteMeasure.Shape> shape(ResultSet row) throws SQLException {
    return number(row, "equivalent_diameter_mm").isEmpty()
        ? List.of()
        : List.of(
            new SiteMeasure.Shape(
                row.getDouble("equivalent_diameter_mm"),
                row.getDouble("largest_diameter_mm"),
                row.getDouble("perimeter_mm"),
                row.getDouble("solidity"),
                row.getDouble("offset_x_mm"),
                row.getDouble("offset_y_mm")));
  }

  private static List<SiteMeasure.Colour> colour(ResultSet row) throws SQLException {
    return number(row, "lab_l").isEmpty()
        ? List.of()
        : List.of(
            new SiteMeasure.Colour(
                row.getDouble("lab_l"),
                row.getDouble("lab_a"),
                row.getDouble("lab_b"),
                row.getDouble("pale_fraction"),
                row.getDouble("dead_fraction")));
  }

  private static OptionalDouble number(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
