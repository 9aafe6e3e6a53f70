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

  /** Share of its leaf from which on a plant is brown as a whole: a working value. */
  public static final double BROWN_FRACTION = 0.5;

  /**
   * A plant that was brown stays so until less than this share is. Brown leaf does not turn green
   * again, but a photo's light, and leaf of neighbours over it, hide some of it: a working value.
   */
  private static final double GREEN_AGAIN = 0.25;

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

  /**
   * Says whether the plant is brown as a whole: half of its leaf was on some evening, and on none
   * since then was less than a quarter. Evenings on which it is held or bare do not count.
   */
  public boolean brown() {
    boolean brown = false;
    for (Sight sight : sights) {
      if (sight.hasArea() && !sight.measure().colour().isEmpty()) {
        brown = sight.brownFraction() >= (brown ? GREEN_AGAIN : BROWN_FRACTION);
      }
    }
    return brown;
  }
}
