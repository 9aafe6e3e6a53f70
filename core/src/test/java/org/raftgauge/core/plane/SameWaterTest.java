// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class SameWaterTest {
  private static boolean odd(double size, double... all) {
    return SameWater.isOdd(size, SameWater.usual(all));
  }

  @Test
  void aBoardThatLooksThreePercentLargerThanItsNeighboursIsOdd() {
    assertTrue(odd(0.035, 0.001, -0.002, 0.003, 0.035));
    assertTrue(odd(-0.03, 0.001, -0.002, -0.03));
    assertFalse(odd(0.003, 0.001, -0.002, 0.003, 0.035));
  }

  @Test
  void lowerWaterMakesAllBoardsSmallerAndNoneOdd() {
    // 40 mm at 2050 mm: ln(2050 / 2090) = -0.0193 for each; one floats 10 mm higher.
    double lower = Math.log(2050.0 / 2090);
    double higher = Math.log(2050.0 / 2080);
    assertFalse(odd(higher, lower, lower, lower, higher));
    assertEquals(
        -0.0181, SameWater.usual(new double[] {lower, lower, lower, higher}).getAsDouble(), 1e-4);
  }

  @Test
  void ofTwoSizesWithAsManyBoardsTheSmallerCounts() {
    assertTrue(odd(0.027, 0.027, 0.033, 0, 0.005));
    assertFalse(odd(0.005, 0.027, 0.033, 0, 0.005));
  }

  @Test
  void boardsThatDisagreeOrAreTooFewSayNothing() {
    assertEquals(OptionalDouble.empty(), SameWater.usual(new double[] {}));
    assertFalse(odd(0.035, 0.035));
    assertFalse(odd(0.035, 0.0, 0.035));
    assertFalse(odd(0.035, -0.03, 0.03, 0.0, 0.06, 0.035));
  }
}
