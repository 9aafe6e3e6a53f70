// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;

class SiteMeasureTest {
  private static SiteMeasure measure(OptionalDouble se) {
    OptionalDouble area = OptionalDouble.of(50);
    return new SiteMeasure(
        new SiteId(0, 0), area, se, area, false, 0, 0, 1, List.of(), List.of(), 1, "");
  }

  @Test
  void errorOfAnAreaIsAShareOfItAndTheUsualOneWhereNoneIsGiven() {
    // 2 of 50 cm2, and 1.5 of 50 cm2.
    assertEquals(0.04, measure(OptionalDouble.of(2)).areaErrorFraction(1.5), 1e-12);
    assertEquals(0.03, measure(OptionalDouble.empty()).areaErrorFraction(1.5), 1e-12);
  }

  /** Errors of a million square centimetres stopped forecasts of weights. */
  @Test
  void errorThatIsLargerThanTheAreaIsTakenAsLargeAsIt() {
    assertEquals(1, measure(OptionalDouble.of(1e6)).areaErrorFraction(1.5), 1e-12);
  }
}
