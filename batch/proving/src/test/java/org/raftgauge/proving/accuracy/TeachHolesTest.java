// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.canopy.HoleNetwork;
import org.raftgauge.core.problem.InputException;

class TeachHolesTest {
  @TempDir private Path work;

  @Test
  void aFewBoardsMakeAFileWhoseRowsFit() throws IOException, InputException {
    String text = TeachHoles.from(work, 3, 2);
    List<String> lines = text.lines().toList();
    assertTrue(lines.get(1).startsWith("# (seed 3, "), text);
    int networks = 0;
    for (int at = 2; at < lines.size(); networks++) {
      assertEquals(HoleNetwork.BEGIN, lines.get(at++));
      int from = at;
      while (at < lines.size() && !lines.get(at).equals(HoleNetwork.BEGIN)) {
        at++;
      }
      int units = at - from - 3;
      assertEquals(24, units);
      assertEquals(HoleNetwork.TERMS, numbers(lines.get(from + 1)));
      assertEquals(HoleNetwork.TERMS + 1, numbers(lines.get(from + 2)));
      assertEquals(units + 1, numbers(lines.get(at - 1)));
    }
    assertEquals(3, networks);
    // The photos are there by now: what is taught from them again is the same.
    assertEquals(text, TeachHoles.from(work, 3, 2));
  }

  private static int numbers(String line) {
    return line.split(" ").length;
  }
}
