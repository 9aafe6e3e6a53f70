// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.proving.accuracy.ErrorBars;
import org.raftgauge.proving.accuracy.TruthSite;

/**
 * Whether the standard errors of the areas are true. It reads the runs of the path-traced and the
 * rendered section, which must have been made before.
 */
final class ErrorBarsSection {
  private ErrorBarsSection() {}

  static Section make(Bench bench) throws IOException {
    StringBuilder body =
        new StringBuilder(
            """
            Each area has a standard error, `projected_area_se_cm2`. Standardised errors are
            (measured - true) / standard error: true standard errors give them mean 0 and spread 1
            (root of the mean square), 95 % intervals (1.96 standard errors to either side) that
            hold the truth at 95 of 100 sites, and larger errors where they are larger: the last
            columns compare the third of sites with the smallest with the third with the largest.
            Open sites are judged on projected, overlapped ones on visible area.
            The constants were estimated on rendered sets of other seeds than the one shown here.

            """);
    Optional<Path> data = bench.shared("path-traced");
    Path traced = bench.work().resolve("path-traced").resolve("run").resolve("sites.csv");
    if (data.isPresent() && Files.exists(traced)) {
      Path truth = data.get().resolve("truth.csv");
      body.append("Path-traced photos, by crop:\n\n").append(table(truth, "cultivar", traced));
      body.append("\nBy condition:\n\n").append(table(truth, "condition", traced)).append('\n');
    }
    Path work = bench.rendered(bench.seed());
    Path rendered = work.resolve("run").resolve("sites.csv");
    if (Files.exists(rendered)) {
      Path truth = work.resolve("set").resolve("truth.csv");
      body.append("Rendered photos, by condition:\n\n").append(table(truth, "condition", rendered));
      body.append("\nBy leaf habit:\n\n").append(table(truth, "habit", rendered));
    }
    return new Section("Are the standard errors true?", body.toString(), "");
  }

  private static String table(Path truth, String look, Path sites) throws IOException {
    return ErrorBars.markdown(ErrorBars.judge(TruthSite.read(truth, look), sites));
  }
}
