// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.print.Paper;
import org.raftgauge.batch.print.PrintTarget;
import org.raftgauge.core.calibrate.CalibrationTarget;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Prints a calibration target. */
@Command(
    name = "target",
    mixinStandardHelpOptions = true,
    header = "Makes a PDF of a lens calibration target.",
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Example:", "  raftgauge station print target --out target.pdf"})
final class PrintTargetCommand implements Callable<Integer> {
  private final Console console;

  @Option(
      names = "--board",
      paramLabel = "TARGET",
      description = "What to print, as for station lens. Default: ${DEFAULT-VALUE}.")
  private String board = "chessboard:9x6:27";

  @Option(
      names = "--paper",
      paramLabel = "PAPER",
      description = "One of ${COMPLETION-CANDIDATES}. Default: ${DEFAULT-VALUE}.")
  private Paper paper = Paper.A4;

  @Option(names = "--out", paramLabel = "FILE", required = true, description = "The PDF to write.")
  private Path out;

  PrintTargetCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    CalibrationTarget target =
        CalibrationTarget.parse(board)
            .orElseThrow(
                () ->
                    problem(
                        "is no target",
                        "write it as in chessboard:9x6:27, nine by six squares of 27 mm"));
    Optional<String> tooLarge = PrintTarget.tooLarge(target, paper);
    if (tooLarge.isPresent()) {
      throw problem(tooLarge.get(), "take fewer or smaller shapes, or --paper A3");
    }
    OutFiles.isNew("--out", out);
    OutFiles.makeParent(out);
    PrintTarget.print(target, paper, out);
    console.out().println("Target   " + out + " (" + target + " on " + paper + ")");
    console.out().println("To do    print at 100 %, measure the check line, glue it flat");
    return ExitCode.DONE;
  }

  private InputException problem(String found, String remedy) {
    return new InputException(List.of(new Problem("--board " + board, found, remedy)));
  }
}
