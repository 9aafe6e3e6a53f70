// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Image;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.SecondCamera;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Station;

/** Runs what the set-up guide tells a reader to run. */
class StationCommandsTest {
  private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
  private static final Path GUIDE = ROOT.resolve("calibration/README.md");
  private static final Pattern BLOCK = Pattern.compile("(?s)```sh\n(.*?)```");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#:]+)\\)");

  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    return Raftgauge.run(args, new BookWorkplace(), console);
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8) + err.toString(StandardCharsets.UTF_8);
  }

  /** Returns the guide's commands, their files in the checkout or in the test's own folder. */
  private List<List<String>> commands() throws IOException {
    List<List<String>> commands = new ArrayList<>();
    Matcher blocks = BLOCK.matcher(Files.readString(GUIDE));
    while (blocks.find()) {
      for (String line : blocks.group(1).lines().toList()) {
        commands.add(
            Arrays.stream(line.split(" ", -1))
                .map(w -> w.startsWith("sample-run/") ? folder.resolve(w).toString() : w)
                .map(w -> w.matches("(sample-images|calibration)/.*") ? ROOT + "/" + w : w)
                .toList());
      }
    }
    return commands;
  }

  private List<String> command(String words) throws IOException {
    List<List<String>> found =
        commands().stream().filter(c -> String.join(" ", c).contains(words)).toList();
    assertEquals(1, found.size(), "one command of the guide: " + words);
    return found.get(0).subList(1, found.get(0).size());
  }

  @Test
  void everyCommandOfTheGuideRuns() throws IOException {
    assertEquals(6, commands().size());
    for (List<String> command : commands()) {
      assertEquals("batch/raftgauge", command.get(0));
      int code = run(command.subList(1, command.size()).toArray(String[]::new));
      assertEquals(0, code, command + " said " + said());
    }
    for (String file :
        List.of(
            "marks.pdf",
            "labels.pdf",
            "target.pdf",
            "bench.yaml",
            "bench-lens.png",
            "gantry.yaml",
            "gantry-slots.png",
            "pair.yaml")) {
      assertTrue(Files.size(folder.resolve("sample-run").resolve(file)) > 500, file);
    }
    theLensIsTheOneThatThePhotosWereRenderedWith();
    theSlotsAreThoseOfTheSampleBook();
    thePairStandsAsOpenCvHasIt();
  }

  private void theLensIsTheOneThatThePhotosWereRenderedWith() throws IOException {
    String text = said();
    assertTrue(text.contains("Verdict: good"), text);
    assertTrue(text.contains("Left out target-15.jpg: it is blurred"), text);
    assertTrue(text.contains("Left out target-16.jpg: the whole target was not found in it"), text);
    Lens lens = bookWith("bench", "sample-run/bench.yaml").lens();
    // The truth stands in the guide; the standard errors that the program gives are 1.06, 1.06,
    // 1.15 and 0.98 px, 0.0015 and 0.0065: three of them.
    assertEquals(1420, lens.fxPx(), 3.2);
    assertEquals(1420, lens.fyPx(), 3.2);
    assertEquals(646.5, lens.cxPx(), 3.5);
    assertEquals(471, lens.cyPx(), 3);
    assertEquals(-0.155, lens.k1(), 0.0045);
    assertEquals(0.062, lens.k2(), 0.02);
  }

  private void theSlotsAreThoseOfTheSampleBook() throws IOException {
    areThoseOfTheSampleBook(bookWith("proposed", "sample-run/gantry.yaml").slots());
  }

  private static void areThoseOfTheSampleBook(List<Slot> proposed) throws IOException {
    List<Slot> written =
        CropBook.read(ROOT.resolve("sample-images/book"))
            .book()
            .station("gantry")
            .orElseThrow()
            .slots();
    assertEquals(written.size(), proposed.size());
    for (int i = 0; i < written.size(); i++) {
      assertEquals(written.get(i).name(), proposed.get(i).name());
      assertEquals(written.get(i).layout(), proposed.get(i).layout());
      for (int c = 0; c < 4; c++) {
        double off =
            written.get(i).cornersPx().get(c).distancePx(proposed.get(i).cornersPx().get(c));
        // Measured 0 to 3 px; 7 px at s4, whose edge a crop hangs over. Boards are 360 px wide.
        assertTrue(off < 9, "slot " + i + ", corner " + c + ": " + off);
      }
    }
  }

  private void thePairStandsAsOpenCvHasIt() throws IOException {
    SecondCamera second = bookWith("pair", "sample-run/pair.yaml").second().orElseThrow();
    double[] t = second.shiftMm().stream().mapToDouble(Double::doubleValue).toArray();
    // OpenCV's stereoCalibrate on the same corners, both lenses fitted too: 83.16 mm
    // (SharedPairTest runs it).
    assertEquals(83.16, Math.sqrt(t[0] * t[0] + t[1] * t[1] + t[2] * t[2]), 0.02);
    assertTrue(said().contains("root mean square 0.12 px apart"), said());
  }

  @Test
  void aSmallerReferencePhotoGivesCornersOfTheStationsSize() throws IOException {
    BufferedImage full =
        ImageIO.read(
            ROOT.resolve("sample-images/photos/2026-03-08/2026-03-08_gantry.jpg").toFile());
    BufferedImage half =
        new BufferedImage(full.getWidth() / 2, full.getHeight() / 2, BufferedImage.TYPE_3BYTE_BGR);
    var pen = half.createGraphics();
    pen.drawImage(
        full.getScaledInstance(half.getWidth(), half.getHeight(), Image.SCALE_AREA_AVERAGING),
        0,
        0,
        null);
    pen.dispose();
    Path photo = folder.resolve("half.png");
    ImageIO.write(half, "png", photo.toFile());
    Path file = folder.resolve("half.yaml");
    assertEquals(0, slots(photo.toString(), "gantry", file), said());
    areThoseOfTheSampleBook(bookWith("half", "half.yaml").slots());
  }

  @Test
  void aPhotoOfAnotherShapeAndAStationThatIsNotThereAreSaid() {
    String photo = ROOT.resolve("sample-images/photos/2026-03-08/2026-03-08_gantry.jpg").toString();
    assertEquals(2, slots(photo, "bench", folder.resolve("a.yaml")));
    assertTrue(
        said().contains("is 1620 x 1090 px, the station says 1280 x 1200: not the same shape"),
        said());
    assertEquals(2, slots(photo, "gantri", folder.resolve("a.yaml")));
    assertTrue(
        said()
            .contains(
                "--station gantri: is not in the book; did you mean \"gantry\"? known: bench,"
                    + " gantry"),
        said());
  }

  private int slots(String photo, String station, Path out) {
    String book = ROOT.resolve("sample-images/book").toString();
    return run(
        "station", "slots", photo, "--book", book, "--station", station, "--out", out.toString());
  }

  @Test
  void aStationWithTwoCamerasKeepsBothAndItsDatesWhenSlotsAreProposed() throws IOException {
    Files.writeString(
        folder.resolve("two.yaml"),
        """
        kind: fixed
        cameras: 2
        image_width_px: 1620
        image_height_px: 1090
        lens: {fx_px: 1795.25, fy_px: 1795, cx_px: 804.7, cy_px: 549.9, k1: -0.087, k2: 0.021}
        camera_height_mm: 2050
        clock_offset_s: 90
        changed_on: [2026-03-10]
        second_camera:
          sees: depth
          file_mark: "_deep"
          image_width_px: 640
          image_height_px: 480
          lens: {fx_px: 500, fy_px: 500, cx_px: 320, cy_px: 240}
          turn_deg: [0.1, -0.2, 0.3]
          shift_mm: [-60, 1.5, 0]
        slots: []
        """);
    Station read = bookWith("two", "two.yaml");
    Files.writeString(
        folder.resolve("again.yaml"),
        SlotText.stationFile(read, List.of(), new SlotText.Reference("a.jpg", 1620)) + "  []\n");
    Station again = bookWith("again", "again.yaml");
    assertEquals(read.second(), again.second());
    assertEquals(read.lens(), again.lens());
    assertEquals(read.changedOn(), again.changedOn());
    assertEquals(read.clockOffset(), again.clockOffset());
    assertEquals(2, again.cameras());
  }

  /** Reads a written station file as part of a copy of the sample book. */
  private Station bookWith(String name, String file) throws IOException {
    Path book = folder.resolve("book-" + name);
    Files.createDirectories(book.resolve("stations"));
    for (String part : List.of("book.yaml", "layouts.yaml", "crops.yaml", "plantings.csv")) {
      Files.copy(ROOT.resolve("sample-images/book").resolve(part), book.resolve(part));
    }
    Files.copy(folder.resolve(file), book.resolve("stations").resolve(name + ".yaml"));
    return CropBook.read(book).book().station(name).orElseThrow();
  }

  @Test
  void picturesAndFilesThatTheGuideShowsAreThere() throws IOException {
    Matcher links = LINK.matcher(Files.readString(GUIDE));
    int followed = 0;
    while (links.find()) {
      Path file = GUIDE.resolveSibling(links.group(1)).normalize();
      assertTrue(Files.exists(file), links.group(1));
      followed++;
    }
    assertTrue(followed >= 6, "links in the guide: " + followed);
    assertTrue(
        ImageIO.read(ROOT.resolve("calibration/example/bench-lens.png").toFile()).getWidth() > 500);
  }

  @Test
  void wrongTargetIsSaidWithHowToWriteIt() {
    int code = run("station", "lens", ROOT.toString(), "--board", "chess:9x6", "--out", "new.yaml");
    assertEquals(2, code);
    assertEquals(
        "--board chess:9x6: is no target; write it as in chessboard:10x7:25, ten by seven squares"
            + " of 25 mm",
        said().strip());
  }

  @Test
  void photosWithoutTheTargetGiveNoLensAndNoFile() {
    Path file = folder.resolve("new.yaml");
    int code =
        run(
            "station",
            "lens",
            ROOT.resolve("sample-images/photos/2026-03-06").toString(),
            "--board",
            "chessboard:9x6:27",
            "--out",
            file.toString());
    assertEquals(2, code);
    assertTrue(
        said()
            .contains(
                "No lens: the whole target was found in none of 1 photo; see that kind, columns and"),
        said());
    assertTrue(Files.notExists(file));
  }

  @Test
  void nothingIsOverwritten() throws IOException {
    Path file = Files.writeString(folder.resolve("mine.pdf"), "mine");
    int code = run("station", "print", "target", "--out", file.toString());
    assertEquals(2, code);
    assertEquals(
        "--out " + file + ": exists; give another name, or move it away: nothing is overwritten",
        said().strip());
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void raftThatIsNotInTheBookIsNamed() throws IOException {
    List<String> command = new ArrayList<>(command("print marks --book"));
    command.add("KV-999");
    assertEquals(2, run(command.toArray(String[]::new)));
    assertTrue(said().contains("RAFT KV-999: is not in the book; known: KT-03"), said());
  }

  @Test
  void idThatIsTooLongForATagIsNamed() {
    String id = "x".repeat(33);
    assertEquals(2, run("station", "print", "marks", id, "--out", folder + "/a.pdf"));
    assertEquals(
        "RAFT: \""
            + id
            + "\" is not a name: it has 33 characters; write at most 32 letters, digits, spaces and"
            + " . - _ ' ( ) & + #, beginning with a letter or digit",
        said().strip());
  }

  @Test
  void bookWithoutHistoryIsSaidByTheCheck() {
    assertEquals(2, run("station", "check", "--book", ROOT.resolve("calibration").toString()));
    assertTrue(said().contains("has no history yet; measure photos first"), said());
  }

  @Test
  void helpNamesEveryCommand() {
    assertEquals(0, run("station", "--help"));
    for (String name : List.of("lens", "print", "slots", "check")) {
      assertTrue(said().contains("  " + name + " "), said());
    }
  }
}
