// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import org.raftgauge.proving.farmyear.FarmYear;
import org.raftgauge.proving.report.AccuracyPage;
import org.raftgauge.proving.report.Bench;
import org.raftgauge.proving.report.Sections;
import org.raftgauge.proving.season.ProveSeason;
import org.raftgauge.proving.season.ProveStops;
import org.raftgauge.proving.verdict.ScoreTable;
import org.raftgauge.proving.verdict.VerdictScore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Simulates seasons and scores the verdicts. */
@Command(
    name = "season",
    mixinStandardHelpOptions = true,
    description =
        "Simulates growing seasons and scores every evening's verdicts against the truth.")
final class SeasonCommand implements Callable<Integer> {
  private static final int STOP_SEASONS = 2;

  @Option(names = "--out", required = true, description = "Folder to write to.")
  private Path out;

  @Option(names = "--seed", description = "Whole number; the same seed gives the same seasons.")
  private long seed = 1;

  @Option(names = "--rafts", description = "Rafts a season. Default: ${DEFAULT-VALUE}.")
  private int rafts = 200;

  @Option(
      names = "--what",
      description =
          "Which seasons: first (the generator the rules were chosen on), second (the one they"
              + " were not), ablation (the first with rules switched off one at a time), or stops"
              + " (a whole farm whose growth falls at once; 96 rafts)."
              + " Default: ${DEFAULT-VALUE}.")
  private Which what = Which.first;

  @Option(
      names = "--docs",
      description =
          "Run them all, at 200 rafts, and rewrite the section on verdicts of"
              + " batch/proving/ACCURACY.md; the current folder is the checkout.")
  private boolean docs;

  /** Which seasons are run. */
  enum Which {
    /** The generator on which rules were chosen. */
    first,
    /** The other one. */
    second,
    /** The first with rules switched off. */
    ablation,
    /** A whole farm whose growth falls at once. */
    stops
  }

  @Override
  public Integer call() throws IOException {
    if (docs) {
      Path root = Path.of("");
      AccuracyPage.replace(
          root.resolve("batch/proving/ACCURACY.md"),
          Sections.verdicts(new Bench(root, out, seed, seed, 0)));
      return 0;
    }
    if (what == Which.stops) {
      System.out.print(ProveStops.run(out, seed, STOP_SEASONS));
      return 0;
    }
    Map<String, VerdictScore> scores = scores();
    System.out.print(ScoreTable.head());
    scores.forEach((name, score) -> System.out.print(ScoreTable.row(name, score)));
    System.out.println();
    System.out.print(ScoreTable.byPlight(scores));
    return 0;
  }

  private Map<String, VerdictScore> scores() throws IOException {
    return switch (what) {
      case first -> ProveSeason.run(out, seed, rafts);
      case second -> FarmYear.run(out, seed, rafts);
      case ablation -> ProveSeason.ablate(out, seed, rafts);
      case stops -> Map.of();
    };
  }
}
