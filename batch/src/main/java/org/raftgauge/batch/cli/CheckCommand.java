// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Checks a book, and a photo folder. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    header = "Lists everything that is wrong with a book and a photo folder.",
    description = {
      "%nReads everything, measures nothing. Each line says the place, what was found",
      "and what to do."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to check besides the book:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge check --book my-farm photos/tonight",
      "",
      "Exit codes: 0 nothing is wrong, 2 something is."
    })
final class CheckCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Parameters(
      paramLabel = "PHOTOS",
      arity = "0..1",
      description = "Folder of photos with their manifest; only headers are read.")
  private Path photos;

  @Mixin private BookOptions options;

  CheckCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException {
    if (photos != null) {
      Folders.exists("PHOTOS", photos, "give the folder that holds the photos");
      Folders.notABook(photos, workplace);
    }
    Path book = options.find(photos == null ? Path.of("") : photos, console);
    List<Problem> problems = workplace.check(book, Optional.ofNullable(photos));
    problems.forEach(console.err()::println);
    List<String> ofPhotos = photos == null ? List.of() : workplace.notes(book, photos);
    if (problems.isEmpty()) {
      console
          .out()
          .println("Nothing is wrong with " + book + (photos == null ? "" : " and " + photos));
      ofPhotos.forEach(this::note);
      workplace.notes(book).forEach(this::note);
      return ExitCode.DONE;
    }
    ofPhotos.forEach(this::note);
    console.err().println(problems.size() == 1 ? "1 problem" : problems.size() + " problems");
    return ExitCode.WRONG_INPUT;
  }

  private void note(String text) {
    console.out().println("Note: " + text);
  }
}
