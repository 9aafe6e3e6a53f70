// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What the history's photos say of their station; read only, so that it never waits for a run. */
public final class StationPast {
  private static final String QUERY =
      "SELECT p.taken_at, p.sharpness, p.exposure_clipped_fraction, p.light_cast,"
          + " (SELECT avg(r.camera_height_mm) FROM rafts r WHERE r.sha256 = p.sha256"
          + "   AND lower(r.pose_source) IN ('markers', 'outline', 'slot')) AS height_mm,"
          + " (SELECT avg(r.pose_error_mm) FROM rafts r WHERE r.sha256 = p.sha256"
          + "   AND lower(r.pose_source) IN ('markers', 'outline', 'slot')) AS pose_error_mm"
          + " FROM photos p WHERE p.station = ? AND p.taken_at IS NOT NULL"
          + " AND lower(p.measured_status) IN ('used', 'held') ORDER BY p.taken_at, p.sha256";

  private StationPast() {}

  /**
   * One photo's facts.
   *
   * @param takenAt when it was taken
   * @param sharpness 0..1
   * @param exposureClippedFraction 0..1
   * @param lightCast 0..1
   * @param cameraHeightMm mean over its rafts that were placed by something seen, mm
   * @param poseErrorMm likewise, mm
   */
  public record Photo(
      OffsetDateTime takenAt,
      OptionalDouble sharpness,
      OptionalDouble exposureClippedFraction,
      OptionalDouble lightCast,
      OptionalDouble cameraHeightMm,
      OptionalDouble poseErrorMm) {}

  /**
   * Reads a station's photos.
   *
   * @param file {@code history.db}, which exists
   * @param station the station's name
   * @return its photos in the order of time
   * @throws IOException if the file cannot be read
   */
  public static List<Photo> read(Path file, String station) throws IOException {
    String url = "jdbc:sqlite:" + file.toAbsolutePath().toUri() + "?mode=ro";
    try (Connection database = DriverManager.getConnection(url);
        PreparedStatement statement = database.prepareStatement(QUERY)) {
      statement.setString(1, station);
      try (ResultSet rows = statement.executeQuery()) {
        List<Photo> photos = new ArrayList<>();
        while (rows.next()) {
          photos.add(
              new Photo(
                  OffsetDateTime.parse(rows.getString(1)),
                  number(rows, 2),
                  number(rows, 3),
                  number(rows, 4),
                  number(rows, 5),
                  number(rows, 6)));
        }
        return photos;
      }
    } catch (SQLException e) {
      throw new IOException(file + ": " + e.getMessage(), e);
    }
  }

  private static OptionalDouble number(ResultSet rows, int column) throws SQLException {
    double value = rows.getDouble(column);
    return rows.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
