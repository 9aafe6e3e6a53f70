// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.raftgauge.batch.run.MarkSeen;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;
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
      "%nAdds a row to the book's seen.csv for each ITEM. A row is known by its name: the",
      "column item of worklist.csv, the small grey text on the printed worklist."
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
      "which line it wrote. The next run, or judge, shows the row again.",
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
    CropBook crops = workplace.open(folder).farm().book();
    for (String item : items) {
      check(item, crops);
    }
    MarkSeen.Say say = new MarkSeen.Say(items, Optional.ofNullable(until), by, note);
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

  /** Refuses a name that no worklist row of this book can have. */
  private static void check(String item, CropBook book) throws InputException {
    String[] parts = item.split("/", -1);
    if (parts.length < 3) {
      throw wrong(
          item,
          "is not the name of a worklist row",
          "copy it from the column item of worklist.csv");
    }
    TreeSet<String> known = new TreeSet<>(book.stations().keySet());
    book.plantings().stream().map(Planting::raft).forEach(known::add);
    book.plantings().stream().map(Planting::pond).forEach(known::add);
    if (known.stream().noneMatch(name -> item.startsWith(parts[0] + "/" + name + "/"))) {
      String guess =
          NearestSpelling.of(parts[1], known).map(n -> "did you mean \"" + n + "\"? ").orElse("");
      throw wrong(
          item,
          "speaks of \"" + parts[1] + "\", which is no raft, pond or station of the book",
          guess + "copy it from the column item of worklist.csv");
    }
  }

  private static InputException wrong(String item, String found, String remedy) {
    return new InputException(List.of(new Problem("ITEM \"" + item + "\"", found, remedy)));
  }
}
