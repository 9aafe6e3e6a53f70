// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class RgbImageTest {
  private static final byte[] TWO_BY_TWO = {1, 2, 3, 4, 5, 6, 7, 8, 9, (byte) 200, 11, (byte) 255};

  @Test
  void channelsAreInterleavedAndRowsFollowEachOther() {
    RgbImage image = RgbImage.of(2, 2, TWO_BY_TWO);
    assertEquals(2, image.width());
    assertEquals(2, image.height());
    assertEquals(2, image.value(0, 0, 1));
    assertEquals(4, image.value(1, 0, 0));
    assertEquals(9, image.value(0, 1, 2));
  }

  @Test
  void levelsAreUnsigned() {
    RgbImage image = RgbImage.of(2, 2, TWO_BY_TWO);
    assertEquals(200, image.value(1, 1, 0));
    assertEquals(255, image.value(1, 1, 2));
  }

  @Test
  void theArrayIsHandedOverNotCopied() {
    assertSame(TWO_BY_TWO, RgbImage.of(2, 2, TWO_BY_TWO).rgb());
  }

  @Test
  void anArrayOfAnotherLengthIsAWrongCall() {
    assertMessage("rgb length must be 18, got 12", () -> RgbImage.of(3, 2, TWO_BY_TWO));
    // 3 * 40000 * 40000 does not fit into 32 bits.
    assertMessage(
        "rgb length must be 4800000000, got 12", () -> RgbImage.of(40000, 40000, TWO_BY_TWO));
  }

  @Test
  void anEmptyPictureIsAWrongCall() {
    assertMessage("size must be >= 1 x 1, got 0 x 5", () -> RgbImage.of(0, 5, new byte[0]));
    assertMessage("size must be >= 1 x 1, got 5 x -1", () -> RgbImage.of(5, -1, new byte[0]));
  }

  private static void assertMessage(String expected, Runnable call) {
    assertEquals(expected, assertThrows(IllegalArgumentException.class, call::run).getMessage());
  }

  @Test
  void mirroringExchangesLeftAndRightOfEachRow() {
    RgbImage image =
        RgbImage.of(
            3, 2, new byte[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 12, 13, 14, 15, 16, 17, 18, 19});
    byte[] expected = {7, 8, 9, 4, 5, 6, 1, 2, 3, 17, 18, 19, 14, 15, 16, 11, 12, 13};
    org.junit.jupiter.api.Assertions.assertArrayEquals(expected, image.mirrored().rgb());
    org.junit.jupiter.api.Assertions.assertArrayEquals(
        image.rgb(), image.mirrored().mirrored().rgb());
  }
}
