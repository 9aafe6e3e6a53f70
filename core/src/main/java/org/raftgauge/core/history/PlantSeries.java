// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.LocalDate;
import java.util.List;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;

/**
 * Everything seen of one plant since it began to grow as it does now: since transplanting, or since
 * its last cut, or since sowing.
 *
 * @param plant its id
 * @param planting the planting that it belongs to where it stands now; tells raft, pond and crop
 * @param site its site now
 * @param clock what its ages count from
 * @param since the day counted as 0
 * @param sights what was seen, at most one an evening, in the order of time; at least one
 */
public record PlantSeries(
    String plant,
    Planting planting,
    SiteId site,
    AgeClock clock,
    LocalDate since,
    List<Sight> sights) {

  /** Copies the sights. */
  public PlantSeries {
    if (sights.isEmpty()) {
      throw new IllegalArgumentException("sights must be one or more, got none of " + plant);
    }
    sights = List.copyOf(sights);
  }

  /** What a plant's age counts from. */
  public enum AgeClock {
    /** Days after transplant. */
    TRANSPLANT,
    /** Days after sowing. */
    SOWING,
    /** Days after the last cut. */
    CUT
  }

  /** Returns the last sight. */
  public Sight last() {
    return sights.get(sights.size() - 1);
  }
}
