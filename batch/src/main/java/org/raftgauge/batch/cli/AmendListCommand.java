// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.raftgauge.batch.run.JudgeFolder;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.Corrections;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists corrections. */
@Command(
    name = "list",
    mixinStandardHelpOptions = true,
    header = "Lists every correction ever entered, and whether it holds.",
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n")
final class AmendListCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private BookOptions options;

  AmendListCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path folder = options.find(console);
    try (History history = JudgeFolder.open(folder)) {
      List<Correction> entered = history.corrections();
      Set<Integer> standing = Corrections.standing(entered);
      for (Correction each : entered) {
        console.out().println((standing.contains(each.number()) ? "" : "undone: ") + each.words());
      }
      if (entered.isEmpty()) {
        console.out().println("No corrections");
      }
    }
    return ExitCode.DONE;
  }
}
