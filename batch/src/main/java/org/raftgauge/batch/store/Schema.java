// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Brings a history file to the version that this program knows: {@code PRAGMA user_version}. */
final class Schema {
  /** The newest version; scripts {@code schema-1.sql} to {@code schema-VERSION.sql} lead to it. */
  static final int VERSION = 4;

  private Schema() {}

  /**
   * Runs the scripts that the file still lacks, all in one transaction.
   *
   * @param database open, in auto-commit mode
   * @throws IOException if a newer program made the file
   */
  static void update(Connection database) throws SQLException, IOException {
    int version = version(database);
    if (version > VERSION) {
      throw new IOException(
          "it was written by a newer Raftgauge (version "
              + version
              + " of the file, this one knows "
              + VERSION
              + "); use the newer program");
    }
    database.setAutoCommit(false);
    try (Statement statement = database.createStatement()) {
      for (int next = version + 1; next <= VERSION; next++) {
        for (String part : script(next).replaceAll("--[^\n]*", "").split(";", -1)) {
          if (!part.isBlank()) {
            statement.execute(part);
          }
        }
        statement.execute("PRAGMA user_version = " + next);
      }
      database.commit();
    } finally {
      database.rollback();
      database.setAutoCommit(true);
    }
  }

  private static int version(Connection database) throws SQLException {
    try (Statement statement = database.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA user_version")) {
      row.next();
      return row.getInt(1);
    }
  }

  private static String script(int version) throws IOException {
    try (InputStream in = Schema.class.getResourceAsStream("schema-" + version + ".sql")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
