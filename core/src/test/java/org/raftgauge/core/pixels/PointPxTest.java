// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class PointPxTest {

  @Test
  void distanceIsPythagoras() {
    // 3-4-5 triangle.
    assertEquals(5, new PointPx(1, 2).distancePx(new PointPx(4, -2)), 1e-12);
    assertEquals(5, new PointPx(4, -2).distancePx(new PointPx(1, 2)), 1e-12);
  }

  @Test
  void aPlaceThatIsNoNumberIsAWrongCall() {
    assertEquals(
        "point must be finite, got NaN, 1.0",
        assertThrows(IllegalArgumentException.class, () -> new PointPx(Double.NaN, 1))
            .getMessage());
    assertEquals(
        "point must be finite, got 0.0, Infinity",
        assertThrows(IllegalArgumentException.class, () -> new PointPx(0, Double.POSITIVE_INFINITY))
            .getMessage());
  }
}
