// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.Set;

/**
 * What a grader may be fitted on.
 *
 * @param openSizes sizes that will be known of every open site when weights are asked for
 * @param closedSizes the same of closed sites
 * @param fewest weighings that a regime needs, at least 8
 */
public record FitRule(Set<Size> openSizes, Set<Size> closedSizes, int fewest) {
  /** Fewer weighings than this tell nothing that could be relied on: the design's bound. */
  public static final int FEWEST = 8;

  /** Copies the sets. */
  public FitRule {
    openSizes = Set.copyOf(openSizes);
    closedSizes = Set.copyOf(closedSizes);
    if (fewest < FEWEST) {
      throw new IllegalArgumentException("fewest must be >= " + FEWEST + ", got " + fewest);
    }
  }

  /**
   * Returns the rule where the height of every closed plant will be measured: area where open;
   * height and the plant's own curve where closed.
   */
  public static FitRule defaults() {
    return new FitRule(Set.of(Size.AREA), Set.of(Size.HEIGHT, Size.CURVE), FEWEST);
  }

  /**
   * Returns the rule of one camera overhead, which tells no heights: area where open; the plant's
   * own curve where closed or, for want of it, the area that the site shows. That is a lower bound
   * which stops growing once the canopy is full; the leave-one-out error says what it is worth.
   */
  public static FitRule oneCamera() {
    return new FitRule(Set.of(Size.AREA), Set.of(Size.AREA, Size.CURVE), FEWEST);
  }

  /**
   * Returns the sizes of a regime.
   *
   * @param regime open or closed
   * @return the sizes that its fit may use
   */
  Set<Size> sizes(Regime regime) {
    return switch (regime) {
      case OPEN -> openSizes;
      case CLOSED -> closedSizes;
    };
  }
}
