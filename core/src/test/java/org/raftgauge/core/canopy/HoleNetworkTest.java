// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import org.junit.jupiter.api.Test;

/** The file of a network, and its answer worked out by hand. */
class HoleNetworkTest {
  private static String row(int numbers, String value) {
    return String.join(" ", Collections.nCopies(numbers, value)) + "\n";
  }

  /** Middles 1, spreads 2; one unit that sums all terms less 0.5, and one that is never on. */
  private static String network() {
    int n = HoleNetwork.TERMS;
    return "network\n"
        + row(n, "1")
        + row(n, "2")
        + row(n, "1").trim()
        + " -0.5\n"
        + row(n, "0").trim()
        + " -1\n"
        + "0.03 100 0.25\n";
  }

  private static String file() {
    return "# a note\n" + network();
  }

  private static float[] terms(float value) {
    float[] terms = new float[HoleNetwork.TERMS];
    Arrays.fill(terms, value);
    return terms;
  }

  @Test
  void theAnswerIsThatOfTheFormula() {
    // z = (2 - 1) / 2 = 0.5 each; 25 x 0.5 - 0.5 = 12; 0.03 x 12 + 0.25; and 4 ln 2 of the rules
    assertEquals(0.61 + 2.7726, HoleNetwork.of(file()).odds(terms(2)), 1e-3);
  }

  @Test
  void unitsUnderNoughtAreOff() {
    // The rules count for no less than 4 ln 0.15.
    assertEquals(0.25 - 7.5885, HoleNetwork.of(file()).odds(terms(-5)), 1e-3);
  }

  @Test
  void termsAreKeptWithinTheirLimit() {
    // z = 4 at the most: 25 x 4 - 0.5 = 99.5; 0.03 x 99.5 + 0.25 = 3.235; and 4 ln 1000
    assertEquals(3.235 + 27.631, HoleNetwork.of(file()).odds(terms(1000)), 1e-2);
  }

  @Test
  void whatTheNetworksAddIsBounded() {
    // -50 is cut to -3.5; what scores e times the threshold is 4 by the rules.
    String against = file().replace("0.03 100 0.25", "0 0 -50");
    assertEquals(0.5, HoleNetwork.of(against).odds(terms((float) Math.E)), 1e-3);
  }

  @Test
  void theFileThatComesWithTheProgramIsSound() {
    assertTrue(Float.isFinite(HoleNetwork.shipped().odds(terms(1))));
  }

  @Test
  void severalNetworksAreAveraged() {
    String two = file() + network().replace("100 0.25", "100 1.25");
    assertEquals(1.11 + 2.7726, HoleNetwork.of(two).odds(terms(2)), 1e-3);
  }

  @Test
  void aFileWithoutNetworkIsRefused() {
    IllegalStateException e =
        assertThrows(IllegalStateException.class, () -> HoleNetwork.of("# a note\n1 2 3\n"));
    assertTrue(e.getMessage().contains("holds no network"), e.getMessage());
  }

  @Test
  void aFileWhoseRowsDoNotFitIsRefused() {
    String cut = file().replace("0.03 100 0.25", "0.03 0.25");
    IllegalStateException e = assertThrows(IllegalStateException.class, () -> HoleNetwork.of(cut));
    assertTrue(e.getMessage().contains("the rows of hole-network.txt do not fit"), e.getMessage());
  }
}
