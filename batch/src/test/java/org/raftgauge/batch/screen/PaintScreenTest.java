// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PaintScreenTest {
  private static final Signal GOOD = Signal.good("KV-112: 20 sites");
  private static final Signal CUT =
      Signal.act("CUT OFF", "only 71 % of the board is in the photo; photograph it again");

  @ParameterizedTest
  @CsvSource({"80, 24", "100, 30", "200, 60", "20, 8", "132, 12"})
  void everyScreenIsFilledAndNoLineIsTooLong(int columns, int rows) {
    for (Signal signal : List.of(GOOD, CUT, Signal.waiting("a.jpg"))) {
      List<String> lines =
          PaintScreen.plain(signal, new PaintScreen.Size(columns, rows), "12 photos");
      assertEquals(rows, lines.size(), signal.word());
      lines.forEach(line -> assertEquals(columns, line.length(), signal.word() + ": " + line));
    }
  }

  @Test
  void theWordFillsMostOfTheWidth() {
    List<String> lines = PaintScreen.plain(GOOD, new PaintScreen.Size(80, 24), "");
    int left = 80;
    int right = 0;
    for (String line : lines.subList(9, 20)) {
      if (!line.isBlank()) {
        left = Math.min(left, line.length() - line.stripLeading().length());
        right = Math.max(right, line.stripTrailing().length());
      }
    }
    // Four letters; at least three quarters of the screen, so that each is a sixth of it wide.
    assertTrue(right - left >= 60, left + " to " + right);
  }

  @Test
  void goodAndActDifferInShapeToo() {
    PaintScreen.Size size = new PaintScreen.Size(80, 24);
    List<String> good = PaintScreen.plain(new Signal(Signal.Kind.GOOD, "X", "x"), size, "");
    List<String> act = PaintScreen.plain(new Signal(Signal.Kind.ACT, "X", "x"), size, "");
    int differ = 0;
    for (int row = 0; row < 9; row++) {
      for (int column = 0; column < 80; column++) {
        differ += good.get(row).charAt(column) == act.get(row).charAt(column) ? 0 : 1;
      }
    }
    assertTrue(differ > 60, differ + " cells differ");
  }

  @Test
  void coloursAreNeverRedAndGreenAndTheScreenIsSetBack() {
    String good = PaintScreen.of(GOOD, new PaintScreen.Size(80, 24), "");
    String act = PaintScreen.of(CUT, new PaintScreen.Size(80, 24), "");
    // ECMA-48: 44 blue, 103 bright yellow ground; 41, 42 red and green grounds.
    assertTrue(good.contains("\u001b[1;97;44m") && act.contains("\u001b[30;103m"));
    assertTrue(!(good + act).contains("41m") && !(good + act).contains("42m"));
    assertTrue(good.endsWith("\u001b[0m"));
  }
}
