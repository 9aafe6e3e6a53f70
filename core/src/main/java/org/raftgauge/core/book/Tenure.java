// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.util.Optional;

/**
 * How long a planting stands on a raft, with the events taken into account.
 *
 * @param planting the planting as it stands there: raft, layout and sites are those of this raft,
 *     crop, variety, lot and days those of its plants
 * @param from when its first plant came
 * @param to when its last plant left, where it has
 */
public record Tenure(Planting planting, Instant from, Optional<Instant> to) {

  /** Returns the raft. */
  public String raft() {
    return planting.raft();
  }

  /**
   * Says whether it stands there at an instant.
   *
   * @param instant any
   * @return true from {@code from} until just before {@code to}
   */
  public boolean holdsAt(Instant instant) {
    return !instant.isBefore(from) && to.map(instant::isBefore).orElse(true);
  }

  boolean overlaps(Instant begin, Instant end) {
    return from.isBefore(end) && to.map(begin::isBefore).orElse(true);
  }
}
