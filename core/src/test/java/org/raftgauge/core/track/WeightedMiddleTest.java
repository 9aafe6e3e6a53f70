// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.track.WeightedMiddle.Weighted;

class WeightedMiddleTest {
  private static WeightedMiddle of(double... values) {
    return WeightedMiddle.of(Arrays.stream(values).mapToObj(v -> new Weighted(v, 1)).toList());
  }

  @Test
  void middleOfFourIsTheMeanOfTheInnerTwo() {
    // The middle half of four equal weights is just the second and third.
    assertEquals(2.5, of(100, 2, -50, 3).centre(), 1e-12);
  }

  @Test
  void oneValueIsItsOwnMiddle() {
    assertEquals(7, of(7).centre(), 1e-12);
  }

  @Test
  void quarterOfWildValuesDoesNotMoveItPastTheOthers() {
    assertEquals(1, of(1, 1, 1, 1, 1, 1, 900, 900).centre(), 1e-12);
  }

  @Test
  void heavyValueCounts() {
    // Weight 8 of 10 spans 10 % to 90 %: the whole middle half.
    List<Weighted> values = List.of(new Weighted(-5, 1), new Weighted(2, 8), new Weighted(50, 1));
    assertEquals(2, WeightedMiddle.of(values).centre(), 1e-12);
  }

  @Test
  void standardErrorIsThatOfNormalValues() {
    Random random = new Random(8);
    double squares = 0;
    int n = 4000;
    for (int trial = 0; trial < n; trial++) {
      double[] values = IntStream.range(0, 25).mapToDouble(i -> random.nextGaussian()).toArray();
      squares += Math.pow(of(values).centre(), 2);
    }
    // 1.15 / sqrt(25) = 0.23; the simulated error has one of 0.23 / sqrt(8000) = 0.003.
    assertEquals(of(new double[25]).standardError(), Math.sqrt(squares / n), 0.015);
  }
}
