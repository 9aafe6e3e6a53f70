// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Looks through a history for damage. */
public final class CheckHistory {

  private CheckHistory() {}

  /**
   * What was found.
   *
   * @param damage what is wrong, a line each; empty where the file is whole
   * @param rows number of rows by table
   */
  public record Found(List<String> damage, Map<String, Integer> rows) {

    /** Copies the list. */
    public Found {
      damage = List.copyOf(damage);
    }
  }

  /** Checks pages, indexes, links between tables, and that what belongs together is there. */
  static Found of(Connection database) throws SQLException {
    List<String> damage = new ArrayList<>();
    pragma(database, "integrity_check").stream().filter(l -> !l.equals("ok")).forEach(damage::add);
    if (!damage.isEmpty()) {
      return new Found(damage, Map.of());
    }
    damage.addAll(
        Database.query(
            database,
            row -> "a row of " + row.getString(1) + " belongs to nothing in " + row.getString(3),
            "PRAGMA foreign_key_check"));
    count(database, damage, "photos", "length(sha256) <> 64", "without the hash of their bytes");
    count(
        database,
        damage,
        "corrections",
        "kind <> 'undo' AND sha256 NOT IN (SELECT sha256 FROM photos)",
        "of photos that are not there");
    count(
        database,
        damage,
        "rafts",
        "NOT EXISTS (SELECT 1 FROM sites s WHERE s.sha256 = rafts.sha256 AND s.place = rafts.place)"
            + " AND held = ''",
        "that are not held and have no sites");
    Map<String, Integer> rows = new LinkedHashMap<>();
    for (HistoryTable table : HistoryTable.all(database)) {
      rows.put(table.name(), number(database, "SELECT count(*) FROM " + table.name()));
    }
    return new Found(damage, rows);
  }

  private static void count(
      Connection database, List<String> damage, String table, String where, String what)
      throws SQLException {
    int n = number(database, "SELECT count(*) FROM " + table + " WHERE " + where);
    if (n > 0) {
      damage.add(n + " " + table + " " + what);
    }
  }

  private static int number(Connection database, String sql) throws SQLException {
    return Database.query(database, row -> row.getInt(1), sql).get(0);
  }

  static List<String> pragma(Connection database, String name) throws SQLException {
    return Database.query(database, row -> row.getString(1), "PRAGMA " + name);
  }
}
