// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Callable;
import org.raftgauge.batch.run.ImportMeasures;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes measures made elsewhere into the history. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    header = "Takes measures in the format of sites.csv into the book's history.",
    description = {
      "%nOnly the columns raft, site, taken_at and projected_area_cm2 are required; any",
      "other column of sites.csv may be there. Rows of one photo cell are one photo;",
      "without the column, rows of one raft and time. The same rows twice add nothing."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to import:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge import last-year/sites.csv --book my-farm",
      "",
      "Exit codes: 0 done, 2 wrong call, book or file (nothing written), 3 failed."
    })
final class ImportCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Parameters(paramLabel = "SITES_CSV", description = "File of measures.")
  private Path sites;

  @Mixin private BookOptions options;

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description = {
        "How long to wait while another run uses the same book. Default: ${DEFAULT-VALUE}."
      })
  private long waitS = 600;

  ImportCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path book = options.find(console);
    Workplace.OpenBook open = workplace.open(book);
    open.problems().forEach(console.err()::println);
    ImportMeasures.Outcome outcome =
        new ImportMeasures(open.farm().book(), new QuietProgress(console.err(), options.verbose()))
            .run(sites, book, Duration.ofSeconds(waitS));
    outcome.warnings().forEach(console.err()::println);
    console
        .out()
        .println(
            "Imported "
                + count(outcome.added())
                + " with "
                + outcome.sites()
                + " sites; "
                + count(outcome.known())
                + " known already");
    return ExitCode.DONE;
  }

  private static String count(int photos) {
    return photos == 1 ? "1 photo" : photos + " photos";
  }
}
