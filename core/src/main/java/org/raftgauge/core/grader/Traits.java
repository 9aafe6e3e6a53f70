// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.OptionalDouble;

/**
 * What is known of a plant that its weight could be told from.
 *
 * @param variety its variety, may be empty
 * @param areaCm2 projected leaf area, cm2, above 0; absent or a lower bound where closed
 * @param topHeightMm height of its top over the deck, mm, above 0, where measured
 * @param curveAreaCm2 the area that its own growth curve from before closure gives for the day,
 *     cm2, where there is one
 * @param meanHeightMm mean height of its top surface as a second camera saw it, mm, beside a top
 *     height by a ruler
 */
public record Traits(
    String variety,
    OptionalDouble areaCm2,
    OptionalDouble topHeightMm,
    OptionalDouble curveAreaCm2,
    OptionalDouble meanHeightMm) {

  /** Drops sizes that are not above 0: nothing can be told from them. */
  public Traits {
    areaCm2 = aboveZero(areaCm2);
    topHeightMm = aboveZero(topHeightMm);
    curveAreaCm2 = aboveZero(curveAreaCm2);
    meanHeightMm = aboveZero(meanHeightMm);
  }

  /**
   * Describes a plant whose mean height nobody saw.
   *
   * @param variety its variety, may be empty
   * @param areaCm2 projected leaf area, cm2
   * @param topHeightMm height of its top, mm
   * @param curveAreaCm2 area by its own growth curve, cm2
   */
  public Traits(
      String variety,
      OptionalDouble areaCm2,
      OptionalDouble topHeightMm,
      OptionalDouble curveAreaCm2) {
    this(variety, areaCm2, topHeightMm, curveAreaCm2, OptionalDouble.empty());
  }

  /**
   * Returns the same plant with another height of its top.
   *
   * @param topMm mm, where measured
   * @return the traits
   */
  Traits withTop(OptionalDouble topMm) {
    return new Traits(variety, areaCm2, topMm, curveAreaCm2, meanHeightMm);
  }

  /**
   * Describes a plant by its area alone.
   *
   * @param variety its variety, may be empty
   * @param areaCm2 projected leaf area, cm2
   * @return the traits
   */
  public static Traits ofArea(String variety, double areaCm2) {
    return new Traits(
        variety, OptionalDouble.of(areaCm2), OptionalDouble.empty(), OptionalDouble.empty());
  }

  private static OptionalDouble aboveZero(OptionalDouble size) {
    return size.isPresent() && size.getAsDouble() > 0 ? size : OptionalDouble.empty();
  }
}
