// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.growth.Series;

class SomePlantsTest {
  private static final List<Series> TEN =
      IntStream.range(0, 10)
          .mapToObj(i -> Series.of(new double[] {1, 2}, new double[] {10 + i, 20 + i}))
          .toList();

  @Test
  void asManyAsAreWantedAreAllOfThem() {
    assertSame(TEN, SomePlants.evenly(TEN, 10));
  }

  @Test
  void fewerAreTakenAtEvenDistances() {
    // Places 0, 10 / 4, 20 / 4 and 30 / 4, rounded down.
    assertEquals(
        List.of(TEN.get(0), TEN.get(2), TEN.get(5), TEN.get(7)), SomePlants.evenly(TEN, 4));
  }
}
