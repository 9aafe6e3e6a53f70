// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.TaughtGround;

/** A taught network's score, by hand. */
class GroundNetworkTest {

  /** One unit that weighs the first term less 10, in halves, plus a constant. */
  static TaughtGround oneUnit(double weight, double constant, double output) {
    List<Double> middle = new ArrayList<>(Collections.nCopies(TaughtGround.TERMS, 0.0));
    middle.set(0, 10.0);
    List<Double> spread = new ArrayList<>(Collections.nCopies(TaughtGround.TERMS, 1.0));
    spread.set(0, 2.0);
    List<Double> unit = new ArrayList<>(Collections.nCopies(TaughtGround.TERMS + 1, 0.0));
    unit.set(0, weight);
    unit.set(TaughtGround.TERMS, constant);
    return new TaughtGround(middle, spread, List.of(unit), List.of(output, -1.0));
  }

  private static double score(double first) {
    float[] terms = new float[TaughtGround.TERMS];
    terms[0] = (float) first;
    return new GroundNetwork(oneUnit(3, 0.5, 2)).score(terms);
  }

  @Test
  void aUnitCountsPastZeroAndTermsWithinFourSpreads() {
    // (12 - 10) / 2 = 1; 3 * 1 + 0.5 = 3.5; 2 * 3.5 - 1.
    assertEquals(6, score(12), 1e-6);
    // (6 - 10) / 2 = -2; 3 * -2 + 0.5 is below 0, so only the constant is left.
    assertEquals(-1, score(6), 1e-6);
    // 90 / 2 counts as 4: 2 * (12 + 0.5) - 1.
    assertEquals(24, score(100), 1e-6);
  }
}
