// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.concurrent.Callable;
import org.raftgauge.batch.run.JudgeFolder;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Judges an evening from the history. */
@Command(
    name = "judge",
    mixinStandardHelpOptions = true,
    header = "Judges an evening from what the book remembers, without photos.",
    description = {
      "%nWrites verdicts.csv, curves.csv, worklist.csv (and to print as PDF) and a file",
      "for each pond in ponds/, of that evening. Nothing later",
      "than the evening is looked at: no later photo, event, weighing, harvest, call,",
      "correction or row marked seen.",
      "A verdict says that growth departs from what is expected, not why."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge judge --book my-farm --on 2026-04-16 --out that-evening",
      "",
      "Exit codes: 0 published, 2 wrong call or book (nothing written), 3 failed."
    })
final class JudgeCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Mixin private BookOptions options;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      required = true,
      description = "The evening, as in 2026-04-16: the date on which the farm's day begins.")
  private LocalDate on;

  @Option(
      names = "--out",
      paramLabel = "OUT",
      required = true,
      description = "Folder for the results: a new or empty one, or that of an earlier judge.")
  private Path out;

  @Option(
      names = "--corrected",
      description = {
        "Also obey corrections (raftgauge amend) and rows marked seen that were entered after that"
            + " evening. Default: those that were known then."
      })
  private boolean corrected;

  @Option(names = "--quiet", description = "Say nothing unless something is wrong.")
  private boolean quiet;

  JudgeCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  private JudgeFolder.Corrected corrected() {
    return corrected ? JudgeFolder.Corrected.SINCE : JudgeFolder.Corrected.THAT_EVENING;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path book = options.find(console);
    Workplace.OpenBook open = workplace.open(book);
    open.problems().forEach(console.err()::println);
    OffsetDateTime now = OffsetDateTime.now(open.farm().zone());
    JudgeFolder.Published published =
        JudgeFolder.run(
            new JudgeFolder.Request(book, on, out, now, corrected()),
            open.farm(),
            open.forecasts());
    published.left().ifPresent(console.err()::println);
    EveningResult result = published.evening();
    if (!quiet) {
      console.out().println("Evening  " + result.evening());
      EveningText.lines(result).forEach(console.out()::println);
      console.out().println("Results  " + out.toAbsolutePath().normalize());
    }
    return ExitCode.DONE;
  }
}
