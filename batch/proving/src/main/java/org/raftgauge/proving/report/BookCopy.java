// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** Copies a crop book without what runs left in it. */
final class BookCopy {
  private static final List<String> LEAVINGS = List.of("history.db", "run.lock", "runs");

  private BookCopy() {}

  /** Copies all files over those that are there. */
  static void of(Path book, Path copy) throws IOException {
    try (Stream<Path> files = Files.walk(book)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        Path below = book.relativize(file);
        if (!LEAVINGS.contains(below.getName(0).toString())) {
          Path to = copy.resolve(below.toString());
          Files.createDirectories(to.getParent());
          Files.copy(file, to, StandardCopyOption.REPLACE_EXISTING);
        }
      }
    }
  }

  /**
   * Copies a book with other colour models named where the built-in ones were.
   *
   * @param book the book
   * @param copy the copy's folder
   * @param model gives the name for {@code green} and for {@code red}
   * @return the copy
   */
  static Path naming(Path book, Path copy, UnaryOperator<String> model) throws IOException {
    of(book, copy);
    Path crops = copy.resolve("crops.yaml");
    String text = Files.readString(crops);
    for (String leaf : List.of("green", "red")) {
      String named = "(colour_model: *)" + leaf + "-leaf(?![-\\w])";
      text = text.replaceAll(named, "$1" + model.apply(leaf));
    }
    Files.writeString(crops, text);
    return copy;
  }
}
