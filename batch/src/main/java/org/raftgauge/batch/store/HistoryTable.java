// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * A table of the history as it is exported: in an order in which rows can be put back.
 *
 * @param name its name
 * @param columns its columns in order
 */
record HistoryTable(String name, List<Column> columns) {
  // What others refer to comes first.
  private static final List<String> NAMES =
      List.of(
          "runs",
          "photos",
          "rafts",
          "sites",
          "corrections",
          "earlier_photos",
          "earlier_rafts",
          "earlier_sites");

  /** Copies the list. */
  HistoryTable {
    columns = List.copyOf(columns);
  }

  /**
   * A column.
   *
   * @param name its name
   * @param type what it holds
   * @param required whether it holds something in every row; text that is not required is never
   *     empty, so that an empty cell can stand for nothing
   */
  record Column(String name, Type type, boolean required) {}

  /** What a column holds. */
  enum Type {
    /** Any text. */
    TEXT,
    /** A whole number. */
    INTEGER,
    /** A number. */
    REAL
  }

  /** Returns the tables of a history, of whatever version. */
  static List<HistoryTable> all(Connection database) throws SQLException {
    List<HistoryTable> tables = new ArrayList<>();
    for (String name : NAMES) {
      List<Column> columns =
          Database.query(
              database,
              row ->
                  new Column(
                      row.getString("name"),
                      Type.valueOf(row.getString("type")),
                      row.getInt("notnull") == 1 || row.getInt("pk") > 0),
              "SELECT * FROM pragma_table_info(?)",
              name);
      if (!columns.isEmpty()) {
        tables.add(new HistoryTable(name, columns));
      }
    }
    return tables;
  }

  /** Returns the columns' names. */
  List<String> names() {
    return columns.stream().map(Column::name).toList();
  }

  /** Returns how its rows are ordered: by what they belong to, then as they were written. */
  String order() {
    return switch (name) {
      case "runs" -> "run";
      case "photos" -> "sha256";
      case "corrections" -> "correction";
      case "earlier_photos" -> "measure";
      case "earlier_rafts", "earlier_sites" -> "measure, place, rowid";
      default -> "sha256, place, rowid";
    };
  }
}
