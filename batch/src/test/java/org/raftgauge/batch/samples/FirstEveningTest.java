// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Follows the page on the first evening, as a reader whose raft is that of a sample photo. */
class FirstEveningTest {
  private static final String PHOTO = "2026-03-06_KV-112.jpg";

  @TempDir private Path folder;

  @Test
  void everyCommandEndsWellAndTheFirstReportMeasuresTheRaft() throws IOException {
    Path photos = Files.createDirectories(folder.resolve("my-photos"));
    Files.copy(
        Readme.ROOT.resolve("sample-images/photos/2026-03-06/" + PHOTO), photos.resolve(PHOTO));
    String page = Files.readString(Readme.ROOT.resolve("batch/FIRST-EVENING.md"));
    List<String> commands = Readme.commands(page);
    assertEquals(9, commands.size(), commands.toString());
    for (String command : commands) {
      Readme.Said said = Readme.run(arguments(command));
      assertEquals(0, said.code(), command + " said " + said.out() + said.err());
      if (command.contains(" new ")) {
        // What the page asks the reader to measure and mend: this raft has marks already.
        Files.writeString(
            folder.resolve("my-farm/layouts.yaml"),
            """
            layouts:
              board-20:
                board: {width_mm: 620, length_mm: 840}
                sites: {rows: 5, columns: 4, first_x_mm: 92, first_y_mm: 150, pitch_x_mm: 145, pitch_y_mm: 145}
                markers: {family: tag36h11, side_mm: 34, centres_mm: [[32, 32], [588, 32], [588, 808], [32, 808]]}
                tag: {x_mm: 310, y_mm: 46, side_mm: 72}
            """);
      }
      if (command.contains("raftgauge check ")) {
        assertTrue(said.out().startsWith("Nothing is wrong"), said.out());
      }
      if (command.contains("run my-photos --book")) {
        assertRaftWasMeasured();
      }
    }
    assertTrue(Files.readString(folder.resolve("my-farm/seen.csv")).contains("2026-03-20,Ana"));
    assertRaftWasMeasured();
  }

  private void assertRaftWasMeasured() throws IOException {
    assertTrue(Files.size(folder.resolve("my-evening/report.html")) > 10_000);
    assertTrue(Files.size(folder.resolve("my-evening/worklist-a4.pdf")) > 1_000);
    List<String> rafts = Files.readAllLines(folder.resolve("my-evening/rafts.csv"));
    assertEquals(2, rafts.size(), "a header and the raft");
    assertTrue(rafts.get(1).contains("KV-112"), rafts.get(1));
    assertTrue(rafts.get(1).contains(",markers,"), "placed by its markers: " + rafts.get(1));
  }

  private List<String> arguments(String command) {
    return Arrays.stream(command.split("\\s+", -1))
        .skip(1)
        .map(word -> word.startsWith("my-") ? folder.resolve(word).toString() : word)
        .toList();
  }
}
