// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.growth.Series;

/** Medians of a few plants, by hand. */
class TypicalSeriesTest {

  @Test
  void eachDayIsTheMedianOfLnArea() {
    Series typical =
        TypicalSeries.of(
            List.of(
                Series.of(new double[] {0, 30}, new double[] {1, 50}),
                Series.of(new double[] {0, 30}, new double[] {4, 20}),
                Series.of(new double[] {0, 30, 60}, new double[] {9, 40, 70}),
                Series.of(new double[] {0}, new double[] {16})));
    assertEquals(3, typical.size());
    // Of 1, 4, 9, 16 the middle two meet at the geometric mean: sqrt(4 * 9).
    assertEquals(6, typical.areaCm2(0), 1e-12);
    assertEquals(40, typical.areaCm2(1), 1e-12);
    assertEquals(70, typical.areaCm2(2), 1e-12);
    assertEquals(30, typical.dat(1), 0);
  }

  @Test
  void photosWithinASixtiethOfTheSpanAreOneDay() {
    Series typical =
        TypicalSeries.of(
            List.of(
                Series.of(new double[] {0, 1, 2.5, 60}, new double[] {1, 2, 3, 4}),
                Series.of(new double[] {0.5}, new double[] {8})));
    // The bin from 0 is a day wide, its end counted: 0, 0.5, 1 with areas 1, 8, 2.
    assertEquals(3, typical.size());
    assertEquals(0.5, typical.dat(0), 0);
    assertEquals(2, typical.areaCm2(0), 1e-12);
    assertEquals(2.5, typical.dat(1), 0);
    assertEquals(60, typical.dat(2), 0);
  }
}
