// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Option;

/** Options of every command that works on a crop book. */
final class BookOptions {
  @Option(
      names = "--book",
      paramLabel = "BOOK",
      description = {
        "Folder of the crop book. Default: the one in, beside or above the photos, or this"
            + " folder where no photos are named."
      })
  private Path book;

  @Option(names = "--verbose", description = "Show where the program failed, if it does.")
  private boolean verbose;

  /**
   * Returns the book.
   *
   * @param near where to look for it where it is not named
   * @param console told which one was found
   * @throws InputException where none or several are found, or the named one is no folder
   */
  Path find(Path near, Console console) throws InputException {
    return FindBook.of(Optional.ofNullable(book), near, console);
  }

  /** Returns the book, looked for from this folder where it is not named. */
  Path find(Console console) throws InputException {
    return find(Path.of(""), console);
  }

  /** Says whether the book was named. */
  boolean isNamed() {
    return book != null;
  }

  /** Says whether to show where the program failed. */
  boolean verbose() {
    return verbose;
  }
}
