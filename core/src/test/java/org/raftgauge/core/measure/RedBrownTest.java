// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.site.SiteMeasure;

class RedBrownTest {
  private static List<SiteMeasure> sites(double... dead) {
    List<SiteMeasure> sites = new ArrayList<>();
    for (int s = 0; s < dead.length; s++) {
      SiteMeasure bare = SiteCrops.heldSite(new SiteId(0, s), "");
      sites.add(bare.withColour(List.of(new SiteMeasure.Colour(43, 7, 22, 0, dead[s]))));
    }
    return sites;
  }

  private static double dead(SiteMeasure site) {
    return site.colour().get(0).deadFraction();
  }

  @Test
  void soundRedLeafShowsNoDeadTissueAndADeadPlantDoes() {
    BitSet red = new BitSet();
    red.set(0, 5);
    List<SiteMeasure> settled = RedBrown.settle(sites(0.3, 0.31, 0.29, 0.3, 1, 0.2), red);
    assertEquals(0, dead(settled.get(0)), 1e-12);
    // (0.31 - 0.3) / (1 - 0.3)
    assertEquals(1 / 70.0, dead(settled.get(1)), 1e-12);
    assertEquals(1, dead(settled.get(4)), 1e-12);
    assertEquals(0.2, dead(settled.get(5)), 1e-12, "green leaf is left as it is");
  }

  @Test
  void twoPlantsHaveNoUsualShare() {
    BitSet red = new BitSet();
    red.set(0, 2);
    List<SiteMeasure> two = sites(0.3, 0.4);
    assertSame(two, RedBrown.settle(two, red));
  }
}
