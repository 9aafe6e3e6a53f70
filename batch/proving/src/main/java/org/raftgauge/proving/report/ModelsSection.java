// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.raftgauge.proving.accuracy.Answer;
import org.raftgauge.proving.accuracy.LearningCurve;
import org.raftgauge.proving.accuracy.LookScore;
import org.raftgauge.proving.accuracy.LookScore.Errors;
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
    Path book = taughtBook(set.resolve("book"), again.resolve("named"));
    Path taught = RunBatch.over(set.resolve("photos"), book, again);
    List<TruthSite> truth = TruthSite.read(set.resolve("truth.csv"), look);
    List<LookScore> ours =
        ScoreRun.score(truth, Answer.read(work.resolve("run").resolve("sites.csv")));
    List<LookScore> theirs = ScoreRun.score(truth, Answer.read(taught));
    StringBuilder table =
        new StringBuilder(
            "| look | open sites | built-in (missed) | 95th | taught (missed) | 95th | overlapped"
                + " sites | built-in (missed) | taught (missed) | empty: built-in, cm2 | taught |\n"
                + "| --- |"
                + " ---: |".repeat(10)
                + "\n");
    for (int i = 0; i < ours.size(); i++) {
      table.append(row(ours.get(i), theirs.get(i)));
    }
    return table.toString();
  }

  private static String row(LookScore ours, LookScore theirs) {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %s | %s | %s | %s | %d | %s | %s | %.1f | %.1f |\n",
        ours.look(),
        ours.open().sites(),
        median(ours.open()),
        percent(ours.open(), ours.open().p95Share()),
        median(theirs.open()),
        percent(theirs.open(), theirs.open().p95Share()),
        ours.overlapped().sites(),
        median(ours.overlapped()),
        median(theirs.overlapped()),
        ours.empty().largestCm2(),
        theirs.empty().largestCm2());
  }

  private static String median(Errors errors) {
    return errors.sites() == 0
        ? ""
        : percent(errors, errors.medianShare()) + " (" + errors.missed() + ")";
  }

  private static String percent(Errors errors, double share) {
    return errors.sites() == 0 ? "" : String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }

  /** Copies a book with the taught models named where the others were. */
  private static Path taughtBook(Path book, Path copy) throws IOException {
    try (Stream<Path> files = Files.walk(book)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        Path to = copy.resolve(book.relativize(file).toString());
        Files.createDirectories(to.getParent());
        if (file.getFileName().toString().equals("crops.yaml")) {
          Files.writeString(
              to,
              Files.readString(file)
                  .replaceAll("(colour_model: *)(green|red)-leaf(?![-\\w])", "$1$2-leaf-taught"));
        } else {
          Files.write(to, Files.readAllBytes(file));
        }
      }
    }
    return copy;
  }
}
