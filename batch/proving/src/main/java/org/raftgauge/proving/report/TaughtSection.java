// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.proving.accuracy.RealSet;
import org.raftgauge.proving.accuracy.TeachRealCanopy;

/** Colour models taught on some real photos and judged on others. */
final class TaughtSection {
  private static final String TITLE = "Taught colour models on real photos";

  private TaughtSection() {}

  static Section make(Bench bench) throws IOException {
    Optional<Path> data = bench.shared("real-canopy");
    if (data.isEmpty()) {
      return new Section(TITLE, "Not run: the photos are not beside the project.\n", "");
    }
    StringBuilder body = new StringBuilder();
    body.append(
        """
        The photos with hand-drawn masks once more: `teach` learns from some of them (mask: green leaf,
        the rest: board) and the model is judged on photos that it has not seen, through the canopy
        decision as a run makes it. Learning curve: three draws of so many pictures from one half,
        judged on every third photo of the other half. Area error: median of |found / drawn - 1|.

        | set | pictures taught from | judgements | Dice mean | Dice 5 % | Dice worst | area error |
        |---|---|---:|---:|---:|---:|---:|
        """);
    for (RealSet set : RealSet.values()) {
      for (String row : TeachRealCanopy.rows(data.get(), set)) {
        body.append(row).append('\n');
      }
    }
    return new Section(TITLE, body.toString(), "");
  }
}
