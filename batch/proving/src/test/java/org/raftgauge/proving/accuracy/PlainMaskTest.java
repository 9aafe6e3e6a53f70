// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

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
