// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.marker.FindMarkers;
import org.raftgauge.core.marker.FindTags;
import org.raftgauge.core.marker.MarkerSighting;
import org.raftgauge.core.marker.TagSighting;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

class PrintMarksTest {
  private static final int DPI = 300;

  @TempDir private Path folder;

  /** Two hundred ids of many shapes: short, long, lower case, with signs. */
  private static Set<String> twoHundredIds() {
    Set<String> ids = new TreeSet<>();
    for (int i = 0; i < 200; i++) {
      ids.add(
          switch (i % 5) {
            case 0 -> "KV-" + i;
            case 1 -> Integer.toString(100000 + i);
            case 2 -> "north pond, berth " + i;
            case 3 -> "r" + i + "_b/" + i * 7 + ".x";
            default -> String.format("RAFT-%04d-ABCDEFGHIJKLMNOPQRSTUV", i);
          });
    }
    assertEquals(200, ids.size());
    return ids;
  }

  private Path print(List<Mark> marks) throws IOException {
    Path file = folder.resolve("marks.pdf");
    LabelGrid grid = PrintMarks.fields(marks, Paper.A4).orElseThrow();
    assertEquals(Optional.empty(), PrintMarks.tooLarge(marks, grid));
    PrintMarks.print(List.of(new PrintMarks.Batch(marks, grid)), file);
    return file;
  }

  @Test
  void everyOneOfTwoHundredPrintedTagsIsReadBackByTheProgramAndByAnotherReader()
      throws IOException, InterruptedException {
    Set<String> ids = twoHundredIds();
    Path file = print(ids.stream().map(id -> Mark.tag(id, 30)).toList());

    Set<String> read = new TreeSet<>();
    List<Path> labels = new ArrayList<>();
    try (Printed printed = new Printed(file, DPI)) {
      for (int page = 0; page < printed.pages(); page++) {
        var picture = printed.picture(page);
        for (TagSighting tag : FindTags.in(Printed.rgb(picture))) {
          read.add(tag.text());
        }
        labels.addAll(labels(picture, page));
      }
    }
    assertEquals(ids, read);
    assertEquals(ids, readByZbar(labels));
  }

  /**
   * Cuts a page into its labels, as a person does: of several codes close together on one picture
   * zbar reads only some.
   */
  private List<Path> labels(BufferedImage picture, int page) throws IOException {
    LabelGrid grid = PrintMarks.fields(List.of(Mark.tag("KV-112", 30)), Paper.A4).orElseThrow();
    double dots = DPI / Printed.MM_PER_INCH;
    List<Path> labels = new ArrayList<>();
    for (int i = 0; i < grid.labels(); i++) {
      PdfPage.Box box = grid.box(i);
      BufferedImage label =
          picture.getSubimage(
              (int) (box.x() * dots) + 3,
              (int) (box.y() * dots) + 3,
              (int) (box.width() * dots) - 6,
              (int) (box.height() * dots) - 6);
      Path png = folder.resolve("label-" + page + "-" + i + ".png");
      ImageIO.write(label, "png", png.toFile());
      labels.add(png);
    }
    return labels;
  }

