// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.raftgauge.proving.accuracy.Answer;
import org.raftgauge.proving.accuracy.LearningCurve;
import org.raftgauge.proving.accuracy.LookScore;
import org.raftgauge.proving.accuracy.ScoreRun;
import org.raftgauge.proving.accuracy.TruthSite;

/**
 * The colour models by rules and those taught from rendered photos, on the same photos; and how
 * many labelled pictures a model needs. It reads the runs of the path-traced and the rendered
 * section, which must have been made before.
 */
final class ModelsSection {
  private static final String TITLE = "Built-in and taught colour models side by side";

  private ModelsSection() {}

  static Section make(Bench bench) throws IOException {
    StringBuilder body =
        new StringBuilder(
            """
            `green-leaf` and `red-leaf` are rules; `green-leaf-taught` and `red-leaf-taught` come with
            the program too, taught by `teach` from rendered photos of other seeds than the one shown
            here. The same photos are measured twice, by a book that names the first and by one that
            names the second. Counting is as in the other tables.

            """);
    Optional<Path> data = bench.shared("path-traced");
    if (data.isPresent()) {
      Path work = bench.work().resolve("path-traced");
      body.append("Path-traced photos, by crop:\n\n")
          .append(compare(data.get(), "cultivar", work))
          .append('\n');
    }
    Path work = bench.rendered(bench.seed());
    Path set = work.resolve("set");
    body.append("Rendered photos, by condition:\n\n").append(compare(set, "condition", work));
    body.append(
        """

        How many labelled pictures? Rendered photos, all crops and looks but purple lamps mixed, painted
        by their truth: three draws of so many pictures from one half, judged pixel by pixel on twelve of
        the other half. Area error: |found / painted - 1| of a photo's canopy.

        | pictures taught from | judgements | Dice mean | Dice 5 % | Dice worst | area error: median | 95th |
        |---:|---:|---:|---:|---:|---:|---:|
        """);
    for (String row : LearningCurve.rows(set, work.resolve("painted"))) {
      body.append(row).append('\n');
    }
    return new Section(TITLE, body.toString(), "");
  }

  /** Measures with taught models and sets the scores beside those of the run in {@code work}. */
  private static String compare(Path set, String look, Path work) throws IOException {
    Path again = work.resolve("taught");
    Path book =
        BookCopy.naming(set.resolve("book"), again.resolve("named"), leaf -> leaf + "-leaf-taught");
    Path taught = RunBatch.over(set.resolve("photos"), book, again);
    List<TruthSite> truth = TruthSite.read(set.resolve("truth.csv"), look);
    List<LookScore> ours =
        ScoreRun.score(truth, Answer.read(work.resolve("run").resolve("sites.csv")));
    List<LookScore> theirs = ScoreRun.score(truth, Answer.read(taught));
    return SideBySide.table(ours, theirs);
  }
}
