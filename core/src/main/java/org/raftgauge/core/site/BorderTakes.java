// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

/**
 * What a plant takes of its neighbour at each step of the ratio of their radii: whole square
 * millimetres of the deck plane, rising, for a large farm's history holds millions of them.
 *
 * @param firstMm2 at one step of {@link Border#STEP}
 * @param secondMm2 at two
 * @param thirdMm2 at three
 * @param fourthMm2 at four
 * @param fifthMm2 at five and more
 */
public record BorderTakes(int firstMm2, int secondMm2, int thirdMm2, int fourthMm2, int fifthMm2) {

  /**
   * Makes a table.
   *
   * @param cm2 what is taken at each of the {@link Border#STEPS} steps, cm2
   * @return the table, to the square millimetre
   */
  public static BorderTakes ofCm2(double... cm2) {
    if (cm2.length != Border.STEPS) {
      throw new IllegalArgumentException(
          "cm2 must have " + Border.STEPS + " steps, got " + cm2.length);
    }
    return new BorderTakes(mm2(cm2[0]), mm2(cm2[1]), mm2(cm2[2]), mm2(cm2[3]), mm2(cm2[4]));
  }

  private static int mm2(double cm2) {
    return (int) Math.round(100 * cm2);
  }

  /**
   * Returns what is taken at a step.
   *
   * @param step 0 to {@link Border#STEPS}
   * @return cm2
   */
  public double cm2(int step) {
    int mm2 =
        switch (step) {
          case 0 -> 0;
          case 1 -> firstMm2;
          case 2 -> secondMm2;
          case 3 -> thirdMm2;
          case 4 -> fourthMm2;
          case 5 -> fifthMm2;
          default -> throw new IllegalArgumentException("step must be 0 to 5, got " + step);
        };
    return mm2 / 100.0;
  }

  /** Returns what is taken between two steps, linear; past the last no more. */
  double between(double steps) {
    int whole = (int) Math.min(Border.STEPS - 1.0, Math.floor(steps));
    double part = Math.min(1, steps - whole);
    return cm2(whole) + part * (cm2(whole + 1) - cm2(whole));
  }
}
