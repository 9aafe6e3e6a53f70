// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.proving.accuracy.ScoreRun;

/** The rendered photos once more as an old camera takes them. */
final class CoarseSection {
  private CoarseSection() {}

  static Section make(Bench bench) throws IOException {
    RenderedRun run = RenderedRun.coarse(bench, bench.seed());
    Path plain = run.plainScript();
    Compare conditions = Compare.on(run.byCondition(), run.sites(), plain);
    Compare habits = Compare.on(run.byHabit(), run.sites(), plain);
    String body =
        """
        The same draw of photos with a quarter of the pixels: 1.5 mm wide on the bench, 1.9 at the
        fixed station, colour stored half as fine again. A stalk is then narrower than a pixel and a
        seedling a handful of them, so that the error in cm2 says more than the one in percent.

        By condition:

        """
            + conditions.tables()
            + "By leaf habit, purple lamps left out:\n\n"
            + habits.tables();
    return new Section(
        "Rendered photos with 1.5 to 1.9 mm a pixel",
        body,
        conditions.row("the same, 1.5 to 1.9 mm a pixel", ScoreRun.ANSWERABLE));
  }
}
