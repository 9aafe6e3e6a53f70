// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.batch.run.BookMeasurer;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.PhotoFacts;

/** The command {@code teach} from its files to its files, on drawn plants on matting. */
class TeachCommandTest {
  private static final int WIDTH = DrawnBench.WIDTH;
  private static final int HEIGHT = DrawnBench.HEIGHT;

  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private Path book;

  @BeforeEach
  void writeBook() throws IOException {
    book = Files.createDirectories(folder.resolve("book"));
    Files.createDirectories(book.resolve("stations"));
    Files.createDirectories(folder.resolve("bench"));
    Files.writeString(book.resolve("book.yaml"), "time_zone: UTC\nphoto_name: \"{date}_{raft}\"\n");
    Files.writeString(
        book.resolve("crops.yaml"),
        """
        crops:
          sweet basil:
            colour_model: green-leaf
            height_model: {scale_mm: 0, exponent: 0.5}
        """);
    Files.writeString(
        book.resolve("layouts.yaml"),
        """
        layouts:
          plot:
            board: {width_mm: 200, length_mm: 150}
            sites: {rows: 1, columns: 1, first_x_mm: 100, first_y_mm: 75, pitch_x_mm: 200, pitch_y_mm: 150}
        """);
    Files.writeString(
        book.resolve("stations/bench.yaml"),
        """
        kind: fixed
        image_width_px: 200
        image_height_px: 150
        lens: {fx_px: 1000}
        camera_height_mm: 1000
        slots:
          - {name: plot, layout: plot, corners_px: [[-0.5, -0.5], [199.5, -0.5], [199.5, 149.5], [-0.5, 149.5]], refine: none}
        """);
    Files.writeString(
        book.resolve("plantings.csv"),
        """
        raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot
        R1,P,1,sweet basil,,plot,,,2026-04-01,,,
        """);
  }

