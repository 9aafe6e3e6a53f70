// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints a script that completes commands and options in a shell. */
@Command(
    name = "completion",
    mixinStandardHelpOptions = true,
    header = "Prints a script by which bash or zsh completes commands and options.",
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example, for this shell; in ~/.bashrc it holds for every new one:",
      "  source <(raftgauge completion)"
    })
final class CompletionCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;

  CompletionCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    console.out().print(AutoComplete.bash("raftgauge", spec.root().commandLine()));
    return ExitCode.DONE;
  }
}
