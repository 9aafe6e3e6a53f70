// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.page.CutSite;
import org.raftgauge.batch.run.AgreeWithCalls;
import org.raftgauge.core.evening.Agreement;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Compares verdicts with the head grower's calls. */
@Command(
    name = "agree",
    mixinStandardHelpOptions = true,
    header = "Compares the verdicts with the head grower's own calls in calls.csv.",
    description = {
      "%nEach call is held against the verdict of its evening, seeing nothing later.",
      "Says how often both agree, beyond chance (Cohen's kappa), where they differ,",
      "and which lagging_share in crops.yaml would agree best. With --out, crops/",
      "shows the sites on which they differ, where a run kept pictures of the boards",
      "(overlays)."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge agree --book my-farm --out agreement",
      "",
      "Exit codes: 0 done, 2 wrong call or book (nothing written), 3 failed."
    })
final class AgreeCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Mixin private BookOptions options;

  @Option(
      names = "--out",
      paramLabel = "OUT",
      description =
          "Folder for agree.csv, agree.txt and crops/: a new or empty one, or an earlier one.")
  private Path out;

  AgreeCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path book = options.find(console);
    Workplace.OpenBook open = workplace.open(book);
    open.problems().forEach(console.err()::println);
    Optional<AgreeWithCalls.Request> request =
        Optional.ofNullable(out).map(o -> new AgreeWithCalls.Request(book, open.farm(), o));
    if (request.isPresent()) {
      AgreeWithCalls.check(request.get());
    }
    Agreement agreement = AgreeWithCalls.of(book, open.farm());
    List<String> lines = AgreeText.lines(agreement);
    lines.forEach(console.out()::println);
    if (request.isPresent()) {
      AgreeWithCalls.publish(request.get(), agreement, lines, CutSite::cut)
          .ifPresent(console.err()::println);
      console.out().println("Results  " + out.toAbsolutePath().normalize());
    }
    return ExitCode.DONE;
  }
}
