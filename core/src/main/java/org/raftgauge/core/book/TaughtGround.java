// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;

/**
 * How a taught colour model looks at open ground: a network with one hidden layer of rectified
 * units. Each term, less its middle and divided by its spread, is kept within {@link #MOST}; unit j
 * gives {@code h_j = max(0, w_j . z + c_j)}, and the log odds of leaf are {@code v . h + d}.
 *
 * @param middle of each of the {@link #TERMS} terms
 * @param spread of each, above 0
 * @param units for each unit its weights of the terms and last its constant
 * @param output weights of the units and last a constant
 */
public record TaughtGround(
    List<Double> middle, List<Double> spread, List<List<Double>> units, List<Double> output) {
  /** Number of terms that are weighed at a pixel. */
  public static final int TERMS = 37;

  /** Terms further than so many spreads from their middle count as so far. */
  public static final double MOST = 4;

  /** Copies the lists. */
  public TaughtGround {
    middle = List.copyOf(middle);
    spread = List.copyOf(spread);
    units = units.stream().map(List::copyOf).toList();
    output = List.copyOf(output);
    if (middle.size() != TERMS || spread.size() != TERMS) {
      throw new IllegalArgumentException("middle and spread must hold " + TERMS + " numbers each");
    }
    if (spread.stream().anyMatch(s -> !(s > 0))) {
      throw new IllegalArgumentException("spread must be above 0, got " + spread);
    }
    if (units.isEmpty() || units.stream().anyMatch(u -> u.size() != TERMS + 1)) {
      throw new IllegalArgumentException("each unit must have " + (TERMS + 1) + " numbers");
    }
    if (output.size() != units.size() + 1) {
      throw new IllegalArgumentException("output must have a number a unit and one more");
    }
  }
}
