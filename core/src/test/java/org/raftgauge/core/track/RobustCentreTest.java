// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RobustCentreTest {

  @Test
  void centreOfSymmetricValuesIsTheirMiddle() {
    // By symmetry; the deviations 2 1 0 1 2 have median 1, times 1.4826.
    RobustCentre centre = RobustCentre.of(new double[] {1, 2, 3, 4, 5});
    assertEquals(3, centre.centre(), 1e-12);
    assertEquals(1.4826, centre.spread(), 1e-12);
  }

  @Test
  void oneWildValueDoesNotMoveIt() {
    assertEquals(2.5, RobustCentre.of(new double[] {1, 2, 3, 4, 1000}).centre(), 0.2);
  }

  @Test
  void centreOfNormalValuesHasTheStatedError() {
    Random random = new Random(3);
    double squares = 0;
    int trials = 2000;
    for (int t = 0; t < trials; t++) {
      double[] values = random.doubles(18, -1, 1).map(x -> random.nextGaussian()).toArray();
      double centre = RobustCentre.of(values).centre();
      squares += centre * centre;
    }
    // 1.1 / sqrt(18) = 0.259 is what standardError says for a spread of 1.
    assertEquals(0.259, Math.sqrt(squares / trials), 0.02);
  }

  @Test
  void nothingHasNoCentre() {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> RobustCentre.of(new double[0]));
    assertEquals("values must be one or more, got none", e.getMessage());
  }
}
