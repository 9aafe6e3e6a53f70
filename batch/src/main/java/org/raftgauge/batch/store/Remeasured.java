// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A site of a photo that was measured twice: by another program or book before, and as it counts
 * now.
 *
 * @param photo the photo's path
 * @param sha256 of its bytes
 * @param raft the raft's id; empty where nothing told it
 * @param site the site
 * @param before the measure before the one of now
 * @param now the measure of now
 */
public record Remeasured(
    String photo, String sha256, String raft, String site, Made before, Made now) {
  // The measure before the one of now is the last that gave way.
  private static final String PAIRS =
      "SELECT p.photo, p.sha256, coalesce(%1$s.raft, '') AS raft, %2$s.site,"
          + " e.version AS v0, e.measuring_code AS c0, es.projected_area_cm2 AS a0,"
          + " es.projected_area_se_cm2 AS s0, p.version AS v1, p.measuring_code AS c1,"
          + " s.projected_area_cm2 AS a1, s.projected_area_se_cm2 AS s1"
          + " FROM photos p JOIN earlier_photos e ON e.measure ="
          + " (SELECT max(measure) FROM earlier_photos x WHERE x.sha256 = p.sha256) ";
  private static final String BEFORE =
      String.format(PAIRS, "er", "es")
          + "JOIN earlier_rafts er ON er.measure = e.measure"
          + " JOIN earlier_sites es ON es.measure = e.measure AND es.place = er.place"
          + " LEFT JOIN rafts r ON r.sha256 = p.sha256 AND r.raft IS er.raft"
          + " AND (er.raft IS NOT NULL OR r.place = er.place)"
          + " LEFT JOIN sites s ON s.sha256 = r.sha256 AND s.place = r.place AND s.site = es.site";
  private static final String ONLY_NOW =
      String.format(PAIRS, "r", "s")
          + "JOIN rafts r ON r.sha256 = p.sha256"
          + " JOIN sites s ON s.sha256 = r.sha256 AND s.place = r.place"
          + " LEFT JOIN earlier_rafts er ON er.measure = e.measure AND er.raft IS r.raft"
          + " AND (r.raft IS NOT NULL OR r.place = er.place)"
          + " LEFT JOIN earlier_sites es"
          + " ON es.measure = e.measure AND es.place = er.place AND es.site = s.site"
          + " WHERE es.site IS NULL";

  /**
   * A measure of the site.
   *
   * @param version the program's version; empty where not known
   * @param measuringCode hash of the code that measures; empty where not known
   * @param areaCm2 projected area, cm2; absent where held or not seen
   * @param seCm2 its standard error, cm2
   */
  public record Made(
      String version, String measuringCode, OptionalDouble areaCm2, OptionalDouble seCm2) {}

  /** Returns the change of the area over the area before, where both are there and not 0. */
  public OptionalDouble change() {
    boolean both = before.areaCm2().isPresent() && now.areaCm2().isPresent();
    return both && before.areaCm2().getAsDouble() > 0
        ? OptionalDouble.of(now.areaCm2().getAsDouble() / before.areaCm2().getAsDouble() - 1)
        : OptionalDouble.empty();
  }

  static List<Remeasured> read(Connection database) throws SQLException {
    return Database.query(
        database, Remeasured::of, BEFORE + " UNION ALL " + ONLY_NOW + " ORDER BY 1, 2, 3, 4");
  }

  private static Remeasured of(ResultSet row) throws SQLException {
    return new Remeasured(
        row.getString("photo"),
        row.getString("sha256"),
        row.getString("raft"),
        row.getString("site"),
        made(row, 0),
        made(row, 1));
  }

  private static Made made(ResultSet row, int which) throws SQLException {
    return new Made(
        row.getString("v" + which),
        row.getString("c" + which),
        number(row, "a" + which),
        number(row, "s" + which));
  }

  private static OptionalDouble number(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
