// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.raftgauge.proving.farmyear.FarmYear;
import org.raftgauge.proving.season.ProveSeason;
import org.raftgauge.proving.verdict.ScoreTable;
import org.raftgauge.proving.verdict.VerdictScore;

/** The verdicts on simulated seasons of two generators, and with rules switched off. */
final class VerdictsSection {
  private static final int RAFTS = 200;

  /** The seasons with rules switched off are many, so they are smaller. */
  private static final int ABLATION_RAFTS = 100;

  private VerdictsSection() {}

  static Section make(Bench bench) throws IOException {
    Path work = bench.work().resolve("verdicts");
    Map<String, VerdictScore> first = ProveSeason.run(work, bench.seed(), RAFTS);
    Map<String, VerdictScore> second = FarmYear.run(work, bench.seed(), RAFTS);
    Map<String, VerdictScore> off =
        ProveSeason.ablate(work.resolve("ablation"), bench.seed(), ABLATION_RAFTS);
    String body =
        "Seed "
            + bench.seed()
            + ", "
            + RAFTS
            + " rafts a season. Seasons are simulated without pictures and judged evening by evening, with nothing later"
            + " in sight. A site at or under 70 % of its healthy cohort's median must be called"
            + " within three photo days, whatever the cause; one at or over 85 % must not be"
            + " called lagging or stalled; between the two either is right. The rules were chosen"
            + " on the first generator. Everything is invented: these figures say how the rules"
            + " work where the world is as simulated, not how a farm will fare.\n\n"
            + table(first)
            + "\n"
            + ScoreTable.byPlight(first)
            + "\nThe second generator shares no code with the first: other growth, spread, noise"
            + " and length, one photo in ten missing, plants moved, replaced and cut.\n\n"
            + table(second)
            + "\n"
            + ScoreTable.byPlight(second)
            + "\nThe first generator with rules switched off one at a time, "
            + ABLATION_RAFTS
            + " rafts:\n\n"
            + table(off);
    return new Section("Verdicts on simulated seasons", body, "");
  }

  private static String table(Map<String, VerdictScore> scores) {
    StringBuilder table = new StringBuilder(ScoreTable.head());
    scores.forEach((name, score) -> table.append(ScoreTable.row(name, score)));
    return table.toString();
  }
}
