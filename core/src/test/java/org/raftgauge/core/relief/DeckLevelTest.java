// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class DeckLevelTest {
  private static HeightMap deckAt(float mm) {
    float[] heights = new float[100];
    Arrays.fill(heights, mm);
    heights[0] = 80 + mm;
    heights[1] = Float.NaN;
    return HeightMap.of(10, heights, HeightSource.STEREO, 1);
  }

  private static boolean[] bare(int pixels) {
    boolean[] bare = new boolean[100];
    Arrays.fill(bare, 100 - pixels, 100, true);
    return bare;
  }

  @Test
  void aDeckALittleOffIsPutToNought() {
    HeightMap level = assertInstanceOf(HeightMap.class, DeckLevel.of(deckAt(4), bare(60)));
    assertEquals(0, level.mm(50), 1e-6);
    assertEquals(80, level.mm(0), 1e-5);
    assertEquals(false, level.seen(1));
  }

  @Test
  void aDeckFarOffSaysThatACameraHasMoved() {
    NoHeights none = assertInstanceOf(NoHeights.class, DeckLevel.of(deckAt(-31), bare(60)));
    assertEquals("the second camera sees the bare deck 31 mm lower than the first", none.reason());
  }

  @Test
  void tooLittleBareDeckChangesNothing() {
    HeightMap map = deckAt(4);
    assertSame(map, DeckLevel.of(map, bare(4)));
  }
}
