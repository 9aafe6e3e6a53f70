// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.raftgauge.core.table.Cell;
import org.raftgauge.core.table.CsvWriter;

/**
 * Writes a whole history as CSV: a file for each table, every number with all its digits, and
 * {@code tables.csv} with the number of rows and the hash of each. The same history gives the same
 * bytes.
 */
final class ExportHistory {
  static final String LIST = "tables.csv";
  static final List<String> LIST_COLUMNS = List.of("table", "rows", "sha256", "schema");

  private ExportHistory() {}

  /** Writes into an empty folder; all tables as they stand at one moment. */
  static List<ExportedTable> to(Path folder, Connection database) throws SQLException, IOException {
    database.setAutoCommit(false);
    try {
      List<ExportedTable> written = new ArrayList<>();
      for (HistoryTable table : HistoryTable.all(database)) {
        written.add(write(folder, database, table));
      }
      int schema = Schema.version(database);
      try (CsvWriter list = CsvWriter.to(folder.resolve(LIST), LIST_COLUMNS)) {
        for (ExportedTable each : written) {
          list.row(
              List.of(
                  Cell.text(each.table()),
                  Cell.whole(each.rows()),
                  Cell.text(each.sha256()),
                  Cell.whole(schema)));
        }
      }
      return written;
    } finally {
      database.rollback();
      database.setAutoCommit(true);
    }
  }

  private static ExportedTable write(Path folder, Connection database, HistoryTable table)
      throws SQLException, IOException {
    MessageDigest digest = digest();
    long rows = 0;
    String sql =
        "SELECT "
            + String.join(", ", table.names())
            + " FROM "
            + table.name()
            + " ORDER BY "
            + table.order();
    try (OutputStream file = Files.newOutputStream(folder.resolve(table.name() + ".csv"));
        CsvWriter csv =
            CsvWriter.to(
                new BufferedWriter(
                    new OutputStreamWriter(
                        new DigestOutputStream(file, digest), StandardCharsets.UTF_8)),
                table.names());
        PreparedStatement query = database.prepareStatement(sql);
        ResultSet row = query.executeQuery()) {
      while (row.next()) {
        csv.row(cells(row, table));
        rows++;
      }
    }
    return new ExportedTable(table.name(), rows, HexFormat.of().formatHex(digest.digest()));
  }

  private static List<Cell> cells(ResultSet row, HistoryTable table) throws SQLException {
    List<Cell> cells = new ArrayList<>();
    for (HistoryTable.Column column : table.columns()) {
      cells.add(cell(row, column));
    }
    return cells;
  }

  private static Cell cell(ResultSet row, HistoryTable.Column column) throws SQLException {
    Object value = row.getObject(column.name());
    if (value == null) {
      return Cell.blank();
    }
    boolean number = value instanceof Number;
    boolean fits =
        switch (column.type()) {
          case TEXT -> value instanceof String text && (column.required() || !text.isEmpty());
          case INTEGER, REAL -> number;
        };
    if (!fits) {
      throw new SQLException(
          "column " + column.name() + " holds \"" + value + "\", which no run writes");
    }
    return switch (column.type()) {
      case TEXT -> Cell.text((String) value);
      case INTEGER -> Cell.whole(((Number) value).longValue());
      case REAL -> Cell.exact(((Number) value).doubleValue());
    };
  }

  static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
