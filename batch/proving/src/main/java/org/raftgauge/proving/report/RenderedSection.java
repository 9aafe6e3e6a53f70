// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.proving.accuracy.ScoreRun;

/** A fresh set from the proving ground's own renderer: many conditions of light, board and dirt. */
final class RenderedSection {
  private RenderedSection() {}

  static Section make(Bench bench) throws IOException {
    RenderedRun run = RenderedRun.of(bench, bench.seed());
    Path plain = run.plainScript();
    Compare conditions = Compare.on(run.byCondition(), run.sites(), plain);
    Compare habits = Compare.on(run.byHabit(), run.sites(), plain);
    String body =
        "Photos drawn from the conditions set of the proving ground, seed "
            + bench.seed()
            + ", "
            + bench.photos()
            + " asked for. `purple-lamp` cannot be measured by colour: refusing is right there, and"
            + " every refusal is counted as a miss in its own row and in `all`.\n\n"
            + "By condition:\n\n"
            + conditions.tables()
            + "By leaf habit, purple lamps left out:\n\n"
            + SummaryRows.HEAD
            + SummaryRows.of(habits.ours(), habits.plain());
    return new Section(
        "Rendered photos under many conditions",
        body,
        conditions.row("rendered, all conditions but purple lamps", ScoreRun.ANSWERABLE));
  }
}
