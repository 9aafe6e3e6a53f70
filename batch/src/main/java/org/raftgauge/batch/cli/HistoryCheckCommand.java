// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.raftgauge.batch.run.JudgeFolder;
import org.raftgauge.batch.store.Backups;
import org.raftgauge.batch.store.CheckHistory;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Checks the history. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    header = "Looks through the whole history, and its backups, for damage.",
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Exit codes: 0 whole, 2 wrong call or book, 3 damaged or not readable."})
final class HistoryCheckCommand implements Callable<Integer> {
  private final Console console;

  @Mixin private HistoryOptions options;

  HistoryCheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Path book = options.folder(console);
    boolean whole;
    try (History history = JudgeFolder.open(book)) {
      whole = said("history.db", history.check());
    }
    List<Path> backups = Backups.beside(book.resolve("history.db")).all();
    for (Path backup : backups) {
      String name = backup.getParent().getFileName() + "/" + backup.getFileName();
      console.out().println(name + ": " + Files.getLastModifiedTime(backup) + ", " + state(backup));
    }
    if (backups.isEmpty()) {
      console.out().println("No backups yet; \"raftgauge history backup\" makes one");
    }
    if (!whole) {
      console
          .err()
          .println("The history is damaged: move it away and copy the latest whole backup there.");
    }
    return whole ? ExitCode.DONE : ExitCode.FAILED;
  }

  private boolean said(String name, CheckHistory.Found found) {
    found.damage().forEach(line -> console.out().println(name + ": " + line));
    String rows =
        found.rows().entrySet().stream()
            .map(e -> e.getValue() + " " + e.getKey().replace('_', ' '))
            .collect(Collectors.joining(", "));
    if (found.damage().isEmpty()) {
      console.out().println(name + ": whole; " + rows);
    }
    return found.damage().isEmpty();
  }

  /** Says whether a backup is whole; one of an older version is not brought up for that. */
  private static String state(Path backup) {
    try {
      List<String> damage = Backups.check(backup);
      return damage.isEmpty() ? "whole" : "damaged: " + damage.get(0);
    } catch (IOException e) {
      return "damaged: " + e.getMessage();
    }
  }
}
