// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.forecast.ForecastBook;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.table.DateText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Forecasts weights, ready days and supply from a book's history. */
@Command(
    name = "forecast",
    mixinStandardHelpOptions = true,
    header = "Forecasts what rafts will weigh and when they are ready.",
    description = {
      "%nFrom the book and its history alone, seeing nothing later than the evening:",
      "forecast.csv (rafts, ponds, crops by day), supply.csv (what is ready by crop",
      "and day), plan.csv (a harvest plan to edit) and plan-totals.csv (what it",
      "yields). A crop without a grader, or with one fitted later than the evening, is",
      "told by area only."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge forecast --book my-farm --on 2026-04-16 --out forecast",
      "",
      "Weights are estimates from pictures, not legal-for-trade weighing.",
    })
final class ForecastCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;

  @Mixin private BookOptions options;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      required = true,
      description = "The evening from which is forecast, as in 2026-04-16.")
  private String on;

  @Option(
      names = "--days",
      paramLabel = "N",
      description = "Coming days, 1 to 60. Default: ${DEFAULT-VALUE}.")
  private int days = 14;

  @Option(
      names = "--plan",
      paramLabel = "PLAN",
      description = "An edited plan.csv; its totals are written in place of a proposal's.")
  private Path plan;

  @Option(
      names = "--out",
      paramLabel = "OUT",
      required = true,
      description = "Folder to write to. A plan.csv there that was edited is not overwritten.")
  private Path out;

  ForecastCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    if (days < 1 || days > 60) {
      throw new ParameterException(spec.commandLine(), "--days must be from 1 to 60");
    }
    Findings findings = new Findings();
    Optional<LocalDate> evening = DateText.read("--on", on, findings);
    if (evening.isEmpty()) {
      List<Problem> wrong = findings.list();
      throw new InputException(wrong);
    }
    Path book = options.find(console);
    CropBook read = GraderBook.open(book, console);
    new ForecastBook(read, book)
        .forecast(evening.get(), days, Optional.ofNullable(plan), out)
        .forEach(console.out()::println);
    return ExitCode.DONE;
  }
}
