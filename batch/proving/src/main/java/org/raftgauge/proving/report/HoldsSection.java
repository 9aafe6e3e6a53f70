// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.proving.accuracy.HoldCosts;

/**
 * What it costs to hold a site that could be measured, and to measure one that should be held. It
 * reads the run of the rendered section, which must have been made before.
 */
final class HoldsSection {
  private HoldsSection() {}

  static Section make(Bench bench) throws IOException {
    Path work = bench.rendered(bench.seed());
    String body =
        """
        Holding a site for nothing costs one more photo of its board. Measuring a site wrong costs a
        false verdict: wrong is an area at or under 78 %, or at or over 135 %, of the true one (of the
        visible area where plants overlap), which alone would call a healthy plant lagging or ahead by
        the default limits, and more than 2 cm2 where nothing grows. The sites that were held were
        measured once more with nothing held: what the answer would have been.

        """
            + HoldCosts.markdown(work.resolve("set"), work.resolve("run").resolve("sites.csv"));
    return new Section("Held for nothing, or measured wrong", body, "");
  }
}
