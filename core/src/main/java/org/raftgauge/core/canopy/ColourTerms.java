// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.List;
import org.raftgauge.core.book.TaughtColour;

/**
 * The terms that a taught colour model weighs: all products of up to three of the coordinates
 * ln(G/R), ln(G/B) and ln G of evened light, each brought to -1..1 within the range that was
 * taught; beyond that range the model says what it says at its rim.
 */
public final class ColourTerms {
  private final double[] least = new double[3];
  private final double[] span = new double[3];

  /**
   * Sets up the terms of a range.
   *
   * @param least of each coordinate
   * @param most of each coordinate, over the least
   */
  public ColourTerms(List<Double> least, List<Double> most) {
    for (int i = 0; i < 3; i++) {
      this.least[i] = least.get(i);
      this.span[i] = most.get(i) - least.get(i);
      if (!(span[i] > 0)) {
        throw new IllegalArgumentException("most must be over least, got " + most + ", " + least);
      }
    }
  }

  /**
   * Returns the coordinates of a colour.
   *
   * @param rgb evened linear light, 1 is white
   * @return ln(G/R), ln(G/B), ln G, each with a floor of 1.2 % of white
   */
  public static double[] coordinates(float[] rgb) {
    double g = Math.log(Math.max(0, rgb[1]) + LeafRule.FLOOR);
    return new double[] {
      g - Math.log(Math.max(0, rgb[0]) + LeafRule.FLOOR),
      g - Math.log(Math.max(0, rgb[2]) + LeafRule.FLOOR),
      g
    };
  }

  /**
   * Writes the terms of a colour.
   *
   * @param coordinates of the colour
   * @param terms receives {@link TaughtColour#COLOUR_TERMS} terms, the first is 1
   */
  public void write(double[] coordinates, double[] terms) {
    double[] z = new double[3];
    for (int i = 0; i < 3; i++) {
      z[i] = Math.max(-1, Math.min(1, 2 * (coordinates[i] - least[i]) / span[i] - 1));
    }
    int at = 0;
    terms[at++] = 1;
    for (int i = 0; i < 3; i++) {
      terms[at++] = z[i];
      for (int j = i; j < 3; j++) {
        terms[at++] = z[i] * z[j];
        for (int k = j; k < 3; k++) {
          terms[at++] = z[i] * z[j] * z[k];
        }
      }
    }
  }
}
