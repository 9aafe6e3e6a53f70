// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.raftgauge.core.station.StationSign;

/**
 * What the history's photos say of their station. A large farm's are read in the order in which
 * they lie in the file, and only the columns that tell something.
 */
public final class StationPast {
  /** The signs that a photo tells, in the order of their columns. */
  private static final List<StationSign> SIGNS =
      Arrays.stream(StationSign.values()).filter(sign -> !column(sign).isEmpty()).toList();

  /** The plus keeps the hashes' index out of it, which would jump about in the file. */
  private static final String QUERY =
      "SELECT p.sha256, p.taken_at, p.edge_blur_cells_px, "
          + SIGNS.stream().map(StationPast::column).collect(Collectors.joining(", "))
          + " FROM photos p LEFT JOIN rafts r ON r.sha256 = p.sha256"
          + " AND lower(r.pose_source) IN ('markers', 'outline', 'slot')"
          + " WHERE p.station = ? AND +p.sha256 >= ? AND +p.sha256 < ?"
          + " AND p.taken_at IS NOT NULL AND lower(p.measured_status) IN ('used', 'held')"
          + " GROUP BY p.rowid";

  private static final int CELLS = 3;

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

  /**
   * Reads a station's photos, without those that are excluded, at their mended times.
   *
   * @param station its name
   * @param corrections which photos are excluded, and whose times are mended
   * @param hashes the least, and the one that is too large
   */
  static List<Dated> read(
      Connection database, String station, Corrections corrections, List<String> hashes)
      throws SQLException {
    List<Dated> photos = new ArrayList<>();
    Database.each(
        database,
        row -> {
          String sha256 = row.getString(1);
          if (!corrections.excludes(sha256)) {
            String written = row.getString(2);
            OffsetDateTime at = OffsetDateTime.parse(written).plus(corrections.shiftOf(sha256));
            photos.add(new Dated(photo(row, at), at.toString(), written, sha256));
          }
        },
        QUERY,
        station,
        hashes.get(0),
        hashes.get(1));
    return photos;
  }

  /** Returns photos in the order of time. */
  static List<Photo> inOrder(List<Dated> photos) {
    return photos.stream()
        .sorted(
            Comparator.comparing(Dated::takenAt)
                .thenComparing(Dated::written)
                .thenComparing(Dated::sha256))
        .map(Dated::photo)
        .toList();
  }

  /** A photo with its mended time as text, its time as it stands in the history, and its hash. */
  record Dated(Photo photo, String takenAt, String written, String sha256) {}

  private static Photo photo(ResultSet row, OffsetDateTime takenAt) throws SQLException {
    Map<StationSign, Double> values = new EnumMap<>(StationSign.class);
    int column = CELLS;
    for (StationSign sign : SIGNS) {
      double value = row.getDouble(++column);
      if (value != 0 || !row.wasNull()) {
        values.put(sign, value);
      }
    }
    return new Photo(takenAt, values, WitnessColumns.cells(row.getString(CELLS)));
  }

  /** Returns the column of a sign; empty where only the past tells it. */
  private static String column(StationSign sign) {
    return switch (sign) {
      case SHARPNESS -> "p.sharpness";
      case EXPOSURE -> "p.exposure_clipped_fraction";
      case LIGHT_CAST -> "p.light_cast";
      case HEIGHT -> "avg(r.camera_height_mm)";
      case POSE_ERROR -> "avg(r.pose_error_mm)";
      case EDGE_BLUR -> "p.edge_blur_px";
      case HAZE -> "p.haze_fraction";
      case FOULING -> "";
      case VIGNETTING -> "p.vignetting_fraction";
      case LIGHT_ACROSS -> "p.light_across_ln";
      case LIGHT_DOWN -> "p.light_down_ln";
      case BOARD_LIGHT -> "p.board_light";
      case SHIFT_RIGHT -> "p.shift_right_px";
      case SHIFT_DOWN -> "p.shift_down_px";
      case TURN -> "p.turn_deg";
      case PAIR_ROWS -> "p.pair_rows_px";
    };
  }
}
