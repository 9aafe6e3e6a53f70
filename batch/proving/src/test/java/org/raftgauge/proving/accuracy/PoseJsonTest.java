// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;

class PoseJsonTest {
  private static final Path SAMPLES = Path.of("../../sample-images");

  @TempDir private Path folder;

  private static CropBook book() {
    return CropBook.read(SAMPLES.resolve("book")).book();
  }

  @Test
  void posesOfTheSampleScenarioAreRead() throws IOException {
    List<PosedRaft> rafts = PoseJson.read(SAMPLES.resolve("cameras.json"), book());
    // 11 photos of one raft at the bench, 3 of four rafts under the gantry.
    assertEquals(11 + 3 * 4, rafts.size());
    for (PosedRaft raft : rafts) {
      // The rows of a rotation have length 1.
      double row = Math.hypot(raft.rotation().get(0), raft.rotation().get(1));
      assertEquals(1, Math.hypot(row, raft.rotation().get(2)), 1e-9);
    }
  }

  @Test
  void aFileWithOneLensNamesTheRaftByThePhoto() throws IOException {
    Path file = folder.resolve("camera.json");
    Files.writeString(
        file,
        "{\"fx\": 2000.0, \"fy\": 2000.0, \"cx\": 600, \"cy\": 500, \"dist\": [1e-05, 0, 0, 0, 0],"
            + " \"photos\": {\"2026-03-14/2026-03-14_KV-112.jpg\": {\"R\": [[1, 0, 0], [0, 1, 0],"
            + " [0, 0, 1]], \"t\": [-310, -420, 1500.5]}, \"2026-03-14/2026-03-14_XX-1.jpg\":"
            + " {\"R\": [[1, 0, 0], [0, 1, 0], [0, 0, 1]], \"t\": [0, 0, 1]}}}");
    List<PosedRaft> rafts = PoseJson.read(file, book());
    assertEquals(1, rafts.size(), "the book knows no raft XX-1");
    assertEquals("KV-112", rafts.get(0).raft());
    assertEquals("float-20", rafts.get(0).layout().name());
    assertEquals(1e-5, rafts.get(0).lens().k1());
    assertTrue(rafts.get(0).shiftMm().contains(1500.5));
  }
}
