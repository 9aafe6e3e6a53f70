// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The history of a book: everything measured so far, in {@code history.db}.
 *
 * <p>Safe to call from several threads; calls wait for each other. Every failure is an {@link
 * IOException} that names the file.
 */
public final class History implements AutoCloseable {
  private static final int BUSY_MS = 10_000;

  private final Path file;
  private final Connection database;

  private History(Path file, Connection database) {
    this.file = file;
    this.database = database;
  }

  /**
   * Opens a history, and makes it where there is none.
   *
   * @param file {@code history.db}; its folder exists
   * @return the open history
   * @throws IOException if it cannot be read or written, or is no history of this program
   */
  public static History open(Path file) throws IOException {
    try {
      Connection database = DriverManager.getConnection("jdbc:sqlite:" + file.toAbsolutePath());
      try (Statement statement = database.createStatement()) {
        statement.execute("PRAGMA foreign_keys = ON");
        statement.execute("PRAGMA busy_timeout = " + BUSY_MS);
        Schema.update(database);
      } catch (SQLException | IOException e) {
        database.close();
        throw e;
      }
      return new History(file, database);
    } catch (SQLException | IOException e) {
      throw new IOException(HistoryFault.text(file, e), e);
    }
  }

  /**
   * Finds a photo.
   *
   * @param sha256 of its bytes
   * @return what it said, whenever it was measured
   * @throws IOException if the file cannot be read
   */
  public Optional<Kept> find(String sha256) throws IOException {
    return guarded(() -> ReadMeasures.bySha256(database, sha256));
  }

  /**
   * Finds the used photos that show a raft.
   *
   * @param raft its id
   * @return what they said, in a stable order
   * @throws IOException if the file cannot be read
   */
  public List<Kept> findRaft(String raft) throws IOException {
    return guarded(() -> ReadMeasures.byRaft(database, raft));
  }

  /**
   * Finds the photos of some days that show rafts, used or held.
   *
   * @param first the first day, by the date written in the photo's time
   * @param last the last day
   * @return what they said, in a stable order
   * @throws IOException if the file cannot be read
   */
  public List<Kept> takenBetween(LocalDate first, LocalDate last) throws IOException {
    return guarded(() -> ReadMeasures.byDays(database, first, last));
  }

  /**
   * Finds the photos of some days that show a raft, used or held.
   *
   * @param days raft and days
   * @return what they said, in a stable order
   * @throws IOException if the file cannot be read
   */
  public List<Kept> takenBetween(RaftDays days) throws IOException {
    return guarded(() -> ReadMeasures.byRaftDays(database, days));
  }

  /**
   * Finds the photos whose measure of a raft counts for their evening.
   *
   * @param raft its id
   * @return what they said, in a stable order
   * @throws IOException if the file cannot be read
   */
  public List<Kept> countedRaft(String raft) throws IOException {
    return guarded(() -> ReadMeasures.counted(database, raft));
  }

  /**
   * Reads what a station's photos say of it.
   *
   * @param station its name
   * @return its photos in the order of time
   * @throws IOException if the file cannot be read
   */
  public List<StationPast.Photo> stationPast(String station) throws IOException {
    return guarded(() -> StationPast.read(database, station));
  }

  /**
   * Saves photos, all or none; what there is of the same bytes gives way.
   *
   * @param photos as measured
   * @throws IOException if the file cannot be written
   */
  public void save(List<Kept> photos) throws IOException {
    guarded(
        () -> {
          WriteMeasures.write(database, photos);
          return photos.size();
        });
  }

  /**
   * Settles which photos count and records the run, all or nothing; the run is not yet published.
   *
   * @param photos photos with their final say
   * @param run the run
   * @param folder where it will be published
   * @throws IOException if the file cannot be written
   */
  public void settle(List<Settled> photos, RunRecord run, Path folder) throws IOException {
    guarded(
        () -> {
          for (Settled photo : photos) {
            settle(photo);
          }
          for (String sha256 : run.pictured()) {
            update("UPDATE photos SET pictured_run = ? WHERE sha256 = ?", run.run(), sha256);
          }
          return record(run, folder);
        });
  }

  /**
   * Notes that a run's folder stands in its place.
   *
   * @param run its id
   * @throws IOException if the file cannot be written
   */
  public void published(String run) throws IOException {
    guarded(() -> update("UPDATE runs SET published = 1 WHERE run = ?", run));
  }

  /**
   * Says where a run was published.
   *
   * @param run its id
   * @return its folder as it was then, if it was published
   * @throws IOException if the file cannot be read
   */
  public Optional<Path> folderOf(String run) throws IOException {
    return guarded(
        () -> {
          try (PreparedStatement query =
              database.prepareStatement(
                  "SELECT folder FROM runs WHERE run = ? AND published = 1")) {
            query.setString(1, run);
            try (ResultSet row = query.executeQuery()) {
              return row.next() ? Optional.of(Path.of(row.getString(1))) : Optional.empty();
            }
          }
        });
  }

  @Override
  public void close() throws IOException {
    try {
      database.close();
    } catch (SQLException e) {
      throw new IOException(HistoryFault.text(file, e), e);
    }
  }

  private void settle(Settled settled) throws SQLException {
    String sha256 = settled.photo().sha256();
    update(
        "UPDATE photos SET status = ?, reason = ?, remedy = ? WHERE sha256 = ?",
        settled.photo().status().name().toLowerCase(Locale.ROOT),
        settled.photo().reason(),
        settled.photo().remedy(),
        sha256);
    for (int place = 0; place < settled.rafts().size(); place++) {
      update(
          "UPDATE rafts SET settled = ?, settled_why = ? WHERE sha256 = ? AND place = " + place,
          settled.rafts().get(place).kind().name().toLowerCase(Locale.ROOT),
          settled.rafts().get(place).why(),
          sha256);
    }
  }

  private int record(RunRecord run, Path folder) throws SQLException {
    String sql =
        "INSERT INTO runs (run, started_at, version, folder, photos, published)"
            + " VALUES (?, ?, ?, ?, "
            + run.photos()
            + ", 0)";
    return update(
        sql,
        run.run(),
        run.startedAt().toString(),
        run.version(),
        folder.toAbsolutePath().toString());
  }

  private int update(String sql, String... values) throws SQLException {
    try (PreparedStatement statement = database.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setString(i + 1, values[i]);
      }
      return statement.executeUpdate();
    }
  }

  /** Does something in one transaction, one caller at a time. */
  private synchronized <T> T guarded(Work<T> work) throws IOException {
    try {
      database.setAutoCommit(false);
      try {
        T result = work.run();
        database.commit();
        return result;
      } finally {
        database.rollback();
        database.setAutoCommit(true);
      }
    } catch (SQLException e) {
      throw new IOException(HistoryFault.text(file, e), e);
    }
  }

  private interface Work<T> {
    T run() throws SQLException;
  }
}
