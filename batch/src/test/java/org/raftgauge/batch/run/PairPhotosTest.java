// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.PhotoFacts;

class PairPhotosTest {
  private static final String FIRST =
      """
      kind: passing
      image_width_px: 640
      image_height_px: 480
      lens: {fx_px: 700}
      camera_height_mm: 1500
      """;
  private static final String SECOND =
      """
      cameras: 2
      second_camera:
        file_mark: cam2/
        first_file_mark: cam1/
        image_width_px: 640
        image_height_px: 480
        lens: {fx_px: 700}
        turn_deg: [0, 0, 0]
        shift_mm: [-80, 0, 0]
      """;

  @TempDir private Path folder;

  private CropBook book;

  @BeforeEach
  void writeBook() throws IOException {
    Files.createDirectories(folder.resolve("stations"));
    Files.writeString(folder.resolve("book.yaml"), "time_zone: UTC\nstation: bench\n");
    Files.writeString(
        folder.resolve("layouts.yaml"),
        """
        layouts:
          deck:
            board: {width_mm: 300, length_mm: 300}
            sites: {rows: 1, columns: 1, first_x_mm: 150, first_y_mm: 150, pitch_x_mm: 300, pitch_y_mm: 300}
        """);
    Files.writeString(folder.resolve("crops.yaml"), "crops: {}\n");
    book = book(FIRST + SECOND);
  }

  private CropBook book(String station) throws IOException {
    Files.writeString(folder.resolve("stations/bench.yaml"), station);
    return CropBook.read(folder).book();
  }

  /** A photo of the manifest's time, or of none. */
  private FoundPhoto photo(String name, String time) throws IOException {
    Path file = folder.resolve("photos").resolve(name);
    Files.createDirectories(file.getParent());
    // A PNG of 16 x 16 px says nothing of when it was taken: the manifest's time counts.
    ImageIO.write(new BufferedImage(16, 16, BufferedImage.TYPE_INT_RGB), "png", file.toFile());
    return new FoundPhoto(
        file,
        new PhotoFacts(
            name,
            Optional.of(time).filter(t -> !t.isEmpty()),
            Optional.of("bench"),
            Optional.empty(),
            Optional.empty()));
  }

  private static Map<String, String> pairs(FoundPhotos joined) {
    Map<String, String> pairs = new TreeMap<>();
    for (FoundPhoto photo : joined.photos()) {
      photo
          .second()
          .ifPresent(
              second ->
                  pairs.put(
                      photo.facts().photo(),
                      second.getParent().getFileName() + "/" + second.getFileName()));
    }
    return pairs;
  }

  private FoundPhotos join(FoundPhoto... photos) {
    return PairPhotos.join(new FoundPhotos(List.of(photos), List.of()), book);
  }

  private static List<String> said(FoundPhotos joined) {
    List<String> said = new ArrayList<>();
    joined.problems().forEach(p -> said.add(p.toString()));
    return said;
  }

  @Test
  void photosOfTheSameNameButForTheMarksAreAPair() throws IOException {
    FoundPhotos joined =
        join(photo("cam1/a.png", ""), photo("cam1/b.png", ""), photo("cam2/b.png", ""));
    assertEquals(Map.of("cam1/b.png", "cam2/b.png"), pairs(joined));
    assertEquals(3, joined.photos().size());
    assertEquals(List.of(), said(joined));
  }

  @Test
  void photosOfOtherNamesArePairedByTheirTimes() throws IOException {
    FoundPhotos joined =
        join(
            photo("cam1/0413.png", "2026-04-10T18:00:00Z"),
            photo("cam1/0414.png", "2026-04-10T18:00:20Z"),
            photo("cam2/7791.png", "2026-04-10T18:00:21Z"));
    assertEquals(Map.of("cam1/0414.png", "cam2/7791.png"), pairs(joined));
  }

  @Test
  void whatFindsNoPartnerIsSaid() throws IOException {
    FoundPhotos joined =
        join(
            photo("cam1/0413.png", "2026-04-10T18:00:00Z"),
            photo("cam2/7791.png", "2026-04-10T18:00:03Z"));
    assertEquals(Map.of(), pairs(joined));
    assertEquals(
        List.of(
            "cam2/7791.png: no photo of the station's first camera goes with it, by name or within"
                + " 2 s; name both alike but for file_mark, or set both cameras' clocks"),
        said(joined));
  }

  @Test
  void twoPhotosWithinTwoSecondsAreNotGuessedBetween() throws IOException {
    FoundPhotos joined =
        join(
            photo("cam1/1.png", "2026-04-10T18:00:00Z"),
            photo("cam1/2.png", "2026-04-10T18:00:01Z"),
            photo("cam2/9.png", "2026-04-10T18:00:01Z"));
    assertEquals(Map.of(), pairs(joined));
    assertEquals(
        List.of(
            "cam2/9.png: several photos of the station's first camera were taken within 2 s of it;"
                + " name both alike but for file_mark, or set both cameras' clocks"),
        said(joined));
  }

  @Test
  void aBookOfSingleCamerasIsLeftAsItIs() throws IOException {
    FoundPhotos found = new FoundPhotos(List.of(photo("cam2/a.png", "")), List.of());
    assertSame(found, PairPhotos.join(found, book(FIRST)));
  }
}
