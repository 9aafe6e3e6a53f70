// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A colour model taught from labelled pictures, as its file in {@code colour/} says it: a softmax
 * regression on cubic terms of colour, and where pictures of open ground taught it, the weights of
 * the second look at such ground.
 *
 * @param name as crops name it
 * @param least least of each coordinate of colour that was seen: ln(G/R), ln(G/B), ln G
 * @param most most of each
 * @param weights for each tissue that was taught, {@link #COLOUR_TERMS} weights
 * @param ground {@link #GROUND_TERMS} weights, or none
 */
public record TaughtColour(
    String name,
    List<Double> least,
    List<Double> most,
    Map<Tissue, List<Double>> weights,
    List<Double> ground) {
  /** Number of cubic terms in three coordinates. */
  public static final int COLOUR_TERMS = 20;

  /** Number of weights on open ground. */
  public static final int GROUND_TERMS = 14;

  /** Copies the parts; the tissues in their own order, so that equal models print alike. */
  public TaughtColour {
    least = List.copyOf(least);
    most = List.copyOf(most);
    EnumMap<Tissue, List<Double>> sorted = new EnumMap<>(Tissue.class);
    weights.forEach((tissue, w) -> sorted.put(tissue, List.copyOf(w)));
    weights = Collections.unmodifiableMap(sorted);
    ground = List.copyOf(ground);
    if (least.size() != 3 || most.size() != 3) {
      throw new IllegalArgumentException("least and most must hold 3 numbers each");
    }
    if (weights.values().stream().anyMatch(w -> w.size() != COLOUR_TERMS)) {
      throw new IllegalArgumentException("each tissue must have " + COLOUR_TERMS + " weights");
    }
    if (!ground.isEmpty() && ground.size() != GROUND_TERMS) {
      throw new IllegalArgumentException("ground must hold none or " + GROUND_TERMS + " weights");
    }
  }
}
