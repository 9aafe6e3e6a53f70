// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.batch.store.ClockShift;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Mends the times of photos. */
@Command(
    name = "clock",
    mixinStandardHelpOptions = true,
    header = "Mends the times of photos whose camera's clock was wrong.",
    description = {
      "%nWhat was measured stays as it is. Where the time told which raft lay in a slot,",
      "give the times in manifest.csv and run again instead."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhich photos:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge amend clock 2026-04-12/ --shift +1:00 --reason \"summer time\""
    })
final class AmendClockCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Parameters(
      paramLabel = "PHOTO",
      arity = "1..*",
      description =
          "Its file, its path or name as in photos.csv, a folder as 2026-04-11/, or the first 8 or more digits of"
              + " the sha256.")
  private List<String> photos;

  @Option(
      names = "--shift",
      paramLabel = "HOURS:MINUTES",
      required = true,
      description = "What is added to the times, as in +1:00 or -26:30 (seconds: +0:03:20).")
  private String shift;

  @Mixin private AmendOptions options;

  AmendClockCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Duration by = ClockShift.parse(shift).orElse(Duration.ZERO);
    if (by.isZero()) {
      throw new InputException(
          List.of(
              new Problem(
                  "--shift",
                  "\"" + shift + "\" is no shift of a clock",
                  "write sign, hours and minutes, as in +1:00 or -26:30")));
    }
    return AmendOptions.told(options.open(workplace, console).clock(photos, by), console);
  }
}
