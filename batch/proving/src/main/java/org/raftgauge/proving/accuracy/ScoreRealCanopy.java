// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.CanopyMap;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.opencv.DistanceTo;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Measures real photos with hand-drawn masks: each is a fixed station's whole picture with one slot
 * and one site, at an invented scale of 1 mm a pixel.
 */
public final class ScoreRealCanopy {
  /** Hand-drawn outlines wander this far, px. */
  private static final float RIM_PX = 3;

  private final CropBook book;

  private ScoreRealCanopy(CropBook book) {
    this.book = book;
  }

  /**
   * Measures all photos of a set.
   *
   * @param folder holds a folder a set
   * @param set the set
   * @return a score a photo, by name
   * @throws IOException if a file cannot be read
   */
  public static List<RealPhotoScore> of(Path folder, RealSet set) throws IOException {
    ScoreRealCanopy scorer = new ScoreRealCanopy(book(set));
    List<RealPhotoScore> scores = new ArrayList<>();
    for (Path photo : set.photos(folder)) {
      scores.add(scorer.score(set, photo));
    }
    return scores;
  }

  private RealPhotoScore score(RealSet set, Path photo) throws IOException {
    boolean[] truth = set.mask(photo);
    String name = Table.fileName(photo.toString());
    PhotoResult result = MeasurePhoto.measure(Files.readAllBytes(photo), facts(set, photo), book);
    CanopyMap canopy =
        result.canopy().orElseThrow(() -> new IOException(name + ": " + result.measure().reason()));
    boolean[] found = new boolean[truth.length];
    int plants = 0;
    for (int i = 0; i < found.length; i++) {
      found[i] = (canopy.coverage()[i] & 0xff) >= 128;
      plants += truth[i] ? 1 : 0;
    }
    return new RealPhotoScore(
        set,
        name,
        (double) plants / truth.length,
        RealPhotoScore.Agreement.of(found, truth),
        RealPhotoScore.Agreement.of(rimGiven(found, truth, set), truth),
        RealPhotoScore.Agreement.of(plain(result.picture().orElseThrow()), truth));
  }

  /** What is known of a photo: its station, and an invented time. */
  static PhotoFacts facts(RealSet set, Path photo) {
    return new PhotoFacts(
        Table.fileName(photo.toString()),
        Optional.of("2026-05-01T12:00:00Z"),
        Optional.of(set.label()),
        Optional.empty(),
        Optional.empty());
  }

  /** The found mask, but for what lies within {@link #RIM_PX} of the drawn outline. */
  private static boolean[] rimGiven(boolean[] found, boolean[] truth, RealSet set) {
    boolean[] other = new boolean[truth.length];
    for (int i = 0; i < other.length; i++) {
      other[i] = !truth[i];
    }
    float[] out = DistanceTo.nearest(truth, set.widthPx(), set.heightPx());
    float[] in = DistanceTo.nearest(other, set.widthPx(), set.heightPx());
    boolean[] given = new boolean[truth.length];
    for (int i = 0; i < given.length; i++) {
      given[i] = Math.max(out[i], in[i]) <= RIM_PX + 0.5f ? truth[i] : found[i];
    }
    return given;
  }

  /** Excess green 2 G - R - B, negative values cut to 0, over Otsu's threshold. */
  private static boolean[] plain(RgbImage picture) {
    byte[] rgb = picture.rgb();
    int[] excess = new int[rgb.length / 3];
    for (int i = 0; i < excess.length; i++) {
      int others = (rgb[3 * i] & 0xff) + (rgb[3 * i + 2] & 0xff);
      excess[i] = Math.max(0, 2 * (rgb[3 * i + 1] & 0xff) - others);
    }
    return PlainMask.aboveOtsu(excess);
  }

  /** Makes a book in which each photo of a set is one slot with one site. */
  static CropBook book(RealSet set) throws IOException {
    Path folder = Files.createTempDirectory("raftgauge-real-canopy");
    try {
      write(folder, set);
      BookReading reading = CropBook.read(folder);
      if (reading.hasErrors()) {
        throw new IllegalStateException(reading.problems().toString());
      }
      return reading.book();
    } finally {
      delete(folder);
    }
  }

  private static void write(Path folder, RealSet set) throws IOException {
    int w = set.widthPx();
    int h = set.heightPx();
    Files.createDirectory(folder.resolve("stations"));
    Files.writeString(folder.resolve("book.yaml"), "time_zone: UTC\nday_starts_at: \"04:00\"\n");
    Files.writeString(folder.resolve("crops.yaml"), "crops: {}\n");
    Files.writeString(
        folder.resolve("plantings.csv"),
        "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot\n");
    Files.writeString(
        folder.resolve("layouts.yaml"),
        String.format(
            Locale.ROOT,
            """
            layouts:
              plot:
                board: {width_mm: %d, length_mm: %d}
                sites: {rows: 1, columns: 1, first_x_mm: %s, first_y_mm: %s, pitch_x_mm: %d, pitch_y_mm: %d}
            """,
            w,
            h,
            w / 2.0,
            h / 2.0,
            w,
            h));
    Files.writeString(
        folder.resolve("stations").resolve(set.label() + ".yaml"),
        String.format(
            Locale.ROOT,
            """
            kind: fixed
            image_width_px: %d
            image_height_px: %d
            lens: {fx_px: 1000}
            camera_height_mm: 1000
            slots:
              - {name: plot, layout: plot, corners_px: [[-0.5, -0.5], [%s, -0.5], [%s, %s], [-0.5, %s]], refine: none}
            """,
            w,
            h,
            w - 0.5,
            w - 0.5,
            h - 0.5,
            h - 0.5));
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
