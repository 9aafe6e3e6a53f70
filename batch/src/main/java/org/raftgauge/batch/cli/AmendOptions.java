// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.raftgauge.batch.run.AmendHistory;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Who corrects, and why: the options of every correction. */
final class AmendOptions {
  private static final int MOST_LETTERS = 300;

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      required = true,
      description = "Why; it is shown wherever the correction shows.")
  private String reason;

  @Option(
      names = "--by",
      paramLabel = "NAME",
      description = "Who says so. Default: the name under which you are logged in.")
  private String by = System.getProperty("user.name", "");

  @Mixin private BookOptions book;

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description = "How long to wait while a run uses the book. Default: ${DEFAULT-VALUE}.")
  private long waitS = 600;

  /** Opens the book and makes ready to enter corrections. */
  AmendHistory open(Workplace workplace, Console console) throws InputException {
    checkText("--reason", reason);
    checkText("--by", by.isEmpty() ? "?" : by);
    Path folder = book.find(console);
    Farm farm = workplace.open(folder).farm();
    OffsetDateTime now = OffsetDateTime.now(farm.zone()).truncatedTo(ChronoUnit.SECONDS);
    return new AmendHistory(
        new AmendHistory.Request(
            folder,
            new Correction.Entry(now, by, reason.strip()),
            Duration.ofSeconds(waitS),
            new QuietProgress(console.err(), book.verbose())::waitingFor),
        farm);
  }

  /** Says what was entered and how to undo it. */
  static int told(List<Correction> entered, Console console) {
    entered.forEach(c -> console.out().println("Entered " + c.words()));
    String numbers = String.join(" ", entered.stream().map(c -> "" + c.number()).toList());
    console.out().println("To undo: raftgauge amend undo " + numbers + " --reason ...");
    console.out().println("The next run obeys it, and judge of this evening and later ones.");
    return ExitCode.DONE;
  }

  private static void checkText(String option, String text) throws InputException {
    boolean plain = text.chars().noneMatch(Character::isISOControl);
    if (text.isBlank() || text.length() > MOST_LETTERS || !plain) {
      throw new InputException(
          List.of(
              new Problem(
                  option,
                  text.isBlank() ? "is empty" : "is over one line of " + MOST_LETTERS + " letters",
                  "say in one line what is wrong, as in \"hand in the picture\"")));
    }
  }
}
