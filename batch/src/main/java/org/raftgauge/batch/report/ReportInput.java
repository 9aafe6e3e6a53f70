// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.raftgauge.batch.run.RunOutcome;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.track.Judged;

/**
 * What the page is made of. Only the run and the book are needed; the rest is added by the {@code
 * with} functions as far as there is any.
 *
 * @param run what the run has to show
 * @param book the crop book
 * @param verdicts the rows of each evening that was judged; the latest is tonight
 * @param worklist tomorrow's work, most urgent first
 * @param forecast weights to come
 */
public record ReportInput(
    RunOutcome run,
    CropBook book,
    NavigableMap<LocalDate, List<Judged>> verdicts,
    List<Work> worklist,
    Ahead forecast) {

  /** Copies the lists. */
  public ReportInput {
    verdicts = Collections.unmodifiableNavigableMap(new TreeMap<>(verdicts));
    worklist = List.copyOf(worklist);
  }

  /**
   * Starts with what every run has.
   *
   * @param run what the run has to show
   * @param book the crop book
   */
  public static ReportInput of(RunOutcome run, CropBook book) {
    return new ReportInput(run, book, new TreeMap<>(), List.of(), Ahead.none());
  }

  /**
   * Adds the verdicts of an evening; earlier evenings are of rafts not seen since.
   *
   * @param evening the evening
   * @param judged its rows
   */
  public ReportInput withEvening(LocalDate evening, List<Judged> judged) {
    NavigableMap<LocalDate, List<Judged>> more = new TreeMap<>(verdicts);
    more.put(evening, List.copyOf(judged));
    return new ReportInput(run, book, more, worklist, forecast);
  }

  /**
   * Adds the worklist.
   *
   * @param work tomorrow's work, most urgent first
   */
  public ReportInput withWorklist(List<Work> work) {
    return new ReportInput(run, book, verdicts, work, forecast);
  }

  /**
   * Adds the forecast.
   *
   * @param ahead what is to come
   */
  public ReportInput withForecast(Ahead ahead) {
    return new ReportInput(run, book, verdicts, worklist, ahead);
  }
}
