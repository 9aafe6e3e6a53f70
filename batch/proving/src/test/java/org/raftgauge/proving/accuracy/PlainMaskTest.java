// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class PlainMaskTest {

  private static boolean[] mask(String picture) {
    String flat = picture.replace("\n", "");
    boolean[] mask = new boolean[flat.length()];
    for (int i = 0; i < mask.length; i++) {
      mask[i] = flat.charAt(i) == '#';
    }
    return mask;
  }

  private static String picture(boolean[] mask, int width) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < mask.length; i++) {
      text.append(mask[i] ? '#' : '.').append(i % width == width - 1 ? "\n" : "");
    }
    return text.toString();
  }

  @Test
  void otsuPartsTwoClearClasses() {
    int[] excess = {3, 5, 4, 120, 130, 4, 125, 3};
    assertArrayEquals(
        new boolean[] {false, false, false, true, true, false, true, false},
        PlainMask.aboveOtsu(excess));
  }

  @Test
  void otsuPartsTheWorkedHistogramAfterItsThirdLevel() {
    // Otsu 1979's between-class variance on the histogram 8, 7, 2, 6, 9, 4 of levels 0 to 5, worked
    // by hand in many courses: 1.593, 2.564, 2.629, 2.142, 0.870, the largest at level 2 (so class
    // 0 is 0 to 2). scikit-image 0.19.3 and OpenCV 4.6.0 answer 2 as well.
    int[] counts = {8, 7, 2, 6, 9, 4};
    int[] excess =
        IntStream.range(0, 6).flatMap(v -> IntStream.generate(() -> v).limit(counts[v])).toArray();
    boolean[] above = PlainMask.aboveOtsu(excess);
    for (int i = 0; i < excess.length; i++) {
      assertEquals(excess[i] > 2, above[i], "level " + excess[i]);
    }
  }

  @Test
  void openingDropsASpeckAndKeepsASquare() {
    String before =
        """
        ...........
        ...........
        ..#........
        ......###..
        ......###..
        ......###..
        ...........
        ...........
        """;
    String after =
        """
        ...........
        ...........
        ...........
        ......###..
        ......###..
        ......###..
        ...........
        ...........
        """;
    assertEquals(after, picture(PlainMask.openAndClose(mask(before), 11), 11));
  }

  @Test
  void closingFillsASlotOneColumnWide() {
    String before =
        """
        .............
        .............
        ..####.####..
        ..####.####..
        ..####.####..
        ..####.####..
        .............
        .............
        """;
    String after =
        """
        .............
        .............
        ..#########..
        ..#########..
        ..#########..
        ..#########..
        .............
        .............
        """;
    assertEquals(after, picture(PlainMask.openAndClose(mask(before), 13), 13));
  }
}
