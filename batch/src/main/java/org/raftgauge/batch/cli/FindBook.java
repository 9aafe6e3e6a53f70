// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Finds the crop book that belongs to a folder where none is named. */
final class FindBook {
  private static final String SETTINGS = "book.yaml";

  /** Folders looked in above the first; a book lies near its photos. */
  private static final int LEVELS = 5;

  private FindBook() {}

  /**
   * Returns the named book, or the one that a folder lies in or beside, or that lies in or beside
   * one of the folders above it; the nearest counts.
   *
   * @param named the book, where a person named it
   * @param from where to look from
   * @param console told which one was found
   * @return the book's folder
   * @throws InputException where none or several are found, or the named one is no folder
   */
  static Path of(Optional<Path> named, Path from, Console console) throws InputException {
    if (named.isPresent()) {
      Folders.exists("BOOK", named.get(), "give the folder that holds book.yaml");
      return named.get();
    }
    Path folder = from.toAbsolutePath().normalize();
    for (int level = 0; level <= LEVELS && folder != null; level++) {
      List<Path> books = in(folder);
      if (books.size() > 1) {
        throw several(books);
      }
      if (books.size() == 1) {
        console.err().println("Book     " + books.get(0) + " (found; --book names another)");
        return books.get(0);
      }
      folder = folder.getParent();
    }
    throw new InputException(
        List.of(
            new Problem(
                "BOOK",
                "no folder with a book.yaml lies in, beside or above "
                    + (from.toString().isEmpty() ? "this folder" : "\"" + from + "\""),
                "name the crop book with --book, or begin one with \"raftgauge new\"")));
  }

  /** Returns a folder that is a book, or the books that lie in it. */
  private static List<Path> in(Path folder) {
    if (Files.isRegularFile(folder.resolve(SETTINGS))) {
      return List.of(folder);
    }
    try (Stream<Path> list = Files.list(folder)) {
      return list.filter(p -> Files.isRegularFile(p.resolve(SETTINGS))).sorted().toList();
    } catch (IOException notReadable) {
      return List.of();
    }
  }

  private static InputException several(List<Path> books) {
    String names = books.stream().map(Path::toString).collect(Collectors.joining(" and "));
    return new InputException(
        List.of(
            new Problem(
                "BOOK",
                books.size() + " books are equally near: " + names,
                "name one with --book")));
  }
}
