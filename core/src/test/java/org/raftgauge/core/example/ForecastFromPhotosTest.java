// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.example;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Runs the example of growth and forecast on the sample photos of one raft. */
class ForecastFromPhotosTest {
  private static final Path SAMPLES = Path.of("..", "sample-images");

  @Test
  void itFollowsThePlantsOfARaftAndForecastsItsArea() throws IOException {
    List<String> lines = run("03-06", "03-10", "03-14", "03-18", "03-22", "03-26");
    // 19 plants stand on KV-112 (C2 died, E4 was moved there), then its forecast and the remarks.
    List<String> plants = lines.stream().filter(l -> l.matches("KV-112 [A-E][1-4] .*")).toList();
    assertEquals(19, plants.size(), lines.toString());
    assertTrue(
        plants.stream().allMatch(l -> l.contains(" grows by ") || l.contains(" has no curve")),
        plants.toString());
    assertTrue(
        lines.stream().anyMatch(l -> l.startsWith("KV-112 on 2026-04-02: ")), lines.toString());
  }

  private static List<String> run(String... days) throws IOException {
    String[] args = new String[2 + days.length];
    args[0] = SAMPLES.resolve("book").toString();
    args[1] = SAMPLES.resolve("photos").toString();
    for (int i = 0; i < days.length; i++) {
      args[2 + i] = "2026-" + days[i] + "/2026-" + days[i] + "_KV-112.jpg";
    }
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream out = System.out;
    try (PrintStream catcher = new PrintStream(said, true, StandardCharsets.UTF_8)) {
      System.setOut(catcher);
      ForecastFromPhotos.main(args);
    } finally {
      System.setOut(out);
    }
    return said.toString(StandardCharsets.UTF_8).lines().toList();
  }
}
