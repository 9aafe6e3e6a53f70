// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.raftgauge.proving.accuracy.Answer;
import org.raftgauge.proving.accuracy.ScoreFiles;
import org.raftgauge.proving.accuracy.ScoreFiles.Method;
import org.raftgauge.proving.accuracy.ScoreRun;
import org.raftgauge.proving.accuracy.SharesOfRaft;
import org.raftgauge.proving.accuracy.TruthSite;

/** The same plants evening after evening: what their sizes before are worth once they meet. */
final class EveningsSection {
  private EveningsSection() {}

  static Section make(Bench bench) throws IOException {
    RenderedRun run = RenderedRun.growing(bench, bench.seed());
    List<TruthSite> truth = run.byHabit();
    Method alone =
        new Method(
            "Each photo by itself", ScoreRun.score(truth, Answer.readPhotosAlone(run.sites())));
    Method settled =
        new Method("With the evenings before", ScoreRun.score(truth, Answer.read(run.sites())));
    String body =
        String.format(
                Locale.ROOT,
                """
                Rafts of butterhead, oak-leaf, romaine and basil, photographed every second evening from
                day 8 to day 30 while their plants grow into each other, %d photos, seed %d. Plants differ
                by 17 %% for good and wander by 1 %% of area a day; each keeps its leaves' order. Only
                borders between plants that touch are settled by the evenings before.

                """,
                run.photos(),
                bench.seed())
            + ScoreFiles.markdown(List.of(alone, settled))
            + """
            ### A plant's share of its raft

            |ln(measured / true projected area)| less the raft's median, mean over plants by how much of
            their outline is shared: what a grader by size sees of a plant that its neighbours cover.

            """
            + SharesOfRaft.table(truth, run.sites());
    return new Section("The evenings before", body, "");
  }
}
