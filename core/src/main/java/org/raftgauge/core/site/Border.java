// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import org.raftgauge.core.book.SiteId;

/**
 * Where the canopies of two plants meet: how their sizes were judged when it was drawn, and how
 * much either would take of the other if it were larger. With it a later pass, which knows the
 * plants' sizes better, moves the border without the photo.
 *
 * @param site one of the two
 * @param neighbour the other
 * @param lnRatio ln of the site's radius over its neighbour's, as judged
 * @param taken what the site takes from its neighbour when its radius over the neighbour's grows
 * @param given what the neighbour takes from the site when that ratio falls
 */
public record Border(
    SiteId site, SiteId neighbour, double lnRatio, BorderTakes taken, BorderTakes given) {
  /** Step of the tables, in ln of the ratio of two radii. */
  public static final double STEP = 0.1;

  /** Steps told; sizes farther off move the border no further. */
  public static final int STEPS = 5;

  /**
   * Says what changes hands when the sizes are judged otherwise.
   *
   * @param lnRatioNow ln of the site's radius over its neighbour's
   * @return what the site takes from its neighbour, cm2 on the deck plane; negative where it gives
   */
  public double takesCm2(double lnRatioNow) {
    double steps = Math.abs(lnRatioNow - lnRatio) / STEP;
    return lnRatioNow > lnRatio ? taken.between(steps) : -given.between(steps);
  }

  /** Returns the same border between other sites. */
  public Border between(SiteId newSite, SiteId newNeighbour) {
    return new Border(newSite, newNeighbour, lnRatio, taken, given);
  }
}
