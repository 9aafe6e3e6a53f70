// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Brings a history file to the version that this program knows: {@code PRAGMA user_version}. */
final class Schema {
  /** The newest version; scripts {@code schema-1.sql} to {@code schema-VERSION.sql} lead to it. */
  static final int VERSION = 6;

  private Schema() {}

  /**
   * Runs the scripts that the file still lacks, all in one transaction. A file of an older version
   * is copied first, beside the backups.
   *
   * @param database open, in auto-commit mode
   * @param file where it is
   * @param steps told before the copy is made
   * @throws IOException if a newer program made the file, or the copy cannot be made
   */
  static void update(Connection database, Path file, Steps steps) throws SQLException, IOException {
    int version = version(database);
    if (version < 0) {
      throw new IOException(
          "its version is "
              + version
              + ", which no Raftgauge wrote; put back a copy of it, or move it away");
    }
    if (version > VERSION) {
      throw new IOException(
          "it was written by a newer Raftgauge (version "
              + version
              + " of the file, this one knows "
              + VERSION
              + "); use the newer program");
    }
    if (version > 0 && version < VERSION) {
      steps.before(Step.COPY_OLD_HISTORY);
      Backups.beside(file).keepOld(database, version);
    }
    update(database, VERSION);
  }

  /** Runs the scripts up to a version that the file still lacks. */
  static void update(Connection database, int to) throws SQLException, IOException {
    int version = version(database);
    database.setAutoCommit(false);
    try (Statement statement = database.createStatement()) {
      for (int next = version + 1; next <= to; next++) {
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

  static int version(Connection database) throws SQLException {
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
