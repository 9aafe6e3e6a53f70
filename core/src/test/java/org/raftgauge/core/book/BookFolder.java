// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.raftgauge.core.problem.Problem;

/** A small sound crop book in a folder of a test, of which a test changes one file. */
public final class BookFolder {
  /** A passing and a fixed station, a 2 x 3 and a 1 x 4 board, two crops, three rafts. */
  private static final String BOOK =
      """
      time_zone: Europe/Lisbon
      day_starts_at: "04:00"
      station: bench
      photo_name: "{date}_{raft}"
      """;

  private static final String LAYOUTS =
      """
      layouts:
        small:
          board: {width_mm: 400, length_mm: 300}
          sites: {rows: 2, columns: 3, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
        strip:
          board: {width_mm: 800, length_mm: 200}
          sites: {rows: 1, columns: 4, first_x_mm: 100, first_y_mm: 100, pitch_x_mm: 200, pitch_y_mm: 100}
      """;

  private static final String CROPS =
      """
      crops:
        basil:
          colour_model: green-leaf
          height_model: {scale_mm: 5.2, exponent: 0.5}
        lettuce:
          colour_model: red-leaf
          height_model: {scale_mm: 2, exponent: 0.5, mean_to_top: 0.6}
      """;

  private static final String BENCH =
      """
      kind: passing
      image_width_px: 1200
      image_height_px: 2000
      lens: {fx_px: 2200}
      camera_height_mm: 1600
      """;

  private static final String OVER_POND =
      """
      kind: fixed
      image_width_px: 1200
      image_height_px: 2000
      lens: {fx_px: 2200}
      camera_height_mm: 2600
      slots:
        - {name: left, layout: small, corners_px: [[10, 10], [500, 12], [498, 700], [12, 702]]}
        - {name: right, layout: small, corners_px: [[600, 10], [1100, 12], [1098, 700], [612, 702]], refine: none}
      """;

  private static final String PLANTINGS =
      """
      raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot
      R1,P1,1,basil,,small,,2026-03-20,2026-04-06,,,L1
      R2,P1,2,lettuce,,strip,,2026-03-20,2026-04-06,,,L2
      T1,P2,,basil,,small,A1-B2,2026-04-01,,,,L3
      """;

  private final Path folder;

  private BookFolder(Path folder) {
    this.folder = folder;
  }

  /** Writes the sound book. */
  public static BookFolder in(Path folder) {
    return new BookFolder(folder)
        .with("book.yaml", BOOK)
        .with("layouts.yaml", LAYOUTS)
        .with("crops.yaml", CROPS)
        .with("stations/bench.yaml", BENCH)
        .with("stations/over-pond.yaml", OVER_POND)
        .with("plantings.csv", PLANTINGS);
  }

  /** Goes on with the book that stands in a folder. */
  static BookFolder standingIn(Path folder) {
    return new BookFolder(folder);
  }

  /** Returns the text of a file. */
  static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Writes a file over what is there. */
  public BookFolder with(String name, String text) {
    try {
      Path file = folder.resolve(name);
      Files.createDirectories(file.getParent());
      Files.writeString(file, text);
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Changes a text that must stand in a file. */
  public BookFolder change(String name, String from, String to) {
    try {
      String text = Files.readString(folder.resolve(name));
      assertEquals(true, text.contains(from), from + " stands in " + name);
      return with(name, text.replace(from, to));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Adds lines to the plantings. */
  public BookFolder plantings(String lines) {
    return with("plantings.csv", PLANTINGS + lines);
  }

  /** Writes events with the full header. */
  public BookFolder events(String lines) {
    return with("events.csv", "at,kind,raft,site,to_raft,to_site,by,note,to_layout\n" + lines);
  }

  /** Deletes a file. */
  public BookFolder without(String name) {
    try {
      Files.delete(folder.resolve(name));
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Reads the book as it is. */
  public BookReading read() {
    return CropBook.read(folder);
  }

  /** Reads the book, which must have no problem. */
  public CropBook sound() {
    BookReading reading = read();
    assertEquals(List.of(), reading.problems());
    return reading.book();
  }

  /** Reads the book and returns its problems, one line each. */
  public List<String> problems() {
    return read().problems().stream().map(Problem::toString).toList();
  }

  /** Puts a time of the farm's clock, such as 2026-04-06T18:00, on the time line. */
  public static Instant at(String local) {
    FarmDay farmDay =
        new FarmDay(java.time.ZoneId.of("Europe/Lisbon"), java.time.LocalTime.of(4, 0));
    return farmDay.parseTime(local).orElseThrow().toInstant();
  }
}
