// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.relief.HeightSource;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Reads the rafts and sites of photos, all rafts in one query and all sites in another. A year of a
 * large farm is millions of rows: columns of sites are told by their places, empty texts come as
 * nulls, and what little there is to sort is sorted here.
 */
final class ReadRafts {
  private static final String RAFTS =
      "SELECT rafts.rowid AS raft_row, rafts.* FROM (%s) AS asked CROSS JOIN rafts USING (sha256)"
          + " ORDER BY asked.sha256";

  /**
   * The columns of a site, in the order in which {@link #site} reads them, then its raft's row and
   * its own.
   */
  private static final String SITES =
      "SELECT site, projected_area_cm2, projected_area_se_cm2, visible_area_cm2, closed,"
          + " shared_outline_fraction, height_mm, parallax_factor, sites.quality,"
          + " nullif(sites.held, ''),"
          + " equivalent_diameter_mm, largest_diameter_mm, perimeter_mm, solidity, offset_x_mm,"
          + " offset_y_mm, lab_l, lab_a, lab_b, pale_fraction, dead_fraction,"
          + " nullif(height_seen_by, ''), height_p95_mm, canopy_volume_cm3, height_seen_fraction,"
          + " rafts.rowid, sites.rowid"
          + " FROM (%s) AS asked CROSS JOIN rafts USING (sha256)"
          + " CROSS JOIN sites USING (sha256, place)";

  private static final int SHAPE = 11;
  private static final int COLOUR = 17;
  private static final int RELIEF = 22;
  private static final int RAFT = 26;
  private static final int ROW = 27;

  private final Map<String, SiteId> names = new HashMap<>();
  private final Map<Long, List<SiteMeasure>> sites = new HashMap<>();
  private final Map<String, List<Placed<RaftMeasure>>> rafts = new HashMap<>();

  /** The sites of the raft that is being read: those of a raft come together. */
  private final List<Placed<SiteMeasure>> ofRaft = new ArrayList<>();

  private long raftRow;

  /** Something at its place among others. */
  private record Placed<T>(long place, T what) {
    static <T> List<T> inOrder(List<Placed<T>> placed) {
      placed.sort(Comparator.comparingLong(Placed::place));
      return placed.stream().map(Placed::what).toList();
    }
  }

  private ReadRafts() {}

  /**
   * Reads.
   *
   * @param photos selects the photos
   * @param values its parameters
   * @return rafts in the order of their places, by the hash of the photo; none where it has none
   */
  static Map<String, List<RaftMeasure>> of(Connection database, String photos, String... values)
      throws SQLException {
    ReadRafts read = new ReadRafts();
    Database.each(database, read::takeSite, SITES.formatted(photos), (Object[]) values);
    read.endRaft();
    Database.each(database, read::takeRaft, RAFTS.formatted(photos), (Object[]) values);
    Map<String, List<RaftMeasure>> rafts = new HashMap<>();
    read.rafts.forEach((sha256, placed) -> rafts.put(sha256, Placed.inOrder(placed)));
    return rafts;
  }

  private void takeSite(ResultSet row) throws SQLException {
    long raft = row.getLong(RAFT);
    if (raft != raftRow) {
      endRaft();
      raftRow = raft;
    }
    ofRaft.add(new Placed<>(row.getLong(ROW), site(row)));
  }

  private void endRaft() {
    if (!ofRaft.isEmpty() && sites.put(raftRow, Placed.inOrder(ofRaft)) != null) {
      throw new IllegalStateException("the sites of raft row " + raftRow + " came in two parts");
    }
    ofRaft.clear();
  }

  private void takeRaft(ResultSet row) throws SQLException {
    List<SiteMeasure> own = sites.remove(row.getLong("raft_row"));
    RaftMeasure raft = raft(row, own == null ? List.of() : own);
    rafts
        .computeIfAbsent(row.getString("sha256"), photo -> new ArrayList<>(1))
        .add(new Placed<>(row.getLong("place"), raft));
  }

  private RaftMeasure raft(ResultSet row, List<SiteMeasure> sites) throws SQLException {
    return new RaftMeasure(
        Optional.ofNullable(row.getString("raft")),
        row.getString("slot"),
        row.getString("layout"),
        PoseSource.valueOf(row.getString("pose_source").toUpperCase(Locale.ROOT)),
        row.getDouble("pose_error_mm"),
        row.getDouble("mm_per_px"),
        row.getDouble("camera_height_mm"),
        row.getInt("half_turn_known") == 1,
        ReadMeasures.number(row, "canopy_cover"),
        ReadMeasures.number(row, "leftover_canopy_cm2"),
        sites,
        row.getDouble("quality"),
        row.getString("held"),
        list(row.getString("ruler_sites"), ";").stream().map(SiteId::parse).toList(),
        list(row.getString("notes"), "\n"),
        BorderText.read(row.getString("borders"), names));
  }

  private static List<String> list(String text, String separator) {
    return text.isEmpty() ? List.of() : Arrays.asList(text.split(separator, -1));
  }

  private SiteMeasure site(ResultSet row) throws SQLException {
    return new SiteMeasure(
        names.computeIfAbsent(row.getString(1), SiteId::parse),
        number(row, 2),
        number(row, 3),
        number(row, 4),
        row.getInt(5) == 1,
        row.getDouble(6),
        row.getDouble(7),
        row.getDouble(8),
        shape(row),
        colour(row),
        row.getDouble(9),
        Objects.requireNonNullElse(row.getString(10), ""),
        relief(row),
        0);
  }

  private static List<SiteMeasure.Shape> shape(ResultSet row) throws SQLException {
    OptionalDouble first = number(row, SHAPE);
    return first.isEmpty()
        ? List.of()
        : List.of(
            new SiteMeasure.Shape(
                first.getAsDouble(),
                row.getDouble(SHAPE + 1),
                row.getDouble(SHAPE + 2),
                row.getDouble(SHAPE + 3),
                row.getDouble(SHAPE + 4),
                row.getDouble(SHAPE + 5)));
  }

  private static List<SiteMeasure.Colour> colour(ResultSet row) throws SQLException {
    OptionalDouble first = number(row, COLOUR);
    return first.isEmpty()
        ? List.of()
        : List.of(
            new SiteMeasure.Colour(
                first.getAsDouble(),
                row.getDouble(COLOUR + 1),
                row.getDouble(COLOUR + 2),
                row.getDouble(COLOUR + 3),
                row.getDouble(COLOUR + 4)));
  }

  private static List<SiteMeasure.Relief> relief(ResultSet row) throws SQLException {
    String source = row.getString(RELIEF);
    return source == null
        ? List.of()
        : List.of(
            new SiteMeasure.Relief(
                HeightSource.valueOf(source.toUpperCase(Locale.ROOT)),
                row.getDouble(RELIEF + 1),
                row.getDouble(RELIEF + 2),
                row.getDouble(RELIEF + 3)));
  }

  private static OptionalDouble number(ResultSet row, int column) throws SQLException {
    double value = row.getDouble(column);
    return value == 0 && row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
