// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.raftgauge.proving.accuracy.Answer;
import org.raftgauge.proving.accuracy.LookScore;
import org.raftgauge.proving.accuracy.LookScore.Errors;
import org.raftgauge.proving.accuracy.ScoreRun;
import org.raftgauge.proving.accuracy.TruthSite;

/**
 * Rendered photos on which rules were found beside photos that nobody has looked at: what is better
 * on the first only was learnt by heart.
 */
final class TunedSection {
  private TunedSection() {}

  static Section make(Bench bench) throws IOException {
    RenderedRun tuned = RenderedRun.of(bench, bench.tunedSeed());
    RenderedRun fresh = RenderedRun.of(bench, bench.seed());
    String body =
        String.format(
            Locale.ROOT,
            """
            Two draws of the same conditions, leaf habits and sizes. Rules were found with the photos of
            seed %d in view; those of seed %d are the ones above. Counting is as there. Looks of one
            photo or two differ by chance as well.

            By condition:

            """,
            bench.tunedSeed(),
            bench.seed());
    return new Section(
        "Photos that rules were found on, beside those of the page",
        body
            + table(scores(tuned, tuned.byCondition()), scores(fresh, fresh.byCondition()))
            + "\nBy leaf habit, purple lamps left out:\n\n"
            + table(scores(tuned, tuned.byHabit()), scores(fresh, fresh.byHabit())),
        "");
  }

  private static List<LookScore> scores(RenderedRun run, List<TruthSite> truth) throws IOException {
    return ScoreRun.score(truth, Answer.read(run.sites()));
  }

  /** Writes a row a look of the fresh photos; the tuned ones may lack it. */
  static String table(List<LookScore> tuned, List<LookScore> fresh) {
    Map<String, LookScore> byLook =
        tuned.stream().collect(Collectors.toMap(LookScore::look, Function.identity()));
    StringBuilder table =
        new StringBuilder(
            "| look | open sites: found on | median | 95th | not | median | 95th |"
                + " overlapped: found on | not | empties over 2 cm2: found on | not |\n| --- |"
                + " ---: |".repeat(10)
                + "\n");
    for (LookScore score : fresh) {
      LookScore other = byLook.get(score.look());
      table.append(
          String.format(
              "| %s | %s | %s | %s | %s | %s | %s |%n",
              score.look(),
              other == null ? " | |" : open(other.open()),
              open(score.open()),
              other == null ? "" : share(other.overlapped(), other.overlapped().medianShare()),
              share(score.overlapped(), score.overlapped().medianShare()),
              other == null ? "" : "" + other.empty().over2Cm2(),
              score.empty().over2Cm2()));
    }
    return table.toString().replace("\r\n", "\n");
  }

  private static String open(Errors errors) {
    return errors.sites()
        + " | "
        + share(errors, errors.medianShare())
        + " | "
        + share(errors, errors.p95Share());
  }

  private static String share(Errors errors, double share) {
    return errors.sites() == 0 ? "" : String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }
}
