// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;

/** What {@code station pair} says where it can make no pair. */
class StationPairCommandTest {
  private static final Path EXAMPLE =
      Path.of("..").toAbsolutePath().normalize().resolve("calibration/pair-example");

  @TempDir private Path folder;
  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  /** Takes four photos of each camera. */
  @BeforeEach
  void take() throws IOException {
    for (String side : new String[] {"left", "right"}) {
      Files.createDirectories(folder.resolve(side));
      for (String number : new String[] {"01", "02", "03", "05"}) {
        String name = side + number + ".jpg";
        Files.copy(EXAMPLE.resolve(side).resolve(name), folder.resolve(side).resolve(name));
      }
    }
  }

  private int pair(String... more) {
    PrintStream all = new PrintStream(said, true, StandardCharsets.UTF_8);
    String[] args = new String[more.length + 8];
    System.arraycopy(
        new String[] {
          "station",
          "pair",
          folder.resolve("left").toString(),
          folder.resolve("right").toString(),
          "--board",
          "chessboard:10x7:25",
          "--out",
          folder.resolve("pair.yaml").toString()
        },
        0,
        args,
        0,
        8);
    System.arraycopy(more, 0, args, 8, more.length);
    return Raftgauge.run(args, new BookWorkplace(), new Console(all, all, false));
  }

  private String said() {
    return said.toString(StandardCharsets.UTF_8);
  }

  @Test
  void aPictureThatIsLeftOutOfOneCameraIsNoMoment() throws IOException {
    Files.delete(folder.resolve("right/right05.jpg"));
    int code = pair("--first-mark", "left", "--mark", "right");
    assertEquals(0, code, said());
    assertTrue(said().contains("from 3 photos of each camera"), said());
    assertTrue(Files.readString(folder.resolve("pair.yaml")).contains("cameras: 2"));
    assertTrue(Files.isRegularFile(folder.resolve("pair-first-lens.png")));
    assertTrue(Files.isRegularFile(folder.resolve("pair-second-lens.png")));
    assertFalse(said().contains("Note"), said());
  }

  @Test
  void marksThatNoFileHasAreSaid() {
    assertEquals(0, pair(), said());
    assertTrue(
        said()
            .contains(
                "no photo of the second camera has \"_right\" in its name, by which runs tell it;"
                    + " give --mark"),
        said());
  }

  @Test
  void oneFolderForBothCamerasIsNoPair() throws IOException {
    for (String number : new String[] {"01", "02", "03", "05"}) {
      Path right = folder.resolve("right/right" + number + ".jpg");
      Files.copy(
          EXAMPLE.resolve("left/left" + number + ".jpg"),
          right,
          StandardCopyOption.REPLACE_EXISTING);
    }
    assertEquals(2, pair("--first-mark", "left", "--mark", "right"));
    assertTrue(said().contains("No pair: both folders hold the same photos; give one"), said());
    assertFalse(Files.exists(folder.resolve("pair.yaml")));
  }

  @Test
  void underThreeMomentsGiveNoPair() throws IOException {
    Files.move(folder.resolve("right/right05.jpg"), folder.resolve("right/right15.jpg"));
    Files.move(folder.resolve("right/right03.jpg"), folder.resolve("right/right13.jpg"));
    int code = pair("--first-mark", "left", "--mark", "right");
    assertEquals(2, code, said());
    assertTrue(said().contains("No pair: under three moments were found"), said());
    assertFalse(Files.exists(folder.resolve("pair.yaml")));
  }

  @Test
  void heightOutOfRangeIsRefusedBeforeAnythingIsRead() {
    assertEquals(2, pair("--height", "-3"));
    assertEquals("--height -3.0: is out of range; give mm, above 0, at most 50000", said().strip());
  }

  @Test
  void aBlankMarkIsRefused() {
    assertEquals(2, pair("--mark", " "));
    assertEquals(
        "--mark: is blank; give text that only the second camera's files have", said().strip());
  }
}
