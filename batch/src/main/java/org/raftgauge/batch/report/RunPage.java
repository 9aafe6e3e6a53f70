// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.raftgauge.batch.run.ReportPage;
import org.raftgauge.batch.run.RunOutcome;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.report.RaftRows;
import org.raftgauge.core.report.SiteRow;
import org.raftgauge.core.track.JudgeEvening;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.TrackRules;

/**
 * Writes the page of a run: {@code report.html} and the plots of head weights in {@code plots/}.
 */
public final class RunPage implements ReportPage {
  private final CropBook book;

  /**
   * Makes a writer of pages.
   *
   * @param book the crop book
   */
  public RunPage(CropBook book) {
    this.book = book;
  }

  @Override
  public void write(RunOutcome outcome, Path folder) throws IOException {
    WritePage.write(input(outcome), folder);
  }

  /** Returns what the page is made of: the run, judged evening by evening by its own photos. */
  private ReportInput input(RunOutcome outcome) {
    List<SiteLook> looks = looks(outcome.rafts());
    ReportInput input = ReportInput.of(outcome, book);
    for (LocalDate evening : evenings(looks)) {
      var series = CollectSeries.upTo(book, looks, evening);
      input = input.withEvening(evening, verdicts(outcome, series, evening));
    }
    Ahead ahead =
        outcome
            .summary()
            .outlook()
            .map(outlook -> GatherAhead.of(outlook, book))
            .orElse(Ahead.none());
    return input.withWorklist(worklist(outcome)).withForecast(ahead);
  }

  /** Returns the run's own verdicts of its last evening; judges earlier ones from its photos. */
  private List<Judged> verdicts(RunOutcome outcome, List<PlantSeries> series, LocalDate evening) {
    return outcome
        .summary()
        .judged()
        .filter(judged -> judged.evening().equals(evening))
        .map(EveningResult::verdicts)
        .orElseGet(() -> JudgeEvening.judge(book, series, evening, TrackRules.defaults()));
  }

  private static List<Work> worklist(RunOutcome outcome) {
    return outcome.summary().judged().stream()
        .flatMap(judged -> Work.of(judged.worklist(), judged.evening().plusDays(1)).stream())
        .toList();
  }

  private NavigableSet<LocalDate> evenings(List<SiteLook> looks) {
    NavigableSet<LocalDate> evenings = new TreeSet<>();
    looks.forEach(look -> evenings.add(book.farmDay().evening(look.takenAt().toInstant())));
    return evenings;
  }

  private static List<SiteLook> looks(List<RaftRows> rafts) {
    List<SiteLook> looks = new ArrayList<>();
    for (RaftRows rows : rafts) {
      boolean named = rows.raft().raft().isPresent() && rows.photo().takenAt().isPresent();
      if (named && rows.doubt().isEmpty()) {
        for (SiteRow site : rows.sites()) {
          looks.add(
              new SiteLook(
                  rows.photo().photo(),
                  rows.photo().station(),
                  rows.raft().raft().get(),
                  rows.photo().takenAt().get(),
                  site.site()));
        }
      }
    }
    return looks;
  }
}
