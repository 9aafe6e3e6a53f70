// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.core.book.CropBook;

class NewCommandTest {
  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @ParameterizedTest
  @CsvSource({
    "passing, 600x1200, 6, 3, 180, 3000x4000",
    "passing, 460x680, 10, 7, 55, 4000x3000",
    "passing, 300x300, 10, 10, 28, 2000x2000",
    "passing, 1220x2440, 12, 6, 200x203.5, 3000x4000",
    "fixed, 600x1200, 6, 3, 180, 4000x3000",
    "fixed, 600x1200, 6, 3, 180, 3000x4000",
    "fixed, 2440x1220, 6, 12, 200, 1920x1080"
  })
  void theBookIsAcceptedWithoutAFinding(
      String kind, String board, String rows, String columns, String pitch, String photo) {
    List<String> args = new ArrayList<>(List.of("new", path("book"), "--kind", kind));
    args.addAll(List.of("--board", board, "--rows", rows, "--columns", columns));
    args.addAll(List.of("--pitch", pitch, "--photo", photo, "--height", "1600"));
    args.addAll(List.of("--time-zone", "Europe/Lisbon", "--crop", "butterhead"));
    assertEquals(0, run(false, args.toArray(String[]::new)), text(err));
    out.reset();
    assertEquals(0, run(false, "check", "--book", path("book")), text(err));
    assertTrue(text(out).startsWith("Nothing is wrong with "), text(out));
    CropBook book = CropBook.read(folder.resolve("book")).book();
    assertEquals(1, book.plantings().size());
    assertEquals(kind.equals("fixed") ? 1 : 0, book.placements().size());
  }

  @Test
  void theFocalLengthFollowsFromTheViewAndElseIsSaidToBeAGuess() throws IOException {
    assertEquals(0, run(false, usual("a", "--view", "1200")), text(err));
    // By similar triangles: 3000 px * 1600 mm / 1200 mm.
    assertTrue(read("a/stations/bench.yaml").contains("{fx_px: 4000}"));
    assertEquals(0, run(false, usual("b")), text(err));
    assertTrue(read("b/stations/bench.yaml").contains("A GUESS"));
  }

  @Test
  void lengthsInCentimetresAndAPhotoSmallerThanTheBoardAreDoubted() {
    String[] small = {"--rows", "2", "--columns", "2", "--pitch", "14", "--photo", "3000x4000"};
    List<String> args = new ArrayList<>(List.of("new", path("my book"), "--board", "60x120"));
    args.addAll(List.of(small));
    assertEquals(0, run(false, withUsual(args)), text(err));
    assertTrue(
        text(out).contains("Look at: a board of 60 x 120 mm is very small: were these cm?\n"),
        text(out));
    assertTrue(text(out).endsWith("check --book \"" + path("my book") + "\"\n"), text(out));
    out.reset();
    // 3000 x 4000 px: as high as 4/3 of the view.
    assertEquals(0, run(false, usual("b", "--view", "840")), text(err));
    assertTrue(
        text(out)
            .contains("Look at: the photo shows 840 x 1120 mm of deck, and the board is 600 x"),
        text(out));
    out.reset();
    assertEquals(0, run(false, usual("c", "--view", "900")), text(err));
    assertFalse(text(out).contains("Look at"), text(out));
  }

  private static String[] withUsual(List<String> args) {
    args.addAll(List.of("--height", "1600"));
    return args.toArray(String[]::new);
  }

  @Test
  void nothingIsOverwritten() throws IOException {
    Files.createDirectories(folder.resolve("a"));
    Files.writeString(folder.resolve("a/mine.txt"), "mine");
    assertEquals(2, run(false, usual("a")));
    assertTrue(text(err).contains("is there already; give a new folder"), text(err));
    assertEquals("mine", read("a/mine.txt"));
    assertFalse(Files.exists(folder.resolve("a/book.yaml")));
  }

  /** Returns answers, one a line. */
  private static String typed(String answers) {
    return answers.replace('|', '\n') + "\n";
  }

