// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.commons.io.FileUtils;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Workplace;
import org.raftgauge.batch.run.BookLooks;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.problem.InputException;

/**
 * A crop book as it travels to every executor: its files and the corrections that were entered, as
 * a history without photos. Each executor unpacks and reads it once, by the same reader as
 * anywhere.
 */
public final class BookFiles implements Serializable {
  private static final long serialVersionUID = 1;

  private static final Set<String> FOLDERS = Set.of("stations", "colour", "graders");
  private static final String HISTORY = "history.db";
  private static final ConcurrentHashMap<Integer, Opened> OPENED = new ConcurrentHashMap<>();

  private final byte[] zip;

  private BookFiles(byte[] zip) {
    this.zip = zip;
  }

  /**
   * A book on this machine.
   *
   * @param book ready to measure by
   * @param folder its files
   * @param corrections every one that was entered
   */
  public record Opened(Workplace.OpenBook book, Path folder, List<Correction> corrections) {

    /** Copies the list. */
    public Opened {
      corrections = List.copyOf(corrections);
    }

    /**
     * Returns a history without photos in which the corrections are entered.
     *
     * @param file to be made
     * @throws IOException if there is no room for it
     */
    public History history(Path file) throws IOException {
      Files.copy(folder.resolve(HISTORY), file);
      return History.open(file);
    }
  }

  /**
   * Packs a book.
   *
   * @param book its folder
   * @return its files
   * @throws IOException if one cannot be read
   */
  public static BookFiles of(Path book) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Stream<Path> walk = Files.walk(book);
        ZipOutputStream zip = new ZipOutputStream(bytes)) {
      List<Path> files = walk.filter(f -> wanted(book.relativize(f))).sorted().toList();
      for (Path file : files) {
        add(zip, book.relativize(file).toString().replace('\\', '/'), Files.readAllBytes(file));
      }
      add(zip, HISTORY, corrections(book));
    }
    return new BookFiles(bytes.toByteArray());
  }

  private static void add(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTime(0);
    zip.putNextEntry(entry);
    zip.write(bytes);
  }

  /** Returns a history file that holds a book's corrections and nothing else. */
  private static byte[] corrections(Path book) throws IOException {
    Path folder = Files.createTempDirectory("raftgauge-corrections");
    try {
      Path file = folder.resolve(HISTORY);
      try (History history = History.open(file)) {
        history.correct(BookLooks.corrections(book));
      }
      return Files.readAllBytes(file);
    } finally {
      FileUtils.deleteQuietly(folder.toFile());
    }
  }

  private static boolean wanted(Path file) {
    String name = file.toString();
    boolean text = name.endsWith(".yaml") || name.endsWith(".csv");
    return text && (file.getNameCount() == 1 || FOLDERS.contains(file.getName(0).toString()));
  }

  /** Returns the book, unpacked and read once in this process. */
  public Opened open() {
    return OPENED.computeIfAbsent(Arrays.hashCode(zip), k -> unpacked());
  }

  private Opened unpacked() {
    try {
      Path folder = Files.createTempDirectory("raftgauge-book");
      Runtime.getRuntime()
          .addShutdownHook(new Thread(() -> FileUtils.deleteQuietly(folder.toFile())));
      Set<Path> made = new HashSet<>();
      try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
        for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
          Path file = folder.resolve(entry.getName()).normalize();
          if (made.add(file.getParent())) {
            Files.createDirectories(file.getParent());
          }
          Files.copy(in, file);
        }
      }
      return new Opened(new BookWorkplace().open(folder), folder, BookLooks.corrections(folder));
    } catch (InputException e) {
      throw new IllegalStateException("the book was read before it was sent: " + e.problems(), e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
