// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.batch.store.RaftDays;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.evening.CloseEvening;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.evening.MoreTasks;
import org.raftgauge.core.evening.Seen;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.track.Judged;

/** Judges an evening from the history alone. */
final class JudgeHistory {

  private JudgeHistory() {}

  /**
   * Closes an evening.
   *
   * @param measures everything measured, as corrected
   * @param farm the book
   * @param evening the evening; what is later has no influence
   * @param graders by crop
   * @return verdicts, curves and worklist
   * @throws IOException if the history cannot be read
   */
  static EveningResult of(
      Measures measures, Farm farm, LocalDate evening, Map<String, Grader> graders)
      throws IOException {
    return CloseEvening.of(
        new CloseEvening.Asked(farm.book(), seen(measures, farm, evening), evening, graders),
        new OnAllCores());
  }

  /** Adds to an evening's worklist what its outlook gives to do. */
  static EveningResult withTasks(EveningResult judged, Optional<EveningOutlook> ahead, Farm farm) {
    return ahead
        .map(outlook -> MoreTasks.with(judged, outlook.tasks(), farm.book()))
        .orElse(judged);
  }

  /** Gives the verdicts of an evening alone, by a book that may have other limits. */
  static List<Judged> verdicts(CropBook book, Seen seen, LocalDate evening) {
    return CloseEvening.verdicts(book, seen, evening);
  }

  /**
   * Returns what the photos that count said up to an evening of the plants that stand then, and of
   * the past cycles that they are held against.
   */
  static Seen seen(Measures measures, Farm farm, LocalDate evening) throws IOException {
    Farm then = farm.asOf(evening);
    // A photo's own offset may put it on the day before or after the farm's.
    LocalDate first = oldest(then, evening).minusDays(1);
    Map<String, PhotoMeasure> photos = new TreeMap<>();
    take(measures.takenBetween(first, evening.plusDays(2)), photos);
    for (RaftDays past : PastPlantings.of(then.book(), evening)) {
      if (past.first().isBefore(first)) {
        take(measures.takenBetween(past), photos);
      }
    }
    List<PhotoMeasure> seen =
        photos.values().stream()
            .filter(p -> !then.evening(p.takenAt().orElseThrow()).isAfter(evening))
            .toList();
    return CollectSeen.of(seen, StationDoubts.of(measures, then), then);
  }

  private static void take(List<Kept> kept, Map<String, PhotoMeasure> photos) {
    kept.forEach(k -> photos.put(k.measure().sha256(), k.measure()));
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
