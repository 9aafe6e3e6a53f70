// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A colour model taught from labelled pictures, as its file in {@code colour/} says it: a softmax
 * regression on cubic terms of colour, and where pictures of open ground taught it, how it looks at
 * such ground.
 *
 * @param name as crops name it
 * @param least least of each coordinate of colour that was seen: ln(G/R), ln(G/B), ln G
 * @param most most of each
 * @param weights for each tissue that was taught, {@link #COLOUR_TERMS} weights
 * @param ground how it looks at open ground, if it knows any
 */
public record TaughtColour(
    String name,
    List<Double> least,
    List<Double> most,
    Map<Tissue, List<Double>> weights,
    Optional<TaughtGround> ground) {
  /** Number of cubic terms in three coordinates. */
  public static final int COLOUR_TERMS = 20;

  /** Copies the parts; the tissues in their own order, so that equal models print alike. */
  public TaughtColour {
    least = List.copyOf(least);
    most = List.copyOf(most);
    EnumMap<Tissue, List<Double>> sorted = new EnumMap<>(Tissue.class);
    weights.forEach((tissue, w) -> sorted.put(tissue, List.copyOf(w)));
    weights = Collections.unmodifiableMap(sorted);
    if (least.size() != 3 || most.size() != 3) {
      throw new IllegalArgumentException("least and most must hold 3 numbers each");
    }
    if (weights.values().stream().anyMatch(w -> w.size() != COLOUR_TERMS)) {
      throw new IllegalArgumentException("each tissue must have " + COLOUR_TERMS + " weights");
    }
  }
}
