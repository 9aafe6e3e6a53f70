// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.batch.forecast.ForecastBook;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Holds earlier forecasts against what was harvested. */
@Command(
    name = "look-back",
    mixinStandardHelpOptions = true,
    header = "Replays past cycles: how far off the forecasts of earlier evenings were.",
    description = {
      "%nFor each row of harvests.csv the forecast is made again on the evenings 1, 2,",
      "3, 5, 7, 10 and 14 days before, with nothing later in sight but today's grader;",
      "where that knew later weighings, the row says so. Writes look-back.csv,",
      "look-back-summary.csv and, from climate.csv, resources.csv (grams by light and",
      "water)."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge look-back --book my-farm --out look-back",
      "",
      "Weights are estimates from pictures, not legal-for-trade weighing.",
    })
final class LookBackCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private BookOptions options;

  @Option(names = "--out", paramLabel = "OUT", required = true, description = "Folder to write to.")
  private Path out;

  LookBackCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path book = options.find(console);
    new ForecastBook(GraderBook.open(book, console), book)
        .lookBack(out)
        .forEach(console.out()::println);
    return ExitCode.DONE;
  }
}
