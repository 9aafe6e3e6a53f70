// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Fast texts of numbers against the library's. */
class DecimalsTest {
  @Test
  void everyNumberIsWrittenAsTheLibraryRoundsIt() {
    Random random = new Random(5);
    for (int i = 0; i < 200_000; i++) {
      double size = Math.pow(10, 14 * random.nextDouble() - 4);
      double number = (random.nextDouble() - 0.2) * size;
      assertWritten(number, random.nextInt(13));
    }
  }

  @Test
  void numbersInTheMiddleAndBesideItGoByTheirRules() {
    for (int decimals = 0; decimals <= 4; decimals++) {
      for (int i = -50; i <= 2_000; i++) {
        double middle = (i + 0.5) / Math.pow(10, decimals);
        assertWritten(middle, decimals);
        assertWritten(Math.nextUp(middle), decimals);
        assertWritten(Math.nextDown(middle), decimals);
        assertWritten(i / Math.pow(10, decimals), decimals);
      }
    }
    // Half to even in cells, half up in words.
    assertEquals("2", Cell.number(2.5, 0).toString());
    assertEquals("3", Decimals.words(2.5, 0));
    assertEquals("0.0", Cell.number(-0.04, 1).toString());
    assertEquals("-0.0", Decimals.words(-0.04, 1));
    assertWritten(-0.0, 2);
    assertWritten(Double.MIN_VALUE, 12);
    assertWritten(1e300, 3);
  }

  private static void assertWritten(double number, int decimals) {
    assertEquals(
        BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString(),
        Cell.number(number, decimals).toString());
    assertEquals(
        String.format(Locale.ROOT, "%." + decimals + "f", number),
        Decimals.words(number, decimals));
  }
}