  /** Debian's zbar-tools: a reader of its own; skips the rest of the test where it is absent. */
  private static Set<String> readByZbar(List<Path> pages) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("zbarimg", "--quiet", "--raw"));
    pages.forEach(page -> command.add(page.toString()));
    Process zbar;
    try {
      zbar = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    } catch (IOException absent) {
      assumeTrue(false, "zbarimg is not installed: the second reading was skipped");
      throw absent;
    }
    String out = new String(zbar.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    zbar.waitFor();
    return new TreeSet<>(out.lines().toList());
  }

  @Test
  void idsInOtherScriptsAreReadBackToo() throws IOException {
    Set<String> ids = Set.of("Жито-7", "plateau-é", "筏-12");
    Path file = print(ids.stream().map(id -> Mark.tag(id, 40)).toList());
    Set<String> read = new TreeSet<>();
    try (Printed printed = new Printed(file, DPI)) {
      FindTags.in(Printed.rgb(printed.picture(0))).forEach(tag -> read.add(tag.text()));
    }
    assertEquals(new TreeSet<>(ids), read);
  }

  @Test
  void markersHaveTheSizeThatTheBookSays() throws IOException {
    List<Mark> marks = new ArrayList<>();
    for (int id = 0; id < 4; id++) {
      marks.add(Mark.corner(id, 34, "R1"));
    }
    Path file = print(marks);
    Map<Integer, Double> sideMm = new TreeMap<>();
    try (Printed printed = new Printed(file, DPI)) {
      RgbImage page = Printed.rgb(printed.picture(0));
      for (MarkerSighting seen : FindMarkers.in(page)) {
        sideMm.put(seen.id(), seen.sidePx() / DPI * Printed.MM_PER_INCH);
      }
    }
    assertEquals(Set.of(0, 1, 2, 3), sideMm.keySet());
    // A dot at 300 dpi is 0.085 mm.
    sideMm.forEach((id, mm) -> assertEquals(34, mm, 0.05, "marker " + id));
  }

  @Test
  void nothingIsPrintedInsideAQuietZone() throws IOException {
    // The smallest fields there are: words and lines of the label lie closest.
    for (Mark mark : List.of(Mark.tag("KV-112", 30), Mark.corner(2, 50, "KV-112"))) {
      Path file = print(List.of(mark));
      try (Printed printed = new Printed(file, DPI)) {
        RgbImage page = Printed.rgb(printed.picture(0));
        PointPx centre =
            mark.foot().contains("tag")
                ? FindTags.in(page).get(0).centrePx()
                : FindMarkers.in(page).get(0).centrePx();
        double half = (mark.sideMm() / 2 + mark.quietMm()) / Printed.MM_PER_INCH * DPI - 4;
        // Three dots for the centre as found.
        double inner = mark.sideMm() / 2 / Printed.MM_PER_INCH * DPI + 4;
        for (int d = (int) -half; d <= half; d++) {
          for (double r = inner; r <= half; r++) {
            white(page, centre, d, r);
            white(page, centre, d, -r);
            white(page, centre, r, d);
            white(page, centre, -r, d);
          }
        }
      }
    }
  }

  private static void white(RgbImage page, PointPx centre, double dx, double dy) {
    int x = (int) Math.round(centre.xPx() + dx);
    int y = (int) Math.round(centre.yPx() + dy);
    assertTrue(page.value(x, y, 1) > 250, "print at " + x + ", " + y);
  }

  @Test
  void checkLineIsTrueAndShowsAPrinterThatShrinksByOnePercent() throws IOException {
    Path file = print(List.of(Mark.tag("KV-112", 60)));
    try (Printed good = new Printed(file, DPI);
        Printed shrunk = new Printed(file, 0.99 * DPI)) {
      // Half a mm is what the foot line allows; a dot is 0.085 mm.
      assertEquals(150, Printed.checkLineMm(good.picture(0), DPI), 0.1);
      // 99 % of 150 mm; the page shrinks too, so its foot is looked for where it then lies.
      assertEquals(148.5, checkLineOfShrunk(shrunk), 0.1);
    }
  }

  private static double checkLineOfShrunk(Printed shrunk) throws IOException {
    double foundMm = Printed.checkLineMm(shrunk.picture(0), 0.99 * DPI);
    return 0.99 * foundMm;
  }

  @Test
  void theSameMarksGiveTheSameFile() throws IOException {
    byte[] first = Files.readAllBytes(print(List.of(Mark.tag("KV-112", 60))));
    byte[] second = Files.readAllBytes(print(List.of(Mark.tag("KV-112", 60))));
    assertArrayEquals(first, second);
  }

  @Test
  void markThatIsTooLargeForALabelIsNamed() {
    LabelGrid grid = LabelGrid.parse("3x8:63.5x33.9", Paper.A4).orElseThrow();
    // 33.9 mm less two lines of 4 mm; 21 modules of 30 / 21 mm and four on each side: 41.4 mm.
    assertEquals(
        Optional.of(
            "KV-112: tag, 30 mm needs 41.4 mm with its white rim, a label has room for 25.9 mm"),
        PrintMarks.tooLarge(List.of(Mark.tag("KV-112", 30)), grid));
  }

  @Test
  void markThatIsTooLargeForTheSheetIsNamedWithTheRoomThereIs() {
    List<Mark> marks = List.of(Mark.tag("KV-112", 30), Mark.tag("KV-113", 180));
    assertEquals(Optional.empty(), PrintMarks.fields(marks, Paper.A4));
    // 29 modules of 180 / 21 mm; 210 mm less two rims of 8 mm, less the line between fields.
    assertEquals(
        "KV-113: tag, 180 mm needs 248.6 mm with its white rim, the sheet has room for 193.0 mm",
        PrintMarks.tooLarge(marks, Paper.A4));
    assertTrue(PrintMarks.fields(marks, Paper.A3).isPresent());
  }

  @Test
  void labelsLieWhereTheirSheetSays() {
    LabelGrid centred = LabelGrid.parse("2x4:99.1x67.7", Paper.A4).orElseThrow();
    // (210 - 2 * 99.1) / 2 = 5.9 and (297 - 4 * 67.7) / 2 = 13.1.
    assertEquals(5.9, centred.box(0).x(), 1e-9);
    assertEquals(13.1, centred.box(0).y(), 1e-9);
    assertEquals(5.9 + 99.1, centred.box(3).x(), 1e-9);
    assertEquals(13.1 + 67.7, centred.box(3).y(), 1e-9);
    LabelGrid gapped = LabelGrid.parse("2x4:99.1x67.7@4.65,13.1", Paper.A4).orElseThrow();
    // 210 - 2 * 99.1 - 2 * 4.65 = 2.5 between the columns.
    assertEquals(4.65 + 99.1 + 2.5, gapped.box(1).x(), 1e-9);
  }

  @Test
  void sheetsOfLabelsThatCannotBeAreRefused() {
    for (String text : List.of("", "2x4", "3x4:99.1x67.7", "2x5:99.1x67.7", "0x4:10x10")) {
      assertEquals(Optional.empty(), LabelGrid.parse(text, Paper.A4), text);
    }
    assertTrue(LabelGrid.parse("2x4:99.1x67.7", Paper.LETTER).isPresent());
  }
}
