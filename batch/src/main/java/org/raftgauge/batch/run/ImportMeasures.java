// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static java.time.temporal.ChronoUnit.SECONDS;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.batch.store.BookLock;
import org.raftgauge.batch.store.ExportedTable;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.ImportHistory;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.batch.store.Origin;
import org.raftgauge.batch.store.RaftDays;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * Takes measures made elsewhere, in the format of {@code sites.csv}, into a book's history.
 *
 * <p>A photo measured elsewhere is known by the hash of its rows, so that the same rows twice add
 * nothing. What runs on this book measured at the same time is not doubled either.
 */
public final class ImportMeasures {
  private static final String HISTORY = "history.db";
  private static final String SETTINGS = "measured elsewhere";
  private static final String RUN = "import";
  private static final int BATCH = 500;

  private final BookReading book;
  private final Progress progress;

  /**
   * What came of an import.
   *
   * @param added photos that are new
   * @param sites their rows
   * @param known photos that were known
   * @param warnings what a person should know
   */
  public record Outcome(int added, int sites, int known, List<Problem> warnings) {

    /** Copies the list. */
    public Outcome {
      warnings = List.copyOf(warnings);
    }
  }

  /**
   * Prepares an import.
   *
   * @param book the book that knows the rafts, as read
   * @param progress is told of a wait
   */
  public ImportMeasures(BookReading book, Progress progress) {
    this.book = book;
    this.progress = progress;
  }

  /**
   * Imports a whole history.
   *
   * @param exported folder of an exported history
   * @param folder the book's folder
   * @param patience how long to wait for another run on the same book
   * @param progress is told of a wait
   * @return rows by table
   * @throws InputException if the book has a history already
   * @throws IOException if the folder is not as exported, or the history cannot be written
   */
  @SuppressWarnings("try") // the lock is held, not used
  public static List<ExportedTable> history(
      Path exported, Path folder, Duration patience, Progress progress)
      throws InputException, IOException {
    try (BookLock lock = BookLock.take(folder, patience, progress::waitingFor)) {
      Path file = folder.resolve(HISTORY);
      if (Files.exists(file)) {
        throw new InputException(
            List.of(
                new Problem(
                    "BOOK " + folder,
                    "has a history already",
                    "give a book without history.db, or move that file away")));
      }
      return ImportHistory.into(file, exported);
    }
  }

  /**
   * Imports.
   *
   * @param file the measures
   * @param folder the book's folder
   * @param patience how long to wait for another run on the same book
   * @return what came of it
   * @throws InputException with every problem of the file; nothing is written then
   * @throws IOException if the history cannot be written
   */
  @SuppressWarnings("try") // the lock is held, not used
  public Outcome run(Path file, Path folder, Duration patience) throws InputException, IOException {
    ReadSitesCsv.Read read = ReadSitesCsv.read(file, book);
    try (BookLock lock = BookLock.take(folder, patience, progress::waitingFor);
        History history = History.open(folder.resolve(HISTORY))) {
      List<PhotoMeasure> fresh = new ArrayList<>();
      Measures here = history.measures();
      int own = 0;
      for (PhotoMeasure photo : read.photos()) {
        if (measuredHere(here, photo)) {
          own++;
        } else if (history.find(photo.sha256()).isEmpty()) {
          fresh.add(photo);
        }
      }
      for (int i = 0; i < fresh.size(); i += BATCH) {
        history.save(
            fresh.subList(i, Math.min(i + BATCH, fresh.size())).stream()
                .map(photo -> Kept.fresh(photo, new Origin(SETTINGS, RUN, "", "")))
                .toList());
      }
      int sites =
          fresh.stream().flatMap(p -> p.rafts().stream()).mapToInt(r -> r.sites().size()).sum();
      List<Problem> warnings = new ArrayList<>(read.warnings());
      if (own > 0) {
        warnings.add(ownPhotos(file, own));
      }
      return new Outcome(fresh.size(), sites, read.photos().size() - fresh.size(), warnings);
    }
  }

  /** Says whether runs on this book saw every raft of a photo in that very second. */
  private static boolean measuredHere(Measures here, PhotoMeasure photo) throws IOException {
    OffsetDateTime at = photo.takenAt().orElseThrow();
    for (RaftMeasure raft : photo.rafts()) {
      // The day is that written in each photo's time, whose offset may be another.
      LocalDate day = at.toLocalDate();
      RaftDays days = new RaftDays(raft.raft().orElse(""), day.minusDays(1), day.plusDays(1));
      if (here.takenBetween(days).stream().noneMatch(k -> isOwn(k) && isOf(k, at.toInstant()))) {
        return false;
      }
    }
    return true;
  }

  private static boolean isOwn(Kept kept) {
    return !kept.origin().run().equals(RUN);
  }

  private static boolean isOf(Kept kept, Instant at) {
    Optional<Instant> taken = kept.measure().takenAt().map(OffsetDateTime::toInstant);
    return taken.filter(t -> t.truncatedTo(SECONDS).equals(at.truncatedTo(SECONDS))).isPresent();
  }

  private static Problem ownPhotos(Path file, int own) {
    String those = own == 1 ? "1 photo is one" : own + " photos are some";
    return Problem.warning(
        "SITES_CSV " + file,
        those + " that a run on this book measured itself, and its measures stay",
        "nothing is to be done; to see another program's measures of the same photos, import them"
            + " into a copy of the book without history.db");
  }
}
