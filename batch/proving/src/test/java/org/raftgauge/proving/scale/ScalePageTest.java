// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scale;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScalePageTest {
  @TempDir Path work;

  @Test
  void aSmallFarmIsWrittenJudgedAndTimed() throws IOException {
    String page = ScalePage.of(new ScalePage.Asked(work, List.of(150), 9, "commit x"));
    List<String> rows = page.lines().filter(l -> l.startsWith("| 162 |")).toList();
    assertEquals(4, rows.size(), page);
    assertTrue(rows.get(1).matches("\\| 162 \\| judge \\| [0-9.]+ \\| [0-9.]+ \\| \\d+ \\|"), page);
    assertTrue(page.contains("commit x, seed 9"), page);
  }
}
