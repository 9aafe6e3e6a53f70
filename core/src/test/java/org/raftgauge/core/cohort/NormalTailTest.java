// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values by mpmath 1.3 with 30 digits, as in {@code CensoredTermTest}: the tail beyond -z. */
class NormalTailTest {

  @ParameterizedTest
  @CsvSource({
    "40, -804.608442013754, 40.0249688472073",
    "31, -484.853963627179, 31.0321912767777",
    "29, -424.787419909730, 29.0344012377363",
    "5, -15.0649983939887, 5.18650396712584",
    "1, -1.84102164500926, 1.52513527616098",
    "0, -0.693147180559945, 0.797884560802865",
    "-2, -0.0230129093289635, 0.05524786267899"
  })
  void logarithmAndHazardAreThoseOfTheNormal(double a, double logUpper, double hazard) {
    // The series beyond 30 leaves out 3 / a^4: 4e-6 of hazard at 30.
    double rest = a < 30 ? 1e-11 : 5e-6;
    assertEquals(logUpper, NormalTail.logUpper(a), rest * Math.max(1, -logUpper / 100));
    assertEquals(hazard, NormalTail.hazard(a), 10 * rest * hazard);
  }
}
