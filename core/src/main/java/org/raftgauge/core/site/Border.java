// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.List;
import org.raftgauge.core.book.SiteId;

/**
 * Where the canopies of two plants meet: how their sizes were judged when it was drawn, and how
 * much either would take of the other if it were larger. With it a later pass, which knows the
 * plants' sizes better, moves the border without the photo.
 *
 * @param site one of the two
 * @param neighbour the other
 * @param lnRatio ln of the site's radius over its neighbour's, as judged
 * @param takenCm2 area on the deck plane that the site takes from its neighbour when its radius
 *     over the neighbour's grows by {@link #STEP} in ln once, twice and so on; cm2, rising
 * @param givenCm2 the same that the neighbour takes from the site
 */
public record Border(
    SiteId site, SiteId neighbour, double lnRatio, List<Double> takenCm2, List<Double> givenCm2) {
  /** Step of the tables, in ln of the ratio of two radii. */
  public static final double STEP = 0.1;

  /** Steps told; sizes farther off move the border no further. */
  public static final int STEPS = 5;

  /** Copies the lists. */
  public Border {
    takenCm2 = List.copyOf(takenCm2);
    givenCm2 = List.copyOf(givenCm2);
    if (takenCm2.size() != STEPS || givenCm2.size() != STEPS) {
      throw new IllegalArgumentException("a border tells " + STEPS + " steps each way");
    }
  }

  /**
   * Says what changes hands when the sizes are judged otherwise.
   *
   * @param lnRatioNow ln of the site's radius over its neighbour's
   * @return what the site takes from its neighbour, cm2 on the deck plane; negative where it gives
   */
  public double takesCm2(double lnRatioNow) {
    double steps = Math.min(STEPS, Math.abs(lnRatioNow - lnRatio) / STEP);
    return lnRatioNow > lnRatio ? along(takenCm2, steps) : -along(givenCm2, steps);
  }

  private static double along(List<Double> table, double steps) {
    int whole = (int) Math.min(STEPS - 1.0, Math.floor(steps));
    double before = whole == 0 ? 0 : table.get(whole - 1);
    return before + (steps - whole) * (table.get(whole) - before);
  }

  /** Returns the same border between other sites. */
  public Border between(SiteId newSite, SiteId newNeighbour) {
    return new Border(newSite, newNeighbour, lnRatio, takenCm2, givenCm2);
  }
}
