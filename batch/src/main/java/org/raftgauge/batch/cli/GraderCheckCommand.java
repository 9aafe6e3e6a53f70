// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.grade.BookGraders;
import org.raftgauge.batch.grade.CheckBook;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Tests new weighings against a grader. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    header = "Tests new weighings against a fitted grader: keep, refit or investigate.",
    description = {
      "%nNew are weighings after the last that the grader was fitted on. Says bias and",
      "limits of agreement, drift over time, and which weighings to look at. Writes",
      "nothing."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Example:", "  raftgauge grader check --book my-farm --crop butterhead"})
final class GraderCheckCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private BookOptions options;

  @Option(names = "--crop", paramLabel = "CROP", required = true, description = "Whose grader.")
  private String crop;

  @Option(
      names = "--since",
      paramLabel = "TIME",
      description = "Test weighings after this time instead, as in 2026-04-16T08:00.")
  private String since;

  GraderCheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path book = options.find(console);
    CropBook read = GraderBook.open(book, console);
    GraderBook.hasCrop(read, crop);
    Optional<Grader> grader = BookGraders.of(read, book, crop);
    if (grader.isEmpty()) {
      throw new InputException(
          List.of(
              new Problem(
                  "--crop",
                  "there is no grader of " + crop,
                  "make one with raftgauge grader fit")));
    }
    CheckBook.check(read, book, grader.get(), GraderBook.time(read, "--since", since))
        .forEach(console.out()::println);
    return ExitCode.DONE;
  }
}
