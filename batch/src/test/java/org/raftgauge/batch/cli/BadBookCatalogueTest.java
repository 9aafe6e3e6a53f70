// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * The catalogue of broken books in {@code bad-input/book.txt}: each is a sound book with one thing
 * wrong, and {@code check} must say exactly what stands there, all of it at once, with exit code.
 * The expected messages were read and judged by a person: place, what was found, remedy.
 */
class BadBookCatalogueTest {
  private static final Path FOLDER = Path.of("src", "test", "resources", "bad-input");

  @TempDir private Path scratch;

  @Test
  void theSoundBookHasNoProblem() throws IOException {
    assertEquals(List.of("exit 0"), said(new BookCase("sound", List.of(), 0, List.of())));
  }

  @TestFactory
  List<DynamicTest> eachBrokenBookIsSaidWithPlaceAndRemedy() throws IOException {
    return BookCase.read(FOLDER.resolve("book.txt")).stream()
        .map(each -> DynamicTest.dynamicTest(each.name(), () -> assertSaid(each)))
        .toList();
  }

  private void assertSaid(BookCase each) throws IOException {
    List<String> expected = new ArrayList<>(List.of("exit " + each.exitCode()));
    expected.addAll(each.messages());
    assertEquals(String.join("\n", expected), String.join("\n", said(each)));
  }

  private List<String> said(BookCase each) throws IOException {
    Path book = Files.createTempDirectory(scratch, "book");
    copy(FOLDER.resolve("book"), book);
    each.apply(book);
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream errors = new PrintStream(err, true, StandardCharsets.UTF_8);
    PrintStream nowhere =
        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
    Console console = new Console(nowhere, errors, false);
    String[] call = {"check", "--book", book.toString()};
    int code = Raftgauge.run(call, new BookWorkplace(), console);
    List<String> said = new ArrayList<>(List.of("exit " + code));
    BookCase.lines(err.toByteArray()).stream()
        .filter(line -> !line.matches("\\d+ problems?"))
        .forEach(said::add);
    return said;
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path copy = to.resolve(from.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
  }
}
