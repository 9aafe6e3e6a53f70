// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Replays the corpus of the fuzz targets, and of each file some changes drawn with a fixed seed: a
 * short run that is the same on every machine. Files called {@code found-} once broke something.
 */
class FuzzCorpusTest {
  private static final Path CORPUS = Path.of("src", "test", "resources", "fuzz");

  @Test
  void booksOfAnyBytesAreReadWithoutAFall() throws IOException {
    replay("book", FuzzBook::fuzzerTestOneInput, 15);
  }

  @Test
  void tablesOfAnyTextAreReadWithoutAFall() throws IOException {
    replay("csv", FuzzCsv::fuzzerTestOneInput, 200);
  }

  @Test
  void labelsOfAnyTextAreReadWithoutAFall() throws IOException {
    replay("tag", FuzzTag::fuzzerTestOneInput, 25);
  }

  @Test
  void photosOfAnyBytesAreReadWithoutAFall() throws IOException {
    replay("photo", FuzzPhoto::fuzzerTestOneInput, 40);
  }

  private static void replay(String target, Consumer<byte[]> reader, int changes)
      throws IOException {
    List<Path> files;
    try (Stream<Path> list = Files.list(CORPUS.resolve(target))) {
      files = list.sorted().toList();
    }
    assertTrue(files.size() >= 5, "the corpus was found");
    Random random = new Random(20261128);
    for (Path file : files) {
      byte[] bytes = Files.readAllBytes(file);
      read(reader, bytes, file + " as it is");
      for (int i = 0; i < changes; i++) {
        read(reader, changed(bytes, random), file + ", change " + i);
      }
    }
  }

  private static void read(Consumer<byte[]> reader, byte[] bytes, String what) {
    try {
      reader.accept(bytes);
    } catch (RuntimeException | AssertionError e) {
      throw new AssertionError(what + ": " + e, e);
    }
  }

  /** Changes, doubles or takes away some bytes. */
  private static byte[] changed(byte[] bytes, Random random) {
    byte[] copy = bytes.clone();
    for (int n = random.nextInt(4); n >= 0 && copy.length > 0; n--) {
      int at = random.nextInt(copy.length);
      int length = Math.min(copy.length - at, 1 + random.nextInt(8));
      switch (random.nextInt(4)) {
        case 0 -> copy[at] = (byte) random.nextInt(256);
        case 1 -> copy[at] ^= (byte) (1 << random.nextInt(8));
        case 2 -> copy = joined(copy, at + length, at);
        default -> copy = joined(copy, at, at + length);
      }
    }
    return copy;
  }

  /** Joins the bytes before a place with those from another on. */
  private static byte[] joined(byte[] bytes, int until, int from) {
    byte[] joined = Arrays.copyOf(bytes, until + bytes.length - from);
    System.arraycopy(bytes, from, joined, until, bytes.length - from);
    return joined;
  }
}
