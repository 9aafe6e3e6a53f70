// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class PlainLineTest {

  @Test
  void whatBreaksTheLineSteersATerminalOrDoesNotShowIsWrittenOut() {
    assertEquals("a\\u000ab\\u001b[31m", PlainLine.of("a\nb\u001b[31m"));
    assertEquals("R\\u200b1 R\\u00a01 R\\u202e1", PlainLine.of("R\u200b1 R\u00a01 R\u202e1"));
    assertEquals("\\ud800\\u2028", PlainLine.of("\ud800\u2028"));
  }

  @Test
  void lettersOfEveryScriptStayAsTheyAre() {
    String text =
        "\u0637\u0648\u0641 \u0663, \u4e2d\u6587, e\u0301, \u06cc\u200c\u0647, \ud83e\udd6c";
    assertEquals(text, PlainLine.of(text));
  }

  @Test
  void aProblemIsOneLineWhateverWasFound() {
    assertEquals(
        "a.csv:2: \"R\\u000a1\" is unknown; known: R1",
        new Problem("a.csv:2", "\"R\n1\" is unknown", "known: R1").toString());
  }
}
