// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Callable;
import org.raftgauge.batch.run.ImportMeasures;
import org.raftgauge.batch.run.Progress;
import org.raftgauge.batch.store.ExportedTable;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Takes measures made elsewhere into the history. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    header = "Takes measures in the format of sites.csv into the book's history.",
    description = {
      "%nOnly the columns raft, site, taken_at and projected_area_cm2 are required; any",
      "other column of sites.csv may be there. Rows of one photo cell are one photo;",
      "without the column, rows of one raft and time. The same rows twice add nothing,",
      "nor do those of photos that a run on this book measured."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to import:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Examples:",
      "  raftgauge import last-year/sites.csv --book my-farm",
      "  raftgauge import --history history-csv --book new-farm",
      "",
      "Exit codes: 0 done, 2 wrong call, book or file (nothing written), 3 failed."
    })
final class ImportCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SITES_CSV", arity = "0..1", description = "File of measures.")
  private Path sites;

  @Mixin private BookOptions options;

  @Option(
      names = "--history",
      paramLabel = "DIR",
      description = {
        "Instead of a file: folder that raftgauge history export wrote. The book must have no"
            + " history yet."
      })
  private Path history;

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
    if ((sites == null) == (history == null)) {
      throw new ParameterException(
          spec.commandLine(), "Give SITES_CSV, or --history with a folder, and not both");
    }
    Path book = options.find(console);
    if (history != null) {
      return wholeHistory(book);
    }
    Folders.noFolder("SITES_CSV", sites, "give a file in the format of sites.csv");
    workplace.open(book).problems().forEach(console.err()::println);
    ImportMeasures.Outcome outcome =
        new ImportMeasures(CropBook.read(book), new QuietProgress(console.err(), options.verbose()))
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

  private Integer wholeHistory(Path book) throws InputException, IOException {
    Folders.exists("--history", history, "give the folder that raftgauge history export wrote");
    Progress progress = new QuietProgress(console.err(), options.verbose());
    for (ExportedTable table :
        ImportMeasures.history(history, book, Duration.ofSeconds(waitS), progress)) {
      console.out().println(table.rows() + " " + table.table().replace('_', ' '));
    }
    console.out().println("Imported into " + book.resolve("history.db"));
    return ExitCode.DONE;
  }

  private static String count(int photos) {
    return photos == 1 ? "1 photo" : photos + " photos";
  }
}
