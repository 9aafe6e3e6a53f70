// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.track.JudgeEvening;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Spread;
import org.raftgauge.core.track.TrackRules;

/** Closes an evening: says how all stands, and what there is to do. */
public final class CloseEvening {

  private CloseEvening() {}

  /**
   * Closes an evening. What is later than it, in the book or among the looks, has no influence.
   *
   * @param book the crop book
   * @param seen everything that photos said
   * @param evening the farm's day
   * @param graders by crop, for the days to harvest; those that know more than the evening are left
   *     out
   * @return verdicts, curves and worklist
   */
  public static EveningResult of(
      CropBook book, Seen seen, LocalDate evening, Map<String, Grader> graders) {
    return of(new Asked(book, seen, evening, graders), Spread.IN_TURN);
  }

  /**
   * What is asked of an evening.
   *
   * @param book the crop book
   * @param seen everything that photos said
   * @param evening the farm's day
   * @param graders by crop
   */
  public record Asked(CropBook book, Seen seen, LocalDate evening, Map<String, Grader> graders) {}

  /**
   * Closes an evening as {@link #of(CropBook, Seen, LocalDate, Map)} does, with the same result.
   *
   * @param asked book, looks, evening and graders
   * @param spread goes through rafts and plants
   * @return verdicts, curves and worklist
   */
  public static EveningResult of(Asked asked, Spread spread) {
    Tonight tonight = tonight(asked, spread);
    EveningCurves.Curves curves =
        EveningCurves.of(
            tonight, known(asked.graders, asked.book.farmDay(), asked.evening), spread);
    MakeWorklist worklist = new MakeWorklist(tonight);
    List<Task> tasks = worklist.tasks();
    return new EveningResult(
        asked.evening,
        tonight.verdicts(),
        curves.rows(),
        tasks,
        worklist.hidden(tasks),
        curves.rafts(),
        tonight.stations());
  }

  private static Map<String, Grader> known(
      Map<String, Grader> graders, FarmDay farmDay, LocalDate evening) {
    Instant end = farmDay.start(evening.plusDays(1));
    Map<String, Grader> known = new TreeMap<>(graders);
    known.values().removeIf(grader -> !grader.origin().knownBefore(end));
    return known;
  }

  /**
   * Gives the verdicts of an evening alone, as {@link #of} gives them.
   *
   * @param book the crop book
   * @param seen everything that photos said
   * @param evening the farm's day
   * @return the verdicts
   */
  public static List<Judged> verdicts(CropBook book, Seen seen, LocalDate evening) {
    return tonight(new Asked(book, seen, evening, Map.of()), Spread.IN_TURN).verdicts();
  }

  /** Drops what is later than an evening, and judges the rest. */
  static Tonight tonight(Asked asked, Spread spread) {
    LocalDate evening = asked.evening;
    CropBook then = BookAsOf.of(asked.book, evening);
    Seen soFar = asked.seen.raftsBefore(asked.book.farmDay().start(evening.plusDays(1)));
    List<PlantSeries> all = CollectSeries.withEnded(then, asked.seen.sites(), evening);
    JudgeEvening.Said said =
        JudgeEvening.all(then, all, evening, new JudgeEvening.How(TrackRules.defaults(), spread));
    return new Tonight(then, soFar, Plants.of(then, all, evening), said, evening);
  }
}
