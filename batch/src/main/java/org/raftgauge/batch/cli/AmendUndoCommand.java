// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Undoes corrections. */
@Command(
    name = "undo",
    mixinStandardHelpOptions = true,
    header = "Undoes corrections; undoing an undoing lets the first hold again.",
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhich corrections:%n",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Example:", "  raftgauge amend undo 2 --reason \"the tag was right\""})
final class AmendUndoCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Parameters(
      paramLabel = "NUMBER",
      arity = "1..*",
      description = "Number of a correction, as in \"raftgauge amend list\".")
  private List<Integer> numbers;

  @Mixin private AmendOptions options;

  AmendUndoCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    return AmendOptions.told(options.open(workplace, console).undo(numbers), console);
  }
}
