// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Excludes photos. */
@Command(
    name = "exclude",
    mixinStandardHelpOptions = true,
    header = "Lets photos count no more, as if they had not been taken.",
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhich photos:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge amend exclude 2026-04-11/IMG_31.jpg --reason \"hand in the picture\""
    })
final class AmendExcludeCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Parameters(
      paramLabel = "PHOTO",
      arity = "1..*",
      description =
          "Its file, its path or name as in photos.csv, a folder as 2026-04-11/, or the first 8 or more digits of"
              + " the sha256.")
  private List<String> photos;

  @Mixin private AmendOptions options;

  AmendExcludeCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    return AmendOptions.told(options.open(workplace, console).exclude(photos), console);
  }
}
