// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.show;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.io.FileUtils;

/**
 * Paints an invented farm: a crop book and many small photos of its rafts, some of them bad, some
 * copies of others. The photos are for comparing engines, not for judging accuracy: leaves are
 * plain ellipses.
 */
final class PaintFarm {
  private static final LocalDate FIRST = LocalDate.of(2026, 5, 4);
  private static final int EVENINGS = 8;

  /** Photos that are bad or copies, as far as there are twice as many. */
  private static final int ODD = 50;

  private static final int CAMERA_HEIGHT_MM = 1500;
  private static final int WIDTH_PX = PaintBoard.PX_PER_MM * PaintBoard.WIDTH_MM;
  private static final int HEIGHT_PX = PaintBoard.PX_PER_MM * PaintBoard.HEIGHT_MM;

  private static final String STATION =
      """
      kind: passing
      cameras: 1
      image_width_px: %d
      image_height_px: %d
      lens: {fx_px: %d, fy_px: %<d, cx_px: %.1f, cy_px: %.1f, k1: 0, k2: 0, p1: 0, p2: 0, k3: 0}
      camera_height_mm: %d
      """
          .formatted(
              WIDTH_PX,
              HEIGHT_PX,
              PaintBoard.PX_PER_MM * CAMERA_HEIGHT_MM,
              WIDTH_PX / 2.0,
              HEIGHT_PX / 2.0,
              CAMERA_HEIGHT_MM);

  private static final String LAYOUTS =
      """
      layouts:
        small-4:
          board: {width_mm: 200, length_mm: 260}
          sites: {rows: 2, columns: 2, first_x_mm: 65, first_y_mm: 95, pitch_x_mm: 70,\
       pitch_y_mm: 70, stagger_x_mm: 0}
          markers: {family: tag36h11, side_mm: 40, centres_mm: [[28, 28], [172, 28], [172, 232],\
       [28, 232]]}
      """;

  private static final String CROPS =
      """
      crops:
        butterhead:
          colour_model: green-leaf
          height_model: {scale_mm: 11, exponent: 0.17, mean_to_top: 0.5}
          emerged_by_das: 7
      """;

  private static final String BOOK =
      """
      time_zone: Europe/Copenhagen
      day_starts_at: "03:30"
      station: bench
      photo_name: "{date}_{raft}"
      units: metric
      """;

  private final Path folder;
  private final int rafts;
  private final int oddEvery;

  private PaintFarm(Path folder, int photos) {
    this.folder = folder;
    this.rafts = (photos + EVENINGS - 1) / EVENINGS;
    this.oddEvery = Math.max(2, photos / ODD);
  }

  /**
   * Paints.
   *
   * @param folder gets {@code book} and {@code photos}; a farm that is there stays
   * @param photos how many files
   * @throws IOException if they cannot be written
   */
  static void into(Path folder, int photos) throws IOException {
    Path done = folder.resolve("painted-" + photos);
    if (Files.exists(done)) {
      return;
    }
    PaintFarm farm = new PaintFarm(folder, photos);
    farm.book();
    for (int i = 0; i < photos; i++) {
      farm.photo(i);
    }
    Files.createFile(done);
  }

  private String raft(int number) {
    return String.format(Locale.ROOT, "F-%04d", number);
  }

  private void book() throws IOException {
    Path book = Files.createDirectories(folder.resolve("book"));
    Files.createDirectories(book.resolve("stations"));
    write(book.resolve("book.yaml"), BOOK);
    write(book.resolve("layouts.yaml"), LAYOUTS);
    write(book.resolve("crops.yaml"), CROPS);
    write(book.resolve("stations").resolve("bench.yaml"), STATION);
    String plantings =
        IntStream.range(0, rafts)
            .mapToObj(
                r -> {
                  LocalDate set = FIRST.minusDays(2 + 3L * (r % 5));
                  return String.join(
                      ",",
                      raft(r),
                      "P" + (r % 3 + 1),
                      Integer.toString(r / 3 + 1),
                      "butterhead,,small-4,",
                      set.minusDays(15).toString(),
                      set.toString(),
                      set.plusDays(30).toString(),
                      "",
                      "L" + (r % 5));
                })
            .collect(Collectors.joining("\n"));
    write(
        book.resolve("plantings.csv"),
        "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot\n"
            + plantings
            + "\n");
  }

  private void photo(int i) throws IOException {
    int evening = i / rafts;
    LocalDate day = FIRST.plusDays(2L * evening);
    Path file =
        Files.createDirectories(folder.resolve("photos").resolve(day.toString()))
            .resolve(day + "_" + raft(i % rafts) + ".jpg");
    int age = (int) (day.toEpochDay() - FIRST.toEpochDay()) + 2 + 3 * (i % rafts % 5);
    byte[] painted = PaintBoard.jpeg(i, age);
    if (i % oddEvery != oddEvery - 1) {
      Files.write(file, painted);
      return;
    }
    switch (i / oddEvery % 5) {
      case 0 -> Files.write(file, Arrays.copyOf(painted, painted.length / 2));
      case 1 -> Files.write(file, new byte[0]);
      case 2 -> write(file, "this is no photo\n");
      case 3 -> copyOfEarlier(file);
      default -> Files.write(file, PaintBoard.dark(i));
    }
  }

  /** The bytes of another photo under another name, as a card copied twice leaves them. */
  private void copyOfEarlier(Path file) throws IOException {
    try (var list = Files.list(file.getParent())) {
      List<Path> files = new ArrayList<>(list.sorted().toList());
      FileUtils.copyFile(files.get(0).toFile(), file.toFile());
    }
  }

  private static void write(Path file, String text) throws IOException {
    Files.writeString(file, text, StandardCharsets.UTF_8);
  }
}
