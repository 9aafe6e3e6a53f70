// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Takes from the share of dead tissue of red leaf what is usual on its board.
 *
 * <p>Where the red of a sound leaf gives way to green it is as brown as a dead one, and no colour
 * tells the two apart. But all plants of a red variety have that much of it: a plant's dead tissue
 * is what it has beyond their median. Where a whole board dies at once this says nothing.
 */
final class RedBrown {
  /** Fewer plants have no usual share. */
  private static final int LEAST = 3;

  private RedBrown() {}

  /**
   * Settles the shares.
   *
   * @param sites all sites of a board
   * @param red the places of those with red leaf
   * @return the sites, in the same order
   */
  static List<SiteMeasure> settle(List<SiteMeasure> sites, BitSet red) {
    double[] shares =
        red.stream()
            .mapToObj(sites::get)
            .flatMap(s -> s.colour().stream())
            .mapToDouble(SiteMeasure.Colour::deadFraction)
            .sorted()
            .toArray();
    if (shares.length < LEAST) {
      return sites;
    }
    double usual = Arrays.stream(shares).skip(shares.length / 2).findFirst().orElse(0);
    List<SiteMeasure> settled = new ArrayList<>();
    for (int s = 0; s < sites.size(); s++) {
      settled.add(red.get(s) ? beyond(sites.get(s), usual) : sites.get(s));
    }
    return settled;
  }

  private static SiteMeasure beyond(SiteMeasure site, double usual) {
    return site.withColour(
        site.colour().stream()
            .map(
                c ->
                    new SiteMeasure.Colour(
                        c.labL(),
                        c.labA(),
                        c.labB(),
                        c.paleFraction(),
                        Math.max(0, c.deadFraction() - usual) / Math.max(1e-9, 1 - usual)))
            .toList());
  }
}
