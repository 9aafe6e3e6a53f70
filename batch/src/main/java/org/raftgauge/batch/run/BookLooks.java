// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.measure.PhotoMeasure;

/** Reads from a book's history what photos that count said, each board the right way round. */
public final class BookLooks {
  /** Days before and after any photo. */
  private static final LocalDate FIRST = LocalDate.of(1900, 1, 1);

  private static final LocalDate LAST = LocalDate.of(9000, 1, 1);

  private BookLooks() {}

  /**
   * Reads.
   *
   * @param book the crop book as read
   * @param folder of the book
   * @param evening photos of later evenings are left out
   * @return looks in a stable order; none where there is no history
   * @throws IOException if the history cannot be read
   */
  public static List<SiteLook> upTo(CropBook book, Path folder, LocalDate evening)
      throws IOException {
    return between(book, folder, new Evenings(FIRST, evening, Instant.MAX));
  }

  /**
   * Reads every correction that was ever entered into a book's history.
   *
   * @param folder of the book
   * @return in the order of their numbers; none where there is no history
   * @throws IOException if the history cannot be read
   */
  public static List<Correction> corrections(Path folder) throws IOException {
    Path file = folder.resolve("history.db");
    if (!Files.exists(file)) {
      return List.of();
    }
    try (History history = History.open(file)) {
      return history.corrections();
    }
  }

  /**
   * Evenings, both ends too.
   *
   * @param first the first
   * @param last the last
   * @param correctedBy corrections that were entered at this moment or later are not looked at
   */
  public record Evenings(LocalDate first, LocalDate last, Instant correctedBy) {

    /** Returns all evenings. */
    public static Evenings all() {
      return new Evenings(FIRST, LAST, Instant.MAX);
    }

    /** Returns the same evenings as corrected by another moment. */
    public Evenings correctedBy(Instant by) {
      return new Evenings(first, last, by);
    }
  }

  /**
   * Reads some evenings.
   *
   * @param book the crop book as read
   * @param folder of the book
   * @param evenings which
   * @return looks in a stable order; none where there is no history
   * @throws IOException if the history cannot be read
   */
  public static List<SiteLook> between(CropBook book, Path folder, Evenings evenings)
      throws IOException {
    Path file = folder.resolve("history.db");
    if (!Files.exists(file)) {
      return List.of();
    }
    Farm farm = new BookFarm(book, "");
    try (History history = History.open(file)) {
      Measures measures = history.measures(evenings.correctedBy());
      return between(farm, measures, StationDoubts.of(measures, farm), evenings);
    }
  }

  /**
   * Reads some evenings of measures that are at hand.
   *
   * @param measures everything measured, as corrected
   * @param book the crop book as known
   * @param evenings which
   * @return looks in a stable order
   * @throws IOException if the history cannot be read
   */
  public static List<SiteLook> between(Measures measures, CropBook book, Evenings evenings)
      throws IOException {
    Farm farm = new BookFarm(book, "");
    Measures then = measures.correctedBy(evenings.correctedBy());
    return between(farm, then, StationDoubts.of(then, farm), evenings);
  }

  /**
   * Reads some evenings of a history whose stations were charted elsewhere.
   *
   * @param sources what is known
   * @param book the crop book as known
   * @param evenings which
   * @return looks in a stable order
   * @throws IOException if the history cannot be read
   */
  public static List<SiteLook> between(
      JudgeHistory.Sources sources, CropBook book, Evenings evenings) throws IOException {
    Farm farm = new BookFarm(book, "");
    StationDoubts doubts = StationDoubts.of(sources.doubts(), farm);
    return between(farm, sources.measures(), doubts, evenings);
  }

  private static List<SiteLook> between(
      Farm farm, Measures measures, StationDoubts doubts, Evenings evenings) throws IOException {
    return CollectSeen.of(photos(measures, farm, evenings), doubts, farm).sites();
  }

  /** Returns the photos of some evenings, in the order of their hashes. */
  static List<PhotoMeasure> photos(Measures measures, Farm farm, Evenings evenings)
      throws IOException {
    LocalDate evening = evenings.last();
    // A photo's own offset may put it on the day before or after the farm's.
    LocalDate last = evening.isBefore(LAST) ? evening.plusDays(2) : LAST;
    return measures.takenBetween(evenings.first().minusDays(1), last).stream()
        .map(Kept::measure)
        .filter(p -> !farm.evening(p.takenAt().orElseThrow()).isAfter(evening))
        .toList();
  }
}
