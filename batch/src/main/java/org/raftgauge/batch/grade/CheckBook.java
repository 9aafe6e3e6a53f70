// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Weighing;
import org.raftgauge.core.grader.CheckGrader;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.GraderCheck;
import org.raftgauge.core.grader.JoinWeighings;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Weighed;

/** Tests a book's new weighings against its grader. */
public final class CheckBook {

  private CheckBook() {}

  /**
   * Checks.
   *
   * @param book the crop book as read
   * @param folder of the book
   * @param grader the grader to test
   * @param since weighings after this are new; nothing for those after the last it was fitted on
   * @return what to say, line by line
   * @throws IOException if the history cannot be read
   */
  public static List<String> check(
      CropBook book, Path folder, Grader grader, Optional<OffsetDateTime> since)
      throws IOException {
    OffsetDateTime after =
        since.orElseGet(() -> OffsetDateTime.parse(grader.origin().lastWeighed()));
    List<String> lines = new ArrayList<>();
    List<Weighing> fresh =
        book.diary().weighings().stream()
            .filter(w -> w.weighedAt().toInstant().isAfter(after.toInstant()))
            .toList();
    List<Weighing> same = FitBook.oneState(fresh, Optional.of(grader.origin().state()), lines);
    Duration within = Duration.ofMinutes(Math.round(grader.origin().matchHours() * 60));
    JoinWeighings.Joined joined = new BookMeasures(book, folder).join(grader.crop(), same, within);
    joined.notJoined().forEach(n -> lines.add("weighings.csv:" + n.line() + ": " + n.why()));
    for (Regime regime : Regime.values()) {
      List<Weighed> own = joined.weighed().stream().filter(w -> w.regime() == regime).toList();
      Optional<RegimeFit> fit = grader.fit(regime);
      if (fit.isPresent()) {
        say(regime, CheckGrader.check(fit.get(), own), lines);
      } else if (!own.isEmpty()) {
        lines.add(
            regime
                + ": "
                + own.size()
                + " new weighings, but the grader tells no "
                + regime
                + " sites; fit it again with them");
      }
    }
    return lines;
  }

  private static void say(Regime regime, GraderCheck check, List<String> lines) {
    lines.add(
        regime
            + ": "
            + check.advice().name().toLowerCase(Locale.ROOT)
            + " ("
            + check.weighings()
            + " new weighings): "
            + check.why());
    if (check.weighings() > 0) {
      lines.add(
          String.format(
              Locale.ROOT,
              "  single plants: bias %+.1f %%, limits of agreement %+.0f %% to %+.0f %%; %d outside"
                  + " their 95 %% interval",
              100 * check.biasShare(),
              100 * check.lowerShare(),
              100 * check.upperShare(),
              check.outside()));
      int last = check.drift().hi().size() - 1;
      lines.add(
          String.format(
              Locale.ROOT,
              "  drift (CUSUM, limit %.0f): %.1f heavier, %.1f lighter than predicted",
              check.drift().limit(),
              check.drift().hi().get(last),
              check.drift().lo().get(last)));
    }
    check.suspects().forEach(s -> lines.add("  look at " + s.words()));
    check.notTold().forEach(n -> lines.add("  " + n));
  }
}
