// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.begin;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Writes a new crop book. */
public final class WriteBook {

  private WriteBook() {}

  /**
   * Writes a book, whole or not at all; the program reads it before it stands in its place.
   *
   * @param beginning what it is begun with
   * @param book its folder, which must not exist or be empty
   * @return its files, in the order in which to read them
   * @throws InputException if the folder holds something, or the answers do not go together
   * @throws IOException if it cannot be written
   */
  public static List<String> write(Beginning beginning, Path book)
      throws InputException, IOException {
    refuseTaken(book);
    Path place = book.toAbsolutePath().normalize();
    Map<String, String> files = files(beginning);
    Files.createDirectories(place.getParent());
    Path draft = Files.createTempDirectory(place.getParent(), ".book-");
    try {
      for (Map.Entry<String, String> file : files.entrySet()) {
        Path to = draft.resolve(file.getKey());
        Files.createDirectories(to.getParent());
        Files.writeString(to, file.getValue());
      }
      List<Problem> problems = CropBook.read(draft).problems();
      if (!problems.isEmpty()) {
        throw new InputException(problems);
      }
      Files.move(draft, place, StandardCopyOption.ATOMIC_MOVE);
    } catch (FileAlreadyExistsException | DirectoryNotEmptyException raced) {
      throw new InputException(
          List.of(new Problem("BOOK " + book, "was made by another", "give a new folder")));
    } finally {
      delete(draft);
    }
    return List.copyOf(files.keySet());
  }

  /**
   * Refuses a folder that holds something.
   *
   * @param book the book's folder
   * @throws InputException if it is not new or empty
   * @throws IOException if it cannot be looked into
   */
  public static void refuseTaken(Path book) throws InputException, IOException {
    Path place = book.toAbsolutePath().normalize();
    if (Files.exists(place) && !isEmpty(place)) {
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + book,
                  "is there already",
                  "give a new folder; nothing is overwritten")));
    }
  }

  private static Map<String, String> files(Beginning beginning) throws InputException {
    BookTexts texts = new BookTexts(beginning);
    Map<String, String> files = new LinkedHashMap<>();
    files.put("book.yaml", texts.settings());
    files.put("stations/" + beginning.camera().station() + ".yaml", texts.station());
    files.put("layouts.yaml", texts.layouts());
    files.put("crops.yaml", texts.crops());
    files.put("plantings.csv", texts.plantings());
    if (beginning.camera().kind() == Station.Kind.FIXED) {
      files.put("placements.csv", texts.placements());
    }
    return files;
  }

  private static boolean isEmpty(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> list = Files.list(folder)) {
      return list.findAny().isEmpty();
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> paths = new ArrayList<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      walk.sorted(Comparator.reverseOrder()).forEach(paths::add);
    }
    for (Path path : paths) {
      Files.deleteIfExists(path);
    }
  }
}
