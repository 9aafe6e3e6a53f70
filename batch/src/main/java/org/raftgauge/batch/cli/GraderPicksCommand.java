// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.batch.grade.BookGraders;
import org.raftgauge.batch.grade.PickBook;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Chooses plants to weigh. */
@Command(
    name = "picks",
    mixinStandardHelpOptions = true,
    header = "Chooses the plants to weigh: a list (CSV) and a sheet to print with site maps.",
    description = {
      "%nSites that photos of the last 24 hours show, spread over the whole range of",
      "predicted weights (of areas where there is no grader), at random inside each",
      "part; closed sites are among them; held, empty and brown ones are not."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge grader picks --book my-farm --crop butterhead --out picks"
    })
final class GraderPicksCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;

  @Mixin private BookOptions options;

  @Option(names = "--crop", paramLabel = "CROP", required = true, description = "Whose plants.")
  private String crop;

  @Option(
      names = "--count",
      paramLabel = "N",
      description = "How many plants. Default: ${DEFAULT-VALUE}.")
  private int count = 24;

  @Option(
      names = "--seed",
      paramLabel = "SEED",
      description =
          "Another seed chooses others; the same one the same. Default: ${DEFAULT-VALUE}.")
  private long seed = 1;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "When they will be weighed, as in 2026-04-16T08:00. Default: now.")
  private String at;

  @Option(
      names = "--out",
      paramLabel = "OUT",
      required = true,
      description = "Folder for picks.csv and picks.html.")
  private Path out;

  GraderPicksCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    if (count < 1 || count > 10_000) {
      throw new ParameterException(spec.commandLine(), "--count must be from 1 to 10000");
    }
    Path book = options.find(console);
    CropBook read = GraderBook.open(book, console);
    GraderBook.hasCrop(read, crop);
    OffsetDateTime when =
        GraderBook.time(read, "--at", at).orElseGet(() -> OffsetDateTime.now(read.zone()));
    int picked =
        PickBook.pick(
            read,
            BookGraders.of(read, book, crop),
            new PickBook.Request(book, crop, count, seed, when, out));
    if (picked == 0) {
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + book,
                  "no photo of the 24 hours before "
                      + when.truncatedTo(ChronoUnit.MINUTES)
                      + " shows "
                      + crop,
                  "run raftgauge over newer photos, or give another --at")));
    }
    console.out().println(picked + " plants to weigh: " + out.resolve("picks.csv"));
    console.out().println("Sheet to print: " + out.resolve("picks.html"));
    return ExitCode.DONE;
  }
}
