// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Levels of light and back. */
class LightLevelsTest {

  @Test
  void everyCodeComesBackAsItself() {
    byte[] codes = new byte[256];
    for (int v = 0; v < codes.length; v++) {
      codes[v] = (byte) v;
    }
    short[] levels = new short[256];
    LightLevels.ofCodes(codes, 0, levels, 0, 256);
    assertArrayEquals(codes, LightLevels.coded(levels));
  }

  /** Half the light of white is code 188 (IEC 61966-2-1: 1.055 * 0.5^(1/2.4) - 0.055 = 0.7354). */
  @Test
  void halfTheLightOfWhiteIsCode188() {
    assertEquals(188, LightLevels.coded(new short[] {(short) 0x8000})[0] & 0xff);
  }
}
