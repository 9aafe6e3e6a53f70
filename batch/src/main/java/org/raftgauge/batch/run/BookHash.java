// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Hashes the files of a book that the grower keeps: YAML and CSV, by path and content. */
public final class BookHash {

  private BookHash() {}

  /**
   * Hashes a book.
   *
   * @param book its folder
   * @return 64 hex digits; files that cannot be read count by their names alone
   */
  public static String of(Path book) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (Path folder : List.of(book, book.resolve("stations"), book.resolve("colour"))) {
      for (Path file : files(folder)) {
        all.writeBytes((book.relativize(file) + "\n").getBytes(StandardCharsets.UTF_8));
        all.writeBytes(content(file));
      }
    }
    return Digest.of(all.toByteArray());
  }

  private static List<Path> files(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.toString().endsWith(".yaml") || f.toString().endsWith(".csv"))
          .sorted()
          .toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  private static byte[] content(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      return new byte[0];
    }
  }
}
