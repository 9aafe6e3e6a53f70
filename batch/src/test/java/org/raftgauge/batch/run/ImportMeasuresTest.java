// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.SilentProgress;
import org.raftgauge.batch.fixture.SmallFarm;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Origin;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

class ImportMeasuresTest {
  private static final Duration NO_WAIT = Duration.ofSeconds(1);

  @TempDir Path folder;

  private Path book;
  private Path sites;

  @BeforeEach
  void makeBook() throws IOException {
    book = folder.resolve("book");
    SmallFarm.writeBook(book);
    // Four evenings of six rafts.
    sites = Files.writeString(folder.resolve("sites.csv"), SmallFarm.measures(3));
  }

  @Test
  void aRunsOwnTableAddsNothingToTheBookThatItCameFrom() throws InputException, IOException {
    asMeasuredByARun(List.of(0, 1, 2, 3));
    ImportMeasures.Outcome outcome = imported(sites);
    assertEquals(0, outcome.added());
    assertEquals(24, outcome.known());
    assertEquals(
        List.of(
            "SITES_CSV "
                + sites
                + ": 24 photos are some that a run on this book measured itself, and its measures"
                + " stay; nothing is to be done; to see another program's measures of the same"
                + " photos, import them into a copy of the book without history.db"),
        outcome.warnings().stream().map(Object::toString).toList());
  }

  @Test
  void theSameMomentWrittenWithAnotherOffsetIsTheSame() throws InputException, IOException {
    asMeasuredByARun(List.of(0, 1, 2, 3));
    Path shifted =
        Files.writeString(
            folder.resolve("shifted.csv"),
            SmallFarm.HEAD + "K-1,A1,2027-03-02T07:00+13:00,9\nK-1,A1,2027-03-02T07:00,9\n");
    ImportMeasures.Outcome outcome = imported(shifted);
    // 07:00 at +13:00 is the photo of 1 March 18:00 UTC; 07:00 UTC is another.
    assertEquals(1, outcome.known());
    assertEquals(1, outcome.added());
  }

  @Test
  void eveningsThatNoRunMeasuredAreTakenIn() throws InputException, IOException {
    asMeasuredByARun(List.of(0, 1));
    ImportMeasures.Outcome outcome = imported(sites);
    assertEquals(12, outcome.added());
    assertEquals(12, outcome.known());
  }

  @Test
  void measuresMadeElsewhereCanBeMendedAndImportedAgain() throws InputException, IOException {
    imported(sites);
    Path mended =
        Files.writeString(
            folder.resolve("mended.csv"), SmallFarm.HEAD + "K-1,A1,2027-03-01T18:00,9.9\n");
    assertEquals(1, imported(mended).added());
  }

  @Test
  void raftWhosePlantingCannotBeReadIsNotCalledUnknown() throws InputException, IOException {
    Path plantings = book.resolve("plantings.csv");
    String rows = Files.readString(plantings);
    String wrong =
        rows.lines()
            .map(row -> row.startsWith("K-1,") ? row.replaceAll("2027-\\d\\d-", "2027-13-") : row)
            .collect(Collectors.joining("\n", "", "\n"));
    Files.writeString(plantings, wrong);
    assertEquals(
        List.of(
            "plantings.csv:3: column transplanted_on: \"2027-13-01\" is not a date; write"
                + " year-month-day, as in 2026-04-06"),
        CropBook.read(book).problems().stream().map(Problem::toString).toList());
    List<String> warnings = imported(sites).warnings().stream().map(Problem::toString).toList();
    assertEquals(1, warnings.size(), warnings.toString());
    assertTrue(
        warnings
            .get(0)
            .endsWith(
                "column raft: what the book says of raft K-1 cannot be read, as said above; mend"
                    + " that first; its rows here are kept, and not judged until then"),
        warnings.get(0));
  }

  private ImportMeasures.Outcome imported(Path table) throws InputException, IOException {
    BookReading read = CropBook.read(book);
    return new ImportMeasures(read, new SilentProgress()).run(table, book, NO_WAIT);
  }

  /** Puts evenings of the table into the history as if a run had measured them from photos. */
  private void asMeasuredByARun(List<Integer> evenings) throws InputException, IOException {
    BookReading read = CropBook.read(book);
    try (History history = History.open(book.resolve("history.db"))) {
      for (PhotoMeasure photo : ReadSitesCsv.read(sites, read).photos()) {
        LocalDate day = photo.takenAt().orElseThrow().toLocalDate();
        if (evenings.contains((int) (day.toEpochDay() - SmallFarm.FIRST.toEpochDay()))) {
          Origin origin = new Origin("settings", "2027-03-05T09:00:00Z", "1", "code");
          history.save(List.of(new Kept(ofBytes(photo), origin, Optional.empty())));
        }
      }
    }
  }

  private static PhotoMeasure ofBytes(PhotoMeasure photo) {
    return new PhotoMeasure(
        photo.photo(),
        Digest.of("bytes of", photo.sha256()),
        photo.station(),
        photo.takenAt(),
        "",
        photo.status(),
        "",
        "",
        photo.sharpness(),
        photo.exposureClippedFraction(),
        photo.lightCast(),
        photo.rafts());
  }
}
