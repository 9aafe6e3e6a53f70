// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class WarpTest {
  // One row 0, 100, 200.
  private static final RgbImage ROW =
      RgbImage.of(3, 1, new byte[] {0, 0, 0, 100, 100, 100, (byte) 200, (byte) 200, (byte) 200});

  @Test
  void betweenPixelsLightIsMixedAndPartsAreAveraged() {
    // By IEC 61966-2-1 codes 100 and 200 are lights of 0.1274 and 0.5776: half way lie 0.0637 and
    // 0.3525, codes 71 and 160; their mean is 0.2081, code 126; outside is black.
    assertEquals(71, Warp.redraw(ROW, row(0.5f, 1.5f), 1).value(0, 0, 0));
    assertEquals(160, Warp.redraw(ROW, row(0.5f, 1.5f), 1).value(1, 0, 0));
    assertEquals(126, Warp.redraw(ROW, row(0.5f, 1.5f), 2).value(0, 0, 0));
    assertEquals(0, Warp.redraw(ROW, row(7), 1).value(0, 0, 0));
  }

  @Test
  void placesThatAreNoneAreBlack() {
    assertEquals(0, Warp.redraw(ROW, row(Float.NaN), 1).value(0, 0, 0));
    assertEquals(0, Warp.redraw(ROW, row(Float.POSITIVE_INFINITY), 1).value(0, 0, 0));
  }

  @Test
  void aShrinkThatLeavesPixelsOverIsRefused() {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> Warp.redraw(ROW, row(0, 1), 3));
    assertEquals("shrink must divide 2 x 2, got 3", e.getMessage());
  }

  /** Rows of the first row's pixels, as many as columns. */
  private static Warp.Sources row(float... places) {
    return new Warp.Sources() {

      @Override
      public int width() {
        return places.length;
      }

      @Override
      public int height() {
        return places.length;
      }

      @Override
      public void row(int y, float[] xPx, float[] yPx) {
        System.arraycopy(places, 0, xPx, 0, places.length);
        Arrays.fill(yPx, 0);
      }
    };
  }
}
