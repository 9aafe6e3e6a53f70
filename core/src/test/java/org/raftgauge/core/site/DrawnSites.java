// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.List;
import org.raftgauge.core.canopy.KnownCanopy;

/** Sites of drawn canopy whose measures are known. */
final class DrawnSites {

  private DrawnSites() {}

  /**
   * The middle two of four sites, with blocks of 41 px in width over their feet: a pitch of 41 px
   * makes them touch.
   */
  static List<SiteMeasure> blocks(int pitch, int height) {
    int w = 4 * pitch;
    int h = 141;
    byte[] coverage = new byte[w * h];
    for (int i = 0; i < coverage.length; i++) {
      int x = i % w;
      boolean middle = x >= pitch && x < 3 * pitch;
      int fromFoot = Math.abs(x % pitch - (pitch - 1) / 2);
      int fromRow = Math.abs(Math.floorDiv(i, w) - 70);
      coverage[i] = middle && fromFoot <= 20 && 2 * fromRow < height ? (byte) 255 : 0;
    }
    Ground ground = Grounds.row(w, h, pitch, 2);
    return MeasureSites.of(ground, KnownCanopy.of(w, h, coverage)).sites().subList(1, 3);
  }

  static SiteMeasure disc(double[] disc, Ground ground) {
    int width = ground.deck().image().width();
    int height = ground.deck().image().height();
    byte[] coverage = KnownCanopy.discs(width, height, disc);
    return MeasureSites.of(ground, KnownCanopy.of(width, height, coverage)).sites().get(0);
  }

  static double area(SiteMeasure site) {
    return site.projectedAreaCm2().orElseThrow();
  }

  static double se(SiteMeasure site) {
    return site.projectedAreaSeCm2().orElseThrow();
  }
}
