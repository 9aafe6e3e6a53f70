// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.farmyear;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;

/** Writes the crop book of a farm year. */
final class FarmBook {
  private static final String STATION =
      """
      kind: passing
      cameras: 1
      image_width_px: 3000
      image_height_px: 2000
      lens: {fx_px: 2900, fy_px: 2900, cx_px: 1500, cy_px: 1000}
      camera_height_mm: 1900
      """;

  private FarmBook() {}

  /**
   * Writes and reads the book.
   *
   * @param folder where to
   * @param farm a farm that has grown
   * @return the book
   * @throws IOException if a file cannot be written, or if the book has problems
   */
  static CropBook write(Path folder, GrowFarm farm) throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("book.yaml"), "time_zone: UTC\nday_starts_at: \"04:00\"\n");
    Files.createDirectories(folder.resolve("stations"));
    for (String station : List.of("east", "west")) {
      Files.writeString(folder.resolve("stations/" + station + ".yaml"), STATION);
    }
    Files.writeString(
        folder.resolve("layouts.yaml"),
        """
        layouts:
          board-20:
            board: {width_mm: 900, length_mm: 1100}
            sites: {rows: 5, columns: 4, first_x_mm: 150, first_y_mm: 150, pitch_x_mm: 200, pitch_y_mm: 200}
            tag: {x_mm: 450, y_mm: 42, side_mm: 60}
        """);
    Files.writeString(
        folder.resolve("crops.yaml"),
        """
        crops:
          romaine:
            colour_model: green-leaf
            height_model: {scale_mm: 5, exponent: 0.5}
        """);
    Files.writeString(folder.resolve("plantings.csv"), plantings(farm));
    List<String> events = new ArrayList<>(List.of("at,kind,raft,site,to_raft,to_site,by,note"));
    events.addAll(farm.events());
    Files.writeString(folder.resolve("events.csv"), String.join("\n", events) + "\n");
    BookReading reading = CropBook.read(folder);
    if (!reading.problems().isEmpty()) {
      throw new IOException("the book of a farm year has problems: " + reading.problems());
    }
    return reading.book();
  }

  private static String plantings(GrowFarm farm) {
    StringBuilder rows = new StringBuilder("raft,pond,crop,layout,transplanted_on,ended_on\n");
    for (int raft = 0; raft < farm.rafts(); raft++) {
      LocalDate from = GrowFarm.FIRST.plusDays(GrowFarm.startsOn(raft));
      rows.append(
          String.join(
              ",",
              GrowFarm.raft(raft),
              GrowFarm.pond(raft),
              "romaine",
              "board-20",
              from.toString(),
              from.plusDays(YearPlan.EVENINGS).toString()));
      rows.append('\n');
    }
    return rows.toString();
  }
}
