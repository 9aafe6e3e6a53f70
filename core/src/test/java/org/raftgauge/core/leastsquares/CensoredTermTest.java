// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values by mpmath 1.3 with 30 digits: log(ncdf(z)), npdf(z) / ncdf(z), h (h + z). */
class CensoredTermTest {

  @ParameterizedTest
  @CsvSource({
    "-40, -804.608442013754, 40.0249688472073, 0.999377331621409",
    "-31, -484.853963627179, 31.0321912767777, 0.998965858410047",
    "-29, -424.787419909730, 29.0344012377363, 0.998819339511233",
    "-5, -15.0649983939887, 5.18650396712584, 0.967303565382888",
    "-1, -1.84102164500926, 1.52513527616098, 0.800902334429651",
    "0, -0.693147180559945, 0.797884560802865, 0.636619772367581",
    "2, -0.0230129093289635, 0.05524786267899, 0.113548051688576"
  })
  void logarithmHazardAndInformationAreThoseOfTheNormal(
      double z, double logPhi, double hazard, double information) {
    // The series beyond -30 leaves out 3 / z^4: 4e-6 of hazard at -30.
    double rest = z > -30 ? 1e-11 : 5e-6;
    assertEquals(logPhi, CensoredTerm.logPhi(z), rest * Math.max(1, -logPhi / 100));
    assertEquals(hazard, CensoredTerm.hazard(z), 10 * rest * hazard);
    assertEquals(information, CensoredTerm.information(z), 6e3 * rest);
    assertEquals(Math.sqrt(-2 * logPhi), CensoredTerm.deviance(CensoredTerm.logPhi(z)), 10 * rest);
  }
}
