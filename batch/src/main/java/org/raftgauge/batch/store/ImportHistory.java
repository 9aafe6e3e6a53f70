// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import org.raftgauge.core.table.CsvScan;

/**
 * Makes a history of what {@link History#export} wrote. The file is made beside its place, checked
 * and renamed there, so that it stands whole or not at all.
 */
public final class ImportHistory {
  private final Path folder;
  private final List<Listed> tables = new ArrayList<>();

  private record Listed(ExportedTable table, int schema) {}

  private ImportHistory(Path folder) {
    this.folder = folder;
  }

  /**
   * Imports.
   *
   * @param folder what was exported
   * @param file {@code history.db} to make; it is not there, or holds no photo
   * @return rows by table
   * @throws IOException if a file is not as it was exported, or the history cannot be made
   */
  public static List<ExportedTable> into(Path file, Path folder) throws IOException {
    ImportHistory work = new ImportHistory(folder);
    work.readList();
    work.checkHashes();
    Path draft = file.resolveSibling(".importing-" + file.getFileName());
    Files.deleteIfExists(draft);
    Files.deleteIfExists(draft.resolveSibling(draft.getFileName() + "-journal"));
    try {
      work.fill(draft);
      Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (SQLException e) {
      throw new IOException(folder + ": " + e.getMessage(), e);
    } finally {
      Files.deleteIfExists(draft);
    }
    return work.tables.stream().map(Listed::table).toList();
  }

  private void readList() throws IOException {
    CsvScan.read(
        folder.resolve(ExportHistory.LIST),
        ExportHistory.LIST_COLUMNS,
        cells -> {
          try {
            tables.add(
                new Listed(
                    new ExportedTable(cells.get(0), Long.parseLong(cells.get(1)), cells.get(2)),
                    Integer.parseInt(cells.get(3))));
          } catch (NumberFormatException e) {
            throw new IOException(
                folder.resolve(ExportHistory.LIST) + ": \"" + cells + "\" is not as exported", e);
          }
        });
    int schema = tables.isEmpty() ? 0 : tables.get(0).schema();
    if (schema < 1 || schema > Schema.VERSION) {
      throw new IOException(
          folder
              + ": it was exported by a newer Raftgauge, or is no export (schema "
              + schema
              + ", this one knows 1 to "
              + Schema.VERSION
              + ")");
    }
  }

  private void checkHashes() throws IOException {
    for (Listed each : tables) {
      Path file = folder.resolve(each.table().table() + ".csv");
      if (!each.table().table().matches("[a-z_]+") || !Files.isRegularFile(file)) {
        throw new IOException(file + " is missing; export the history again");
      }
      if (!hash(file).equals(each.table().sha256())) {
        throw new IOException(
            file + " is not as it was exported; copy it again, or export the history again");
      }
    }
  }

  private static String hash(Path file) throws IOException {
    MessageDigest digest = ExportHistory.digest();
    try (InputStream in = Files.newInputStream(file)) {
      byte[] part = new byte[1 << 16];
      for (int n = in.read(part); n >= 0; n = in.read(part)) {
        digest.update(part, 0, n);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private void fill(Path draft) throws SQLException, IOException {
    try (Connection database = Database.connect(draft)) {
      Schema.update(database, tables.get(0).schema());
      database.setAutoCommit(false);
      List<HistoryTable> known = HistoryTable.all(database);
      List<String> names = tables.stream().map(t -> t.table().table()).toList();
      if (!names.equals(known.stream().map(HistoryTable::name).toList())) {
        throw new IOException(
            folder.resolve(ExportHistory.LIST) + ": the tables of this schema are others");
      }
      for (HistoryTable table : known) {
        fill(database, table);
      }
      database.commit();
      database.setAutoCommit(true);
      Schema.update(database, Schema.VERSION);
      CheckHistory.Found found = CheckHistory.of(database);
      if (!found.damage().isEmpty()) {
        throw new IOException(folder + ": " + String.join("; ", found.damage()));
      }
    }
  }

  private void fill(Connection database, HistoryTable table) throws SQLException, IOException {
    String sql =
        "INSERT INTO "
            + table.name()
            + " ("
            + String.join(", ", table.names())
            + ") VALUES ("
            + table.columns().stream().map(c -> "?").collect(Collectors.joining(","))
            + ")";
    try (PreparedStatement insert = database.prepareStatement(sql)) {
      CsvScan.read(
          folder.resolve(table.name() + ".csv"),
          table.names(),
          cells -> {
            try {
              for (int i = 0; i < cells.size(); i++) {
                insert.setObject(i + 1, value(cells.get(i), table.columns().get(i)));
              }
              insert.executeUpdate();
            } catch (SQLException | NumberFormatException e) {
              throw new IOException(table.name() + ".csv: " + e.getMessage(), e);
            }
          });
    }
  }

  private static Object value(String cell, HistoryTable.Column column) {
    if (cell.isEmpty() && !(column.required() && column.type() == HistoryTable.Type.TEXT)) {
      return null;
    }
    return switch (column.type()) {
      case TEXT -> cell;
      case INTEGER -> Long.valueOf(cell);
      case REAL -> Double.valueOf(cell);
    };
  }
}
