// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.batch.folder.FindPhotos;
import org.raftgauge.batch.folder.PhotoFolder;
import org.raftgauge.batch.forecast.ForecastOfEvening;
import org.raftgauge.batch.report.RunPage;
import org.raftgauge.batch.run.BookFarm;
import org.raftgauge.batch.run.BookHash;
import org.raftgauge.batch.run.BookMeasurer;
import org.raftgauge.batch.run.FoundPhoto;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Manifest;
import org.raftgauge.core.book.ManifestRow;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Opens crop books and photo folders on disk. */
public final class BookWorkplace implements Workplace {

  @Override
  public OpenBook open(Path folder) throws InputException {
    BookReading reading = CropBook.read(folder);
    CropBook book = reading.book();
    boolean noSettings =
        reading.problems().stream().anyMatch(p -> p.isError() && p.place().startsWith("book.yaml"));
    if (noSettings || book.stations().isEmpty() || book.layouts().isEmpty()) {
      throw new InputException(reading.problems());
    }
    return new OpenBook(
        new BookFarm(book, BookHash.of(folder)),
        new BookMeasurer(book),
        reading.problems(),
        new RunPage(book),
        new ForecastOfEvening(book, folder));
  }

  @Override
  public FoundPhotos photos(Path folder) throws InputException {
    return joined(find(folder), manifest(folder));
  }

  /**
   * Joins photos with the rows of their manifest.
   *
   * @param found the photos
   * @param manifest its rows
   * @return the photos with what is known of them, and what is wrong
   */
  public static FoundPhotos joined(PhotoFolder found, Manifest manifest) {
    Map<String, ManifestRow> left = new LinkedHashMap<>();
    manifest.rows().values().forEach(row -> left.putIfAbsent(composed(row.photo()), row));
    List<FoundPhoto> photos = new ArrayList<>();
    for (String photo : found.photos()) {
      Optional<ManifestRow> row = Optional.ofNullable(left.remove(composed(photo)));
      photos.add(new FoundPhoto(found.fileOf(photo), facts(photo, row)));
    }
    List<Problem> problems = new ArrayList<>(manifest.problems());
    for (ManifestRow row : left.values()) {
      problems.add(
          new Problem(
              "manifest.csv:" + row.line(),
              "there is no photo \"" + row.photo() + "\"",
              "write the path below the photo folder, with forward slashes"));
    }
    found.unreadable().forEach(place -> problems.add(unreadable(place, found.fileOf(place))));
    return new FoundPhotos(photos, problems);
  }

  private static Problem unreadable(String place, Path file) {
    if (Files.isSymbolicLink(file) && Files.isReadable(file) && Files.isDirectory(file)) {
      return new Problem(
          place,
          "is a link to a folder that the photo folder lies in",
          "take it away, or link the folder of the photos alone");
    }
    if (Files.isDirectory(file)) {
      return new Problem(place, "cannot be read", "check its permissions and its disk");
    }
    String found = Files.isSymbolicLink(file) ? "is a link that leads nowhere" : "is no file";
    return new Problem(place, found, "copy the photo itself there, or take it away");
  }

  @Override
  public List<Problem> check(Path book, Optional<Path> photos) {
    BookReading reading = CropBook.read(book);
    List<Problem> problems = new ArrayList<>(reading.problems());
    if (photos.isPresent()) {
      try {
        problems.addAll(new CheckPhotos(photos.get(), reading).problems(photos(photos.get())));
      } catch (InputException e) {
        problems.addAll(e.problems());
      }
    }
    return problems;
  }

  @Override
  public List<String> notes(Path book) {
    return BookNotes.of(CropBook.read(book).book(), Instant.now());
  }

  @Override
  public List<String> notes(Path book, Path photos) {
    BookReading reading = CropBook.read(book);
    try {
      return new CheckPhotos(photos, reading).notes(photos(photos));
    } catch (InputException unreadable) {
      return List.of(); // check lists it among the problems
    }
  }

  static PhotoFolder find(Path folder) throws InputException {
    try {
      return FindPhotos.in(folder);
    } catch (IOException e) {
      throw new InputException(
          List.of(
              new Problem(
                  folder.toString(), "cannot be read: " + e.getMessage(), "check the folder")));
    }
  }

  static Manifest manifest(Path folder) {
    Path file = folder.resolve("manifest.csv");
    return Files.exists(file) ? Manifest.read(file) : Manifest.none();
  }

  /** Some systems write an accent in file names as a character of its own. */
  private static String composed(String path) {
    return Normalizer.normalize(path, Normalizer.Form.NFC);
  }

  private static PhotoFacts facts(String photo, Optional<ManifestRow> row) {
    return row.map(r -> new PhotoFacts(photo, r.takenAt(), r.station(), r.slot(), r.raft()))
        .orElse(PhotoFacts.of(photo));
  }
}
