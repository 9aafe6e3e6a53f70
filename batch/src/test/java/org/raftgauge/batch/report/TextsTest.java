// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class TextsTest {
  @Test
  void daysAreWordedButNotThoseToBeCopiedIntoTheBook() {
    assertEquals(
        "Since 9 Apr 2026 (1 evening): hazy; if it was changed on purpose, write changed_on:"
            + " [2026-04-09] into stations/bench.yaml",
        Texts.days(
            "Since 2026-04-09 (1 evening): hazy; if it was changed on purpose, write changed_on:"
                + " [2026-04-09] into stations/bench.yaml"));
  }
}
