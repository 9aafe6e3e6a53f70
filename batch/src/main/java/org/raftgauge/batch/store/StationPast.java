// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.raftgauge.core.station.StationSign;

/** What the history's photos say of their station. */
public final class StationPast {
  private static final String QUERY =
      "SELECT p.*, avg(r.camera_height_mm) AS camera_height_mm,"
          + " avg(r.pose_error_mm) AS pose_error_mm FROM photos p"
          + " LEFT JOIN rafts r ON r.sha256 = p.sha256"
          + " AND lower(r.pose_source) IN ('markers', 'outline', 'slot')"
          + " WHERE p.station = ? AND p.taken_at IS NOT NULL"
          + " AND lower(p.measured_status) IN ('used', 'held')"
          + " GROUP BY p.sha256 ORDER BY p.sha256";

  private StationPast() {}

  /**
   * One photo's facts.
   *
   * @param takenAt when it was taken
   * @param values by sign, as far as seen; height and misfit are means over its rafts that were
   *     placed by something seen
   * @param blurCells blur of edges in parts of the picture, px; empty where not seen
   */
  public record Photo(
      OffsetDateTime takenAt, Map<StationSign, Double> values, List<OptionalDouble> blurCells) {

    /** Copies map and list. */
    public Photo {
      values = Map.copyOf(values);
      blurCells = List.copyOf(blurCells);
    }
  }

  /** Reads a station's photos, without those that are excluded, at their mended times. */
  static List<Photo> read(Connection database, String station, Corrections corrections)
      throws SQLException {
    List<Dated> photos = new ArrayList<>();
    try (PreparedStatement statement = database.prepareStatement(QUERY)) {
      statement.setString(1, station);
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          String sha256 = rows.getString("sha256");
          if (!corrections.excludes(sha256)) {
            Photo photo = photo(rows, corrections.shiftOf(sha256));
            photos.add(new Dated(photo, photo.takenAt().toString(), rows.getString("taken_at")));
          }
        }
      }
    }
    photos.sort(Comparator.comparing(Dated::takenAt).thenComparing(Dated::written));
    return photos.stream().map(Dated::photo).toList();
  }

  /** A photo with its mended time as text, and its time as it stands in the history. */
  private record Dated(Photo photo, String takenAt, String written) {}

  private static Photo photo(ResultSet row, Duration shift) throws SQLException {
    Map<StationSign, Double> values = new EnumMap<>(StationSign.class);
    for (StationSign sign : StationSign.values()) {
      String column = column(sign);
      if (!column.isEmpty()) {
        double value = row.getDouble(column);
        if (!row.wasNull()) {
          values.put(sign, value);
        }
      }
    }
    return new Photo(
        OffsetDateTime.parse(row.getString("taken_at")).plus(shift),
        values,
        WitnessColumns.cells(row.getString("edge_blur_cells_px")));
  }

  /** Returns the column of a sign; empty where only the past tells it. */
  private static String column(StationSign sign) {
    return switch (sign) {
      case SHARPNESS -> "sharpness";
      case EXPOSURE -> "exposure_clipped_fraction";
      case LIGHT_CAST -> "light_cast";
      case HEIGHT -> "camera_height_mm";
      case POSE_ERROR -> "pose_error_mm";
      case EDGE_BLUR -> "edge_blur_px";
      case HAZE -> "haze_fraction";
      case FOULING -> "";
      case VIGNETTING -> "vignetting_fraction";
      case LIGHT_ACROSS -> "light_across_ln";
      case LIGHT_DOWN -> "light_down_ln";
      case BOARD_LIGHT -> "board_light";
      case SHIFT_RIGHT -> "shift_right_px";
      case SHIFT_DOWN -> "shift_down_px";
      case TURN -> "turn_deg";
      case PAIR_ROWS -> "pair_rows_px";
    };
  }
}
