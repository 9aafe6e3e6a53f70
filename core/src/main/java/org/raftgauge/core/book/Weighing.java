// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A plant weighed by hand.
 *
 * @param line its line in {@code weighings.csv}
 * @param raft the raft it stood on
 * @param site its site
 * @param weighedAt when
 * @param freshWeightG fresh weight, g, above 0
 * @param topHeightMm height of its top over the deck by a ruler, mm, where measured
 * @param state how it was weighed, where said
 */
public record Weighing(
    int line,
    String raft,
    SiteId site,
    OffsetDateTime weighedAt,
    double freshWeightG,
    OptionalDouble topHeightMm,
    Optional<State> state) {

  /** How a plant was weighed. */
  public enum State {
    /** With its roots and plug. */
    WHOLE,
    /** Without roots and waste leaves, as sold. */
    TRIMMED,
    /** Whole, after the water has run off. */
    DRAINED
  }
}
