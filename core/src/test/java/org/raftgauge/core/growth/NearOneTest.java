// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NearOneTest {
  // The second way: the JDK's own log1p (fdlibm), which is within one unit in the last place.
  @ParameterizedTest
  @ValueSource(
      doubles = {
        -0.999999, -0.5, -1e-8, -1e-16, -1e-17, -1e-300, 0, 1e-300, 1e-17, 1.1e-16, 1.2e-16, 3e-16,
        1e-12, 1e-5, 0.3, 1, 7, 1e9, 1e16, 1e300
      })
  void theLogarithmIsThatOfTheJdk(double x) {
    double expected = Math.log1p(x);
    assertEquals(expected, NearOne.lnOnePlus(x), 4 * Math.ulp(expected));
  }

  @Test
  void whatHasNoBoundStaysWithoutBound() {
    assertEquals(Double.POSITIVE_INFINITY, NearOne.lnOnePlus(Double.POSITIVE_INFINITY));
    assertEquals(Double.NaN, NearOne.lnOnePlus(Double.NaN));
  }
}
