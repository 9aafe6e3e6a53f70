// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Medians, spreads and shapes of cycles, each number by hand. */
class PointsTest {
  private static PastCycle on(double... dat) {
    return PastCycle.of(dat, new double[dat.length]);
  }

  private static double[] shape(PastCycle cycle, double[] off, double shift) {
    return Points.shape(cycle, off, shift).stream().mapToDouble(v -> v).toArray();
  }

  @Test
  void theShapeIsTheMedianOfEachSixthLessTheShift() {
    // Days 3 to 15: sixths of two days that begin at 3, 5, 7, 9, 11 and 13; the last has its end.
    PastCycle cycle = on(IntStream.rangeClosed(3, 15).mapToDouble(d -> d).toArray());
    double[] off = {1, 3, 10, 20, 5, 5, -4, 0, 7, 9, 2, 30, 4};
    assertArrayEquals(new double[] {1, 14, 4, -3, 7, 3}, shape(cycle, off, 1), 1e-12);
  }

  @Test
  void partsWithoutPhotosAreLeftOut() {
    assertArrayEquals(new double[] {-2, 3}, shape(on(4, 16), new double[] {0, 5}, 2), 1e-12);
    assertArrayEquals(new double[] {1, 2}, shape(on(4, 5, 16), new double[] {0, 2, 2}, 0), 1e-12);
  }

  @Test
  void cycleOfOneDayHasOnePart() {
    assertArrayEquals(new double[] {2}, shape(on(8, 8, 8), new double[] {1, 2, 9}, 0), 1e-12);
  }

  @Test
  void theMedianIsTheMiddleOrTheMeanOfTheTwo() {
    assertEquals(3, Points.median(new double[] {9, 3, 1}));
    assertEquals(2.5, Points.median(new double[] {9, 2, 1, 3}));
    assertEquals(7, Points.median(new double[] {7}));
  }

  @Test
  void theDeviationIsTheSampleOneAndTheRootMeanSquareIsAboutNought() {
    // Squares about the mean 5: 9 1 1 1 0 0 4 16 = 32, over 7; about 0: 232 over 8
    List<Double> values = List.of(2.0, 4.0, 4.0, 4.0, 5.0, 5.0, 7.0, 9.0);
    assertEquals(Math.sqrt(32.0 / 7), Points.sd(values), 1e-12);
    assertEquals(Math.sqrt(29), Points.rootMeanSquare(values), 1e-12);
    assertEquals(0, Points.sd(List.of(3.0)));
  }

  @Test
  void cyclesHaveAsManyAreasAsDaysAndAtLeastOne() {
    assertEquals(
        "dat and lnArea must have one length > 0, got 2 and 1",
        assertThrows(
                IllegalArgumentException.class, () -> PastCycle.of(new double[2], new double[1]))
            .getMessage());
    assertEquals(
        "dat and lnArea must have one length > 0, got 0 and 0",
        assertThrows(
                IllegalArgumentException.class, () -> PastCycle.of(new double[0], new double[0]))
            .getMessage());
    for (double[] bad : new double[][] {{1, Double.NaN}, {1, Double.NEGATIVE_INFINITY}}) {
      assertEquals(
          "point 1 must be finite",
          assertThrows(IllegalArgumentException.class, () -> PastCycle.of(bad, new double[] {1, 2}))
              .getMessage());
      assertThrows(IllegalArgumentException.class, () -> PastCycle.of(new double[] {1, 2}, bad));
    }
  }

  @Test
  void residualsAreAreasLessTheMedianOfTheirDays() {
    double[] days = IntStream.rangeClosed(2, 20).mapToDouble(d -> d).toArray();
    SmoothMedian line = SmoothMedian.of(days, Arrays.stream(days).map(d -> 1 + 0.2 * d).toArray());
    PastCycle cycle = PastCycle.of(new double[] {5, 10}, new double[] {2.5, 2});
    assertArrayEquals(new double[] {0.5, -1}, Points.residuals(cycle, line), 1e-5);
  }
}
