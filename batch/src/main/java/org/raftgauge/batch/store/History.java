// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * The history of a book: everything measured so far, in {@code history.db}.
 *
 * <p>Safe to call from several threads; calls wait for each other. Every failure is an {@link
 * IOException} that names the file.
 */
public final class History implements AutoCloseable {
  private final Database database;
  private final Steps steps;

  private History(Database database, Steps steps) {
    this.database = database;
    this.steps = steps;
  }

  /**
   * Opens a history, and makes it where there is none.
   *
   * @param file {@code history.db}; its folder exists
   * @return the open history
   * @throws IOException if it cannot be read or written, or is no history of this program
   */
  public static History open(Path file) throws IOException {
    return open(file, Steps.NONE);
  }

  /**
   * Opens a history, and makes it where there is none.
   *
   * @param file {@code history.db}; its folder exists
   * @param steps told before each change
   * @return the open history
   * @throws IOException if it cannot be read or written, or is no history of this program
   */
  public static History open(Path file, Steps steps) throws IOException {
    return new History(Database.open(file, steps), steps);
  }

  /** Returns the photos as corrected by all that was entered so far. */
  public Measures measures() throws IOException {
    return measures(Instant.MAX);
  }

  /**
   * Returns the photos as corrected by some time.
   *
   * @param by what was entered at this moment or later is not looked at
   * @throws IOException if the file cannot be read
   */
  public Measures measures(Instant by) throws IOException {
    return new Measures(database, Corrections.of(corrections(), by));
  }

  /**
   * Finds a photo as it was measured, uncorrected.
   *
   * @param sha256 of its bytes
   * @return what it said, whenever it was measured
   * @throws IOException if the file cannot be read
   */
  public Optional<Kept> find(String sha256) throws IOException {
    return database.within(c -> ReadMeasures.bySha256(c, sha256));
  }

  /**
   * Finds photos by name, as they were measured.
   *
   * @param name a photo's path, a folder's with a slash at its end, or the first digits (8 or more)
   *     of the hash of a photo's bytes
   * @return those of that path or folder; where there is none, those whose hash begins so
   * @throws IOException if the file cannot be read
   */
  public List<Kept> named(String name) throws IOException {
    return database.within(c -> ReadMeasures.named(c, name));
  }

  /**
   * Finds photos by the end of their path, as they were measured.
   *
   * @param path the end of a photo's path or of a folder's with its slash, or a longer path
   * @throws IOException if the file cannot be read
   */
  public List<Kept> endingIn(String path) throws IOException {
    return database.within(c -> ReadMeasures.endingIn(c, path));
  }

  /** Returns every correction ever entered, in the order of their numbers. */
  public List<Correction> corrections() throws IOException {
    return database.within(CorrectionRows::read);
  }

  /**
   * Enters corrections, all or none.
   *
   * @param corrections their numbers are given here
   * @return the same with their numbers
   * @throws IOException if the file cannot be written
   */
  public List<Correction> correct(List<Correction> corrections) throws IOException {
    return database.within(c -> CorrectionRows.add(c, corrections));
  }

  /**
   * Saves photos, all or none. What there is of the same bytes gives way; where other settings made
   * it, it is kept as an earlier measure.
   *
   * @param photos as measured
   * @throws IOException if the file cannot be written
   */
  public void save(List<Kept> photos) throws IOException {
    if (photos.isEmpty()) {
      return;
    }
    steps.before(Step.SAVE_MEASURES);
    database.within(
        c -> {
          WriteMeasures.write(c, photos);
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
    steps.before(Step.SETTLE);
    database.within(c -> RunRows.settle(c, photos, run, folder));
  }

  /**
   * Notes that a run's folder stands in its place.
   *
   * @param run its id
   * @throws IOException if the file cannot be written
   */
  public void published(String run) throws IOException {
    steps.before(Step.NOTE_PUBLISHED);
    database.within(c -> Database.update(c, "UPDATE runs SET published = 1 WHERE run = ?", run));
  }

  /**
   * Says where a run was published.
   *
   * @param run its id
   * @return its folder as it was then, if it was published
   * @throws IOException if the file cannot be read
   */
  public Optional<Path> folderOf(String run) throws IOException {
    return database.within(c -> RunRows.folder(c, run));
  }

  /** Returns the runs of which it is not known that their folder stands, each with its folder. */
  public List<RunRecord.Unpublished> unpublished() throws IOException {
    return database.within(RunRows::unpublished);
  }

  /** Returns when the latest run so far started. */
  public Optional<Instant> latestRun() throws IOException {
    return database.within(RunRows::latest);
  }

  /**
   * Looks quickly through the whole file for damage.
   *
   * @throws IOException if it is damaged, with what to do
   */
  public void quickCheck() throws IOException {
    List<String> found = database.outside(c -> CheckHistory.pragma(c, "quick_check(1)"));
    if (!found.equals(List.of("ok"))) {
      throw new IOException(
          database.file()
              + ": the file is damaged ("
              + found.get(0).replace('\n', ' ')
              + "): "
              + HistoryFault.putBack(database.file()));
    }
  }

  /** Looks thoroughly through the whole file. */
  public CheckHistory.Found check() throws IOException {
    return database.outside(CheckHistory::of);
  }

  /**
   * Compares the measures of now with those before them of the same photos.
   *
   * @return sites that were measured by both, in a stable order
   * @throws IOException if the file cannot be read
   */
  public List<Remeasured> remeasured() throws IOException {
    return database.within(Remeasured::read);
  }

  /**
   * Writes the day's backup; the latest three days are kept.
   *
   * @param day the day
   * @return the copy
   * @throws IOException if it cannot be written
   */
  public Path backUp(LocalDate day) throws IOException {
    Backups backups = Backups.beside(database.file());
    return database.outside(c -> backups.write(c, day, steps));
  }

  /**
   * Copies the history to a file; a run may be at work meanwhile.
   *
   * @param to a file that is not there
   * @throws IOException if it cannot be written
   */
  public void copyTo(Path to) throws IOException {
    database.outside(
        c -> {
          Backups.copy(c, to);
          return to;
        });
  }

  /**
   * Writes everything as CSV files.
   *
   * @param folder an empty folder
   * @return rows by table
   * @throws IOException if a file cannot be written
   */
  public List<ExportedTable> export(Path folder) throws IOException {
    return database.outside(c -> ExportHistory.to(folder, c));
  }

  @Override
  public void close() throws IOException {
    database.close();
  }
}