  private int run(String... args) {
    out.reset();
    err.reset();
    return Raftgauge.run(
        args,
        new BookWorkplace(),
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false));
  }

  private static List<String> lines(ByteArrayOutputStream stream) {
    return stream.toString(StandardCharsets.UTF_8).lines().toList();
  }

  private String hash() {
    return new BookMeasurer(CropBook.read(book).book())
        .settingsHash(PhotoFacts.of("bench/2026-04-11_R1.png"));
  }

  @Test
  void aTaughtModelIsWrittenReadNamedAndMeasuredBy() throws IOException {
    String first = DrawnBench.draw(folder, 1).toString();
    String second = DrawnBench.draw(folder, 2).toString();
    String third = DrawnBench.draw(folder, 3).toString();

    int code =
        run("teach", "--book", book.toString(), "--crop", "sweet basil", first, second, third);

    assertEquals(0, code, lines(err).toString());
    List<String> said = lines(out);
    assertTrue(
        said.get(0)
            .matches("Taught   from 3 pictures; Dice (0\\.9\\d\\d|1\\.000) on pictures not seen"),
        said.get(0));
    assertEquals("Model    " + book.resolve("colour/sweet-basil-taught.yaml"), said.get(1));
    assertEquals(
        "Use it   colour_model: sweet-basil-taught at sweet basil in crops.yaml", said.get(3));
    try (Stream<Path> files = Files.list(book.resolve("colour/sweet-basil-taught"))) {
      assertEquals(
          List.of(
              "2026-04-11_R1.png.wrong.png",
              "2026-04-12_R1.png.wrong.png",
              "2026-04-13_R1.png.wrong.png",
              "report.md"),
          files.map(f -> f.getFileName().toString()).sorted().toList());
    }
    String report = Files.readString(book.resolve("colour/sweet-basil-taught/report.md"));
    assertTrue(report.contains("| painted | green | board |"), report);
    assertTrue(report.contains("| said | painted as leaf | share of pixels |"), report);
    assertTrue(report.contains("3 folds by photo"), report);

    String before = hash();
    Path crops = book.resolve("crops.yaml");
    Files.writeString(crops, Files.readString(crops).replace("green-leaf", "sweet-basil-taught"));
    String named = hash();
    assertNotEquals(before, named);
    assertEquals(0, run("check", "--book", book.toString()), lines(err).toString());
    Path model = book.resolve("colour/sweet-basil-taught.yaml");
    String text = Files.readString(model);
    assertTrue(text.contains("  - \"2026-04-11_R1.png\""), "where it comes from: " + text);
    Files.writeString(model, text.replaceFirst("output: \\[", "output: [1"));
    assertNotEquals(named, hash(), "a changed model measures anew");
    Files.writeString(model, text.replace("weights:", "wieghts:"));
    assertEquals(2, run("check", "--book", book.toString()));
    assertTrue(
        lines(err).stream().anyMatch(l -> l.startsWith("colour/sweet-basil-taught.yaml:")),
        lines(err).toString());
    Files.delete(model);
    assertEquals(2, run("check", "--book", book.toString()));
    assertTrue(
        lines(err)
            .get(0)
            .startsWith(
                "crops.yaml:3:19: crops.sweet basil.colour_model: the colour model"
                    + " \"sweet-basil-taught\" is unknown"),
        lines(err).toString());
  }

  @Test
  void firstPaintingsThatNobodyMendedAreDoubted() throws IOException {
    String first = DrawnBench.draw(folder, 1).toString();
    String second = DrawnBench.draw(folder, 2).toString();
    for (String photo : List.of(first, second)) {
      Files.delete(TeachRequest.Pair.labelsOf(Path.of(photo)));
      assertEquals(0, run("teach", "--book", book.toString(), "--start", photo));
    }

    int code = run("teach", "--book", book.toString(), "--crop", "sweet basil", first, second);

    assertEquals(0, code, lines(err).toString());
    assertEquals("Doubt    " + TeachReport.TOO_GOOD, lines(out).get(4), lines(out).toString());
    String report = Files.readString(book.resolve("colour/sweet-basil-taught/report.md"));
    assertTrue(report.contains("Doubt: " + TeachReport.TOO_GOOD), report);
  }

  @Test
  void aFirstPaintingIsWrittenOnceAndCanBeTaughtFrom() throws IOException {
    Path photo = DrawnBench.draw(folder, 1);
    Path painting = TeachRequest.Pair.labelsOf(photo);
    Files.delete(painting);

    assertEquals(0, run("teach", "--book", book.toString(), "--start", photo.toString()));

    assertEquals(List.of("Painted  " + painting), lines(out));
    BufferedImage painted = ImageIO.read(painting.toFile());
    assertEquals(WIDTH, painted.getWidth());
    assertEquals(HEIGHT, painted.getHeight());
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      int rgb = painted.getRGB(i % WIDTH, Math.floorDiv(i, WIDTH)) & 0xffffff;
      assertTrue(
          List.of(0x00A040, 0xFFFFFF, 0x303030, 0xFF00FF, 0xC0004C).contains(rgb),
          Integer.toHexString(rgb));
    }
    assertEquals(2, run("teach", "--book", book.toString(), "--start", photo.toString()));
    assertEquals(
        List.of(painting + ": is there already and may hold your work; move it away to start anew"),
        lines(err));
  }

  @Test
  void aManifestInAFolderAboveThePhotosIsReadAsByARun() throws IOException {
    List<String> photos = new ArrayList<>();
    StringBuilder manifest = new StringBuilder("photo,taken_at,station,slot,raft\n");
    for (int n = 1; n <= 2; n++) {
      Path drawn = DrawnBench.draw(folder, n);
      Path photo = drawn.resolveSibling("shot" + n + ".png");
      Files.move(drawn, photo);
      Files.move(
          TeachRequest.Pair.labelsOf(drawn), photo.resolveSibling("shot" + n + ".labels.png"));
      manifest.append("bench/shot" + n + ".png,2026-04-1" + n + "T18:00:00+00:00,bench,,R1\n");
      photos.add(photo.toString());
    }
    String[] call = {
      "teach", "--book", book.toString(), "--crop", "sweet basil", photos.get(0), photos.get(1)
    };
    assertEquals(2, run(call));
    assertTrue(lines(err).get(0).contains("nothing tells when the photo was taken"), "" + err);
    Files.writeString(folder.resolve("manifest.csv"), manifest.toString());
    assertEquals(0, run(call), lines(err).toString());
  }

  @Test
  void whatIsMissingIsSaidAndNothingIsWritten() throws IOException {
    String photo = DrawnBench.draw(folder, 1).toString();
    Files.delete(TeachRequest.Pair.labelsOf(Path.of(photo)));

    assertEquals(2, run("teach", "--book", book.toString(), "--crop", "sweet basl", photo));
    assertEquals(
        List.of(
            "--crop: the book has no usable crop \"sweet basl\"; did you mean \"sweet basil\"?"
                + " known: sweet basil"),
        lines(err));
    assertEquals(2, run("teach", "--book", book.toString(), "--crop", "sweet basil", photo));
    assertEquals(
        List.of(
            TeachRequest.Pair.labelsOf(Path.of(photo))
                + ": there is no painted picture for "
                + photo
                + "; make one with --start, mend it, or give PHOTO+LABEL"),
        lines(err));
    assertEquals(2, run("teach", "--book", book.toString()));
    assertEquals("give --crop and labelled pictures, or --start and a photo", lines(err).get(0));
    String one = DrawnBench.draw(folder, 2).toString();
    assertEquals(2, run("teach", "--book", book.toString(), "--crop", "sweet basil", one));
    assertEquals(
        List.of(
            "labelled pictures: there is only 1; label at least 2, better 8: each is judged by the"
                + " others"),
        lines(err));
    assertEquals(
        2,
        run(
            "teach",
            "--book",
            book.toString(),
            "--crop",
            "sweet basil",
            "--name",
            "green-leaf",
            one));
    assertFalse(Files.exists(book.resolve("colour")));
  }

  @Test
  void aPlusJoinsAPhotoAndItsPainting() {
    assertEquals(
        new TeachRequest.Pair(Path.of("a/b.jpg"), Path.of("c/d.png")),
        TeachRequest.Pair.parse("a/b.jpg+c/d.png"));
    assertEquals(
        new TeachRequest.Pair(Path.of("a/b.x.jpg"), Path.of("a/b.x.labels.png")),
        TeachRequest.Pair.parse("a/b.x.jpg"));
  }
}
