// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** How much plants err alike, by sums over pairs done by hand. */
class CommonShareTest {

  @Test
  void theFactorIsOneAndTheMeanProductOfPairsOverTheMeanSquare() {
    CommonShare share = new CommonShare(60);
    // Bins of a day. Day 2: 1, 3, -1; day 3: 2, 2.
    share.add(2.1, 1);
    share.add(2.5, 3);
    share.add(2.9, -1);
    share.add(3.0, 2);
    share.add(3.99, 2);
    // Pairs both ways: day 2: 2 (1*3 - 1*1 - 3*1) = -2; day 3: 2 * 4 = 8; 6 of 6 + 2 = 8 pairs.
    double products = 6 / 8.0;
    // Squares: 1 + 9 + 1 + 4 + 4 = 19 of 5.
    double correlation = products / (19 / 5.0);
    assertEquals(1 + 9 * correlation, share.designEffect(10), 1e-12);
    assertEquals(1, share.designEffect(0.5), 0);
  }

  @Test
  void plantsThatErrTheSameWayTellAsMuchAsOne() {
    CommonShare share = new CommonShare(6);
    for (int plant = 0; plant < 7; plant++) {
      share.add(1, 2);
      share.add(1.2, -2);
    }
    assertEquals(7, share.designEffect(7), 1e-12);
  }

  @Test
  void plantsThatErrAgainstEachOtherTellNoMoreThanAlone() {
    CommonShare share = new CommonShare(6);
    share.add(1, 2);
    share.add(1, -2);
    assertEquals(1, share.designEffect(30), 0);
  }

  @Test
  void withoutPairsOrErrorsNothingIsCommon() {
    CommonShare alone = new CommonShare(60);
    alone.add(1, 2);
    alone.add(5, 2);
    assertEquals(1, alone.designEffect(30), 0);
    CommonShare exact = new CommonShare(0);
    exact.add(1, 0);
    exact.add(1, 0);
    assertEquals(1, exact.designEffect(30), 0);
  }
}
