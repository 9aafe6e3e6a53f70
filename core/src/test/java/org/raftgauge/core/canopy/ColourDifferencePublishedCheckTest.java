// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.PublishedTable;

/** CIEDE2000 against the 34 pairs of Sharma, Wu and Dalal 2005. */
@Tag("published")
class ColourDifferencePublishedCheckTest {
  /** Half a unit of the last printed digit, and as much again for rounding at a half. */
  private static final double PRINTED = 5.01e-5;

  @Test
  void allPairsDifferAsPrintedBothWaysRound() {
    for (Map<String, String> pair : PublishedTable.rows("sharma-2005-ciede2000.csv")) {
      double printed = Double.parseDouble(pair.get("difference"));
      Cielab one = lab(pair, "_1");
      Cielab other = lab(pair, "_2");
      assertEquals(printed, ColourDifference.ciede2000(one, other), PRINTED, pair.toString());
      assertEquals(printed, ColourDifference.ciede2000(other, one), PRINTED, pair.toString());
    }
  }

  @Test
  void blackAndWhiteAreAHundredApart() {
    // By the definition of the lightness term at mean lightness 50.
    double difference = ColourDifference.ciede2000(new Cielab(0, 0, 0), new Cielab(100, 0, 0));
    assertEquals(100, difference, 1e-9);
  }

  private static Cielab lab(Map<String, String> pair, String which) {
    return new Cielab(
        Double.parseDouble(pair.get("l" + which)),
        Double.parseDouble(pair.get("a" + which)),
        Double.parseDouble(pair.get("b" + which)));
  }
}
