// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.sqlite.SQLiteConfig;

/**
 * An open history file. Work is done in transactions, one caller at a time; every failure is an
 * {@link IOException} that names the file and what to do.
 */
final class Database implements AutoCloseable {
  private static final int BUSY_MS = 10_000;

  private final Path file;
  private final Connection connection;

  private Database(Path file, Connection connection) {
    this.file = file;
    this.connection = connection;
  }

  /**
   * Opens a file, makes it where there is none, and brings it to this program's version.
   *
   * @param file the file; its folder exists
   * @param steps told before a copy of an older version is made
   * @throws IOException if it cannot be read or written, or is no history of this program
   */
  static Database open(Path file, Steps steps) throws IOException {
    try {
      Connection connection = connect(file);
      try {
        Schema.update(connection, file, steps);
      } catch (SQLException | IOException e) {
        connection.close();
        throw e;
      }
      return new Database(file, connection);
    } catch (SQLException | IOException e) {
      throw new IOException(HistoryFault.text(file, e), e);
    }
  }

  /** Connects to a file as it is. */
  static Connection connect(Path file) throws SQLException {
    Properties options = new Properties();
    // Nobody asks for the ids of new rows, and looking them up takes a statement a row.
    options.setProperty(SQLiteConfig.Pragma.JDBC_GET_GENERATED_KEYS.pragmaName, "false");
    Connection connection =
        DriverManager.getConnection("jdbc:sqlite:" + file.toAbsolutePath(), options);
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA foreign_keys = ON");
      statement.execute("PRAGMA busy_timeout = " + BUSY_MS);
      return connection;
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
  }

  Path file() {
    return file;
  }

  /** Returns a number that grows with every row changed through this connection or another. */
  long changes() throws IOException {
    return outside(
        c ->
            query(c, row -> row.getLong(1), "PRAGMA data_version").get(0)
                + query(c, row -> row.getLong(1), "SELECT total_changes()").get(0));
  }

  /** Does something in one transaction. */
  synchronized <T> T within(Work<T> work) throws IOException {
    try {
      connection.setAutoCommit(false);
      try {
        T result = work.with(connection);
        connection.commit();
        return result;
      } finally {
        connection.rollback();
        connection.setAutoCommit(true);
      }
    } catch (SQLException e) {
      throw new IOException(HistoryFault.text(file, e), e);
    }
  }

  /**
   * Reads two things at once, the second through a connection of its own.
   *
   * @return both, in order
   */
  synchronized <T> List<T> alongside(Work<T> first, Work<T> second) throws IOException {
    CompletableFuture<T> elsewhere = CompletableFuture.supplyAsync(() -> apart(second));
    try {
      T here = within(first);
      return List.of(here, elsewhere.join());
    } catch (CompletionException e) {
      if (e.getCause() instanceof UncheckedIOException failed) {
        throw failed.getCause();
      }
      throw e;
    } finally {
      elsewhere.exceptionally(failed -> null).join();
    }
  }

  private <T> T apart(Work<T> work) {
    try (Connection own = connect(file)) {
      own.setAutoCommit(false); // one state of the file for all that is read
      try {
        return work.with(own);
      } finally {
        own.rollback();
      }
    } catch (SQLException e) {
      throw new UncheckedIOException(new IOException(HistoryFault.text(file, e), e));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Does something outside of any transaction, such as a backup. */
  synchronized <T> T outside(Work<T> work) throws IOException {
    try {
      return work.with(connection);
    } catch (SQLException e) {
      throw new IOException(HistoryFault.text(file, e), e);
    }
  }

  /** Changes rows; returns how many. */
  static int update(Connection connection, String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      return statement.executeUpdate();
    }
  }

  /** Reads rows. */
  static <T> List<T> query(Connection connection, Row<T> row, String sql, Object... values)
      throws SQLException {
    List<T> all = new ArrayList<>();
    each(connection, rows -> all.add(row.of(rows)), sql, values);
    return all;
  }

  /** Goes through rows. */
  static void each(Connection connection, EachRow work, String sql, Object... values)
      throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          work.with(rows);
        }
      }
    }
  }

  @Override
  public synchronized void close() throws IOException {
    try {
      connection.close();
    } catch (SQLException e) {
      throw new IOException(HistoryFault.text(file, e), e);
    }
  }

  /** Works on an open file. */
  interface Work<T> {
    T with(Connection connection) throws SQLException, IOException;
  }

  /** Does something with one row. */
  interface EachRow {
    void with(ResultSet row) throws SQLException;
  }

  /** Reads one row. */
  interface Row<T> {
    T of(ResultSet row) throws SQLException;
  }
}
