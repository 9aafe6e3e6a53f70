// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.List;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.track.JudgeEvening;
import org.raftgauge.core.track.Judged;
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
   * @return verdicts, curves and worklist
   */
  public static EveningResult of(CropBook book, Seen seen, LocalDate evening) {
    Tonight tonight = tonight(book, seen, evening);
    return new EveningResult(
        evening,
        tonight.verdicts(),
        EveningCurves.of(tonight.book(), tonight.series(), tonight.verdicts()),
        new MakeWorklist(tonight).tasks(),
        tonight.stations());
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
    return tonight(book, seen, evening).verdicts();
  }

  /** Drops what is later than an evening, and judges the rest. */
  static Tonight tonight(CropBook book, Seen seen, LocalDate evening) {
    CropBook then = BookAsOf.of(book, evening);
    Seen soFar = seen.before(book.farmDay().start(evening.plusDays(1)));
    List<PlantSeries> series = CollectSeries.upTo(then, soFar.sites(), evening);
    List<Judged> verdicts = JudgeEvening.judge(then, series, evening, TrackRules.defaults());
    return new Tonight(then, soFar, series, verdicts, evening);
  }
}
