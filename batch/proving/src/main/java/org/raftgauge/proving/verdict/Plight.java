// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.verdict;

import java.util.OptionalDouble;

/**
 * What truly befalls a plant.
 *
 * @param kind in one word, such as {@code lags}
 * @param degree how badly, in words; may be empty
 * @param onsetDat from when, days after transplant; absent where nothing does
 * @param stops whether it all but stops growing then, so that any call of it is right from then on
 */
public record Plight(String kind, String degree, OptionalDouble onsetDat, boolean stops) {

  /** Returns the plight of a healthy plant. */
  public static Plight healthy() {
    return new Plight("healthy", "", OptionalDouble.empty(), false);
  }

  /** Says whether it has come by a day. */
  boolean hasCome(double dat) {
    return onsetDat.isPresent() && dat > onsetDat.getAsDouble();
  }
}
