// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.evening.CloseEvening;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.evening.Seen;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.track.Judged;

/** Judges an evening from the history alone. */
final class JudgeHistory {

  private JudgeHistory() {}

  /**
   * Closes an evening.
   *
   * @param history everything measured
   * @param farm the book
   * @param evening the evening; what is later has no influence
   * @return verdicts, curves and worklist
   * @throws IOException if the history cannot be read
   */
  static EveningResult of(History history, Farm farm, LocalDate evening) throws IOException {
    return CloseEvening.of(farm.book(), seen(history, farm, evening), evening);
  }

  /** Gives the verdicts of an evening alone, by a book that may have other limits. */
  static List<Judged> verdicts(CropBook book, Seen seen, LocalDate evening) {
    return CloseEvening.verdicts(book, seen, evening);
  }

  /** Returns what the photos that count said up to an evening of the plants that stand then. */
  static Seen seen(History history, Farm farm, LocalDate evening) throws IOException {
    Farm then = farm.asOf(evening);
    // A photo's own offset may put it on the day before or after the farm's.
    LocalDate first = oldest(then, evening).minusDays(1);
    List<PhotoMeasure> photos =
        history.takenBetween(first, evening.plusDays(2)).stream()
            .map(Kept::measure)
            .filter(p -> !then.evening(p.takenAt().orElseThrow()).isAfter(evening))
            .toList();
    return CollectSeen.of(photos, StationDoubts.of(history, then), then);
  }

  /** Returns the day on which the oldest of the plants that stand on an evening was set there. */
  private static LocalDate oldest(Farm farm, LocalDate evening) {
    Instant end = farm.farmDay().start(evening.plusDays(1)).minusNanos(1);
    return farm.book().plants().stream()
        .filter(life -> life.stays().stream().anyMatch(stay -> stay.holdsAt(end)))
        .map(life -> life.stays().get(0))
        .map(PlantLife.Stay::from)
        .min(Instant::compareTo)
        .map(from -> farm.farmDay().evening(from))
        .orElse(evening);
  }
}
