// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.proving.accuracy.ScoreRun;

/** Small plants in substrates and holders of many kinds, which show in their planting holes. */
final class FillingsSection {
  private FillingsSection() {}

  static Section make(Bench bench) throws IOException {
    RenderedRun run = RenderedRun.fillings(bench, bench.seed());
    Path plain = run.plainScript();
    Compare fillings = Compare.on(run.byCondition(), run.sites(), plain);
    Compare crops = Compare.on(run.byCrop(), run.sites(), plain);
    String body =
        """
        Young and middling plants of seven crops, each in ten substrates and holders, in plain light,
        sun, uneven light and under a tilted camera; seed %d, %d photos. The second reading, which
        doubts areas and does not change them, was taught from fillings drawn at random with
        another seed, never from these ten. Held sites count as missed.

        By filling:

        """
                .formatted(bench.seed(), run.photos())
            + fillings.tables()
            + "By crop:\n\n"
            + crops.tables()
            + """
            What a farm gains that teaches its own colour models: two for each filling, of green and of
            red leaf, from the four and three photos of it that seed %d has, painted by their truth; the
            photos above measured by those.

            """
                .formatted(bench.tunedSeed())
            + SideBySide.table(
                fillings.ours().scores(),
                ScoreRun.score(run.byCondition(), OwnPlugs.measure(bench, run)));
    return new Section(
        "Plugs of many kinds", body, fillings.row("young plants in plugs of many kinds", "all"));
  }
}
