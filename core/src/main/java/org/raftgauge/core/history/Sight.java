// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import org.raftgauge.core.site.SiteMeasure;

/**
 * A plant on one evening.
 *
 * @param evening the farm's day
 * @param takenAt when the photo was taken
 * @param photo the photo
 * @param station where it was taken; empty where unknown
 * @param raft the raft on which it stood then
 * @param ageDays days on the clock that the plant's series runs on, 0 or more
 * @param measure what the photo said
 */
public record Sight(
    LocalDate evening,
    OffsetDateTime takenAt,
    String photo,
    String station,
    String raft,
    double ageDays,
    SiteMeasure measure) {

  /** Says whether it has an area: not held, and some canopy. */
  public boolean hasArea() {
    return measure.held().isEmpty() && measure.projectedAreaCm2().orElse(0) > 0;
  }

  /** Says whether the site was measured and found bare. */
  public boolean bare() {
    return measure.held().isEmpty()
        && measure.projectedAreaCm2().isPresent()
        && measure.projectedAreaCm2().getAsDouble() == 0;
  }

  /** Returns the area, cm2; 0 where there is none. */
  public double areaCm2() {
    return measure.projectedAreaCm2().orElse(0);
  }

  /** Returns the share of its leaf that is brown, 0..1; 0 where there is none. */
  public double brownFraction() {
    return measure.colour().stream().mapToDouble(colour -> colour.deadFraction()).max().orElse(0);
  }
}
