// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Levels of light and back. */
class LightLevelsTest {

  @Test
  void everyCodeComesBackAsItself() {
    for (int v = 0; v < 256; v++) {
      assertEquals((byte) v, LightLevels.coded((int) LightLevels.ofCode((byte) v)));
    }
  }

  /** Half the light of white is code 188 (IEC 61966-2-1: 1.055 * 0.5^(1/2.4) - 0.055 = 0.7354). */
  @Test
  void halfTheLightOfWhiteIsCode188() {
    assertEquals(188, LightLevels.coded(0x8000) & 0xff);
  }
}
