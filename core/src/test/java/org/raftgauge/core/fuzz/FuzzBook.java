// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;

/**
 * A crop book of any files. The bytes are a bundle: a line {@code --- crops.yaml} begins a file of
 * the book; what stands before the first such line is that file's alone, {@code book.yaml}.
 */
public final class FuzzBook {
  private static final Pattern HEAD = Pattern.compile("(?m)^--- (\\S+)\\R");
  private static final List<String> FILES =
      List.of(
          "book.yaml",
          "crops.yaml",
          "layouts.yaml",
          "stations/s.yaml",
          "plantings.csv",
          "placements.csv",
          "events.csv",
          "weighings.csv",
          "harvests.csv",
          "climate.csv",
          "calls.csv",
          "seen.csv");

  private FuzzBook() {}

  /** Reads a book. */
  public static void fuzzerTestOneInput(byte[] bytes) {
    Path folder = folder();
    try {
      Map<String, byte[]> files = files(bytes);
      for (String name : FILES) {
        Path file = folder.resolve(name);
        if (files.containsKey(name)) {
          Files.write(file, files.get(name));
        } else {
          Files.deleteIfExists(file);
        }
      }
      BookReading reading = CropBook.read(folder);
      Check.problems(reading.problems());
      Check.hold(
          reading.problems().equals(CropBook.read(folder).problems()),
          "a book read twice has other problems");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Splits at the head lines, on bytes, so that what is no UTF-8 stays as it is. */
  private static Map<String, byte[]> files(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    Map<String, byte[]> files = new TreeMap<>();
    String name = "book.yaml";
    int from = 0;
    Matcher head = HEAD.matcher(text);
    while (head.find()) {
      files.put(name, text.substring(from, head.start()).getBytes(StandardCharsets.ISO_8859_1));
      name = head.group(1);
      from = head.end();
    }
    files.put(name, text.substring(from).getBytes(StandardCharsets.ISO_8859_1));
    return files;
  }

  private static Path folder() {
    try {
      Path folder =
          Path.of(System.getProperty("java.io.tmpdir"))
              .resolve("raftgauge-fuzz-" + ProcessHandle.current().pid())
              .resolve("book");
      Files.createDirectories(folder.resolve("stations"));
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