  @Test
  void whatNoOptionSaysIsAskedOnATerminal() throws IOException {
    answering(
        typed("600 x 1200|6|3|180|3000x4000|1600||Europe/Lisbon|basil")
            + typed("K-08..K-10, M1|North|2026-03-02"));
    assertTrue(text(out).contains("Board, width x length in mm: "), text(out));
    assertTrue(read("a/crops.yaml").contains("  basil:"));
    assertTrue(read("a/book.yaml").contains("time_zone: Europe/Lisbon"));
    assertEquals(
        List.of(
            "K-08,North,1,basil,,board-18,,,2026-03-02,,,",
            "K-09,North,2,basil,,board-18,,,2026-03-02,,,",
            "K-10,North,3,basil,,board-18,,,2026-03-02,,,",
            "M1,North,4,basil,,board-18,,,2026-03-02,,,"),
        read("a/plantings.csv").lines().skip(1).toList());
  }

  @Test
  void aSlipOfTheFingerIsSaidAndAskedAgain() throws IOException {
    answering(
        typed("600,5x1200|600x1200|six|9|3|180|600x1200|6|3|180|3000|3000x4000|1600|1.2m|1200")
            + typed("Europe/Lisboa|Europe/Lisbon|=basil|basil|R-9..R-1|R-1||2.3.2026|2026-03-02"));
    for (String said :
        List.of(
            "  \"600,5\"; write numbers above 0 with a dot, as in 12.5\n",
            "  \"six\"; write numbers above 0 with a dot",
            "  9 rows and 3 columns do not fit on the board; measure board and pitch again",
            "  \"3000\"; write two numbers, as in 600x1200\n",
            "  \"1.2m\"; write numbers above 0",
            "  \"=basil\" is not a name: it begins with",
            "  \"R-9..R-1\"; write a range upwards of the same letters, as in R-001..R-012\n",
            "  \"2.3.2026\" is not a date; write year-month-day",
            "  \"Europe/Lisboa\" is not a time zone")) {
      assertTrue(text(out).contains(said), said + " in " + text(out));
    }
    assertTrue(read("a/plantings.csv").contains("R-1,P1,1,basil,,board-18,,,2026-03-02,,,"));
  }

  @Test
  void checkSaysWhatMayBeAGuessAndStillFindsNothingWrong() {
    run(false, usual("a", "--time-zone", "Europe/Lisbon"));
    out.reset();
    assertEquals(0, run(false, "check", "--book", path("a")), text(err));
    List<String> said = text(out).lines().toList();
    assertTrue(said.get(0).startsWith("Nothing is wrong with "), said.toString());
    assertTrue(
        said.get(1).startsWith("Note: station bench: its lens was never calibrated"),
        said.toString());
    assertTrue(
        said.get(2)
            .matches(
                "Note: the farm's clock is that of Europe/Lisbon, where it is now"
                    + " \\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d; if yours .* mend time_zone in book.yaml"),
        said.toString());
  }

  private void answering(String answers) {
    InputStream before = System.in;
    System.setIn(new ByteArrayInputStream(answers.getBytes(StandardCharsets.UTF_8)));
    try {
      assertEquals(0, run(true, "new", path("a")), text(err) + text(out));
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void whatIsMissingOrWrongIsSaid() {
    assertEquals(2, run(false, "new", path("a"), "--board", "600x1200"));
    assertTrue(text(err).contains("Missing option --rows"), text(err));
    err.reset();
    assertEquals(2, run(false, "new", path("a"), "--board", "600,5x1200"));
    assertTrue(text(err).contains("--board: \"600,5\"; write numbers above 0 with a dot"));
    err.reset();
    assertEquals(2, run(false, usual("a", "--rows", "9")));
    assertTrue(text(err).contains("9 rows and 3 columns do not fit on it"), text(err));
    err.reset();
    assertEquals(2, run(false, usual("a", "--raft", "=1+1")));
    assertTrue(text(err).contains("--raft: \"=1+1\" is not a name"), text(err));
    assertFalse(Files.exists(folder.resolve("a")));
  }

  private String[] usual(String name, String... more) {
    List<String> args = new ArrayList<>(List.of("new", path(name), "--board", "600x1200"));
    if (!List.of(more).contains("--rows")) {
      args.addAll(List.of("--rows", "6"));
    }
    args.addAll(List.of("--columns", "3", "--pitch", "180", "--photo", "3000x4000"));
    args.addAll(List.of("--height", "1600"));
    args.addAll(List.of(more));
    return args.toArray(String[]::new);
  }

  private int run(boolean terminal, String... args) {
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            terminal);
    return Raftgauge.run(args, new BookWorkplace(), console);
  }

  private static String text(ByteArrayOutputStream stream) {
    return stream.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private String read(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }
}
