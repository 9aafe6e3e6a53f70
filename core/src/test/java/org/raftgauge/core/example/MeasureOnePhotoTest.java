// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.example;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Runs the library example on a sample photo, as the README shows it. */
class MeasureOnePhotoTest {
  private static final Path ROOT = Path.of("..");
  private static final Path SOURCE =
      Path.of("src/test/java/org/raftgauge/core/example/MeasureOnePhoto.java");

  @Test
  void itPrintsTheAreaOfEverySite() throws IOException {
    List<String> lines = run("2026-03-10/2026-03-10_KV-112.jpg");
    // float-20 of layouts.yaml has 5 rows of 4.
    assertEquals(20, lines.size(), lines.toString());
    assertTrue(lines.stream().allMatch(l -> l.matches("KV-112 [A-E][1-4] \\d+ cm2")), "" + lines);
    // No plant stands on C2 until 12 March (events.csv).
    assertTrue(lines.contains("KV-112 C2 0 cm2"), lines.toString());
  }

  @Test
  void aPhotoThatShowsNoRaftSaysWhy() throws IOException {
    // Without its manifest nothing tells when and where the gantry's photo was taken: by the book's
    // station it has the wrong shape.
    List<String> lines = run("2026-03-08/2026-03-08_gantry.jpg");
    assertEquals(1, lines.size(), lines.toString());
    assertTrue(lines.get(0).startsWith("REFUSED: "), lines.get(0));
  }

  @Test
  void theReadmeShowsThisVeryFile() throws IOException {
    String source = Files.readString(SOURCE).replace("\r\n", "\n");
    String shown = source.substring(source.indexOf("import ")).strip();
    String readme = Files.readString(ROOT.resolve("README.md")).replace("\r\n", "\n");
    assertTrue(
        readme.contains("```java\n" + shown + "\n```"),
        "README.md shows another text than " + SOURCE);
  }

  private static List<String> run(String photo) throws IOException {
    Path samples = ROOT.resolve("sample-images");
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream out = System.out;
    try (PrintStream catcher = new PrintStream(said, true, StandardCharsets.UTF_8)) {
      System.setOut(catcher);
      MeasureOnePhoto.main(
          new String[] {
            samples.resolve("book").toString(), samples.resolve("photos").toString(), photo
          });
    } finally {
      System.setOut(out);
    }
    return said.toString(StandardCharsets.UTF_8).lines().toList();
  }
}
