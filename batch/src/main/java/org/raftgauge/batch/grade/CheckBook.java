// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.batch.run.BookLooks;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Weighing;
import org.raftgauge.core.grader.CheckGrader;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.GraderCheck;
import org.raftgauge.core.grader.GraderHealth;
import org.raftgauge.core.grader.JoinWeighings;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Weighed;
import org.raftgauge.core.history.SiteLook;

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
    List<String> lines = new ArrayList<>();
    List<SiteLook> looks = BookLooks.upTo(book, folder, LocalDate.MAX);
    JoinWeighings.Joined joined = fresh(book, looks, grader, since, lines);
    joined.notJoined().forEach(n -> lines.add("weighings.csv:" + n.line() + ": " + n.why()));
    for (Regime regime : Regime.values()) {
      List<Weighed> own = of(regime, joined);
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

  /**
   * Tells how a grader stands on an evening.
   *
   * @param book the crop book as known by the evening
   * @param looks what photos that count said up to it
   * @param grader the grader
   * @param evening the farm's day
   * @return one for each regime that it tells
   */
  public static List<GraderHealth> health(
      CropBook book, List<SiteLook> looks, Grader grader, LocalDate evening) {
    JoinWeighings.Joined joined = fresh(book, looks, grader, Optional.empty(), new ArrayList<>());
    OffsetDateTime last = OffsetDateTime.parse(grader.origin().lastWeighed());
    LocalDate weighedOn = book.farmDay().evening(last.toInstant());
    List<GraderHealth> health = new ArrayList<>();
    grader
        .fits()
        .forEach(
            (regime, fit) ->
                health.add(
                    new GraderHealth(
                        grader.crop(),
                        regime,
                        fit.numbers().weighings(),
                        fit.numbers().leftOut().medianShare(),
                        weighedOn,
                        ChronoUnit.DAYS.between(weighedOn, evening),
                        CheckGrader.check(fit, of(regime, joined)))));
    return health;
  }

  private static List<Weighed> of(Regime regime, JoinWeighings.Joined joined) {
    return joined.weighed().stream().filter(w -> w.regime() == regime).toList();
  }

  /** Joins the weighings after those that the grader was fitted on, or after another time. */
  private static JoinWeighings.Joined fresh(
      CropBook book,
      List<SiteLook> looks,
      Grader grader,
      Optional<OffsetDateTime> since,
      List<String> lines) {
    OffsetDateTime after =
        since.orElseGet(() -> OffsetDateTime.parse(grader.origin().lastWeighed()));
    List<Weighing> fresh =
        book.diary().weighings().stream()
            .filter(w -> w.weighedAt().toInstant().isAfter(after.toInstant()))
            .toList();
    List<Weighing> same = FitBook.oneState(fresh, Optional.of(grader.origin().state()), lines);
    Duration within = Duration.ofMinutes(Math.round(grader.origin().matchHours() * 60));
    return new BookMeasures(book, looks).join(grader.crop(), same, within);
  }

  private static void say(Regime regime, GraderCheck check, List<String> lines) {
    lines.add(
        regime
            + ": "
            + check.advice().word()
            + " ("
            + check.weighings()
            + (check.weighings() == 1 ? " new weighing): " : " new weighings): ")
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
