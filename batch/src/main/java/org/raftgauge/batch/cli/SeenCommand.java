// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.run.MarkSeen;
import org.raftgauge.batch.run.WorklistRows;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Marks worklist rows as seen, done or put off. */
@Command(
    name = "seen",
    mixinStandardHelpOptions = true,
    header = "Hides rows of the worklist that are done, or puts them off until a day.",
    description = {
      "%nAdds a row to the book's seen.csv for each ITEM. A row is known by its name:",
      "the column item of worklist.csv, the small grey text on the printed worklist."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhich rows:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge seen inspect-lagging/DR-0401/2026-04-06/A1+B2 --until 2026-04-20",
      "",
      "To undo it, delete the row from seen.csv with any text editor: the command says",
      "which line it wrote. The next run shows the row again. Judging an evening from",
      "before the day on which a row was marked (column seen_on) shows it as it stood",
      "then.",
      "",
      "Exit codes: 0 written, 2 wrong call or book (nothing written), 3 failed."
    })
final class SeenCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Parameters(paramLabel = "ITEM", arity = "1..*", description = "Name of a worklist row.")
  private List<String> items;

  @Option(
      names = "--until",
      paramLabel = "DATE",
      description = "The first day on which it may show again. Default: hidden for good.")
  private LocalDate until;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description = "The evening whose worklist has the row. Default: the latest evening.")
  private LocalDate on;

  @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
  private String by = "";

  @Option(names = "--note", paramLabel = "TEXT", description = "What was found.")
  private String note = "";

  @Mixin private BookOptions options;

  SeenCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path folder = options.find(console);
    Workplace.OpenBook open = workplace.open(folder);
    WorklistRows.checkForm(items, open.farm().book());
    LocalDate today = open.farm().evening(OffsetDateTime.now(open.farm().zone()));
    WorklistRows.Asked asked = new WorklistRows.Asked(Optional.ofNullable(on), today);
    WorklistRows rows = WorklistRows.of(folder, open.farm(), open.forecasts(), asked);
    rows.check(items);
    if (until != null) {
      rows.checkUntil(until);
    }
    MarkSeen.Say say = new MarkSeen.Say(items, Optional.ofNullable(until), by, note, today);
    int line = MarkSeen.add(folder, say);
    String when = until == null ? "hidden for good" : "hidden until " + until;
    for (int i = 0; i < items.size(); i++) {
      console.out().println(items.get(i) + ": " + when);
    }
    String lines =
        items.size() == 1 ? "line " + line : "lines " + line + " to " + (line + items.size() - 1);
    console.out().println("To undo, delete " + lines + " of " + folder.resolve("seen.csv"));
    return ExitCode.DONE;
  }
}
