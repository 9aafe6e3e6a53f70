// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.pixels.PointPx;

/** Allots a board's canopy to its sites and measures each. */
public final class MeasureSites {
  private final Ground ground;
  private final Canopy canopy;
  private final double pixelCm2;

  private MeasureSites(Ground ground, Canopy canopy) {
    this.ground = ground;
    this.canopy = canopy;
    double mm = ground.deck().mmPerPx();
    this.pixelCm2 = mm * mm / 100;
  }

  /**
   * Measures the sites.
   *
   * @param ground what it stands on
   * @param canopy the canopy of the same deck picture
   * @return the measures
   */
  public static SiteCanopy of(Ground ground, Canopy canopy) {
    return new MeasureSites(ground, canopy).measure();
  }

  private SiteCanopy measure() {
    int n = ground.sites().size();
    AllotCanopy allot = new AllotCanopy(ground, canopy);
    short[] owner = allot.allot(means(heights(allot.allot(new double[n]))));
    new BareHoles(ground, canopy).clear(owner);
    spreadEdges(owner);
    SiteHeights.OfSite[] heights = heights(owner);
    Borders borders = Borders.of(canopy.width(), canopy.height(), owner, n);
    double[] seen = seenCm2(owner);
    OneSite one = new OneSite(ground, canopy, owner);
    List<SiteMeasure> sites = new ArrayList<>();
    List<PointMm> centres = new ArrayList<>();
    for (int s = 0; s < n; s++) {
      sites.add(one.measure(s, new OneSite.Seen(seen[s], heights[s], borders.sharedFraction(s))));
      PointPx foot = allot.feet()[s];
      centres.add(ground.deck().toMm(foot));
    }
    return new SiteCanopy(sites, owner, coverAndLeftover(owner), centres);
  }

  private SiteHeights.OfSite[] heights(short[] owner) {
    return new SiteHeights(ground, canopy).of(owner, seenCm2(owner));
  }

  private static double[] means(SiteHeights.OfSite[] heights) {
    return Arrays.stream(heights).mapToDouble(SiteHeights.OfSite::meanMm).toArray();
  }

  /** Gives mixed pixels outside the half-covered outline to the site they touch. */
  private void spreadEdges(short[] owner) {
    int width = canopy.width();
    int height = canopy.height();
    for (int round = 0; round < 2; round++) {
      short[] before = owner.clone();
      for (int y = 1; y < height - 1; y++) {
        for (int x = 1; x < width - 1; x++) {
          int i = y * width + x;
          if (before[i] != AllotCanopy.NONE || canopy.coverage()[i] <= 0) {
            continue; // owned, half covered and nobody's, or bare
          }
          short best = AllotCanopy.NONE;
          for (int k = 0; k < 9 && best == AllotCanopy.NONE; k++) {
            best = before[(y + k % 3 - 1) * width + x + 0 + Math.floorDiv(k, 3) - 1];
          }
          owner[i] = best;
        }
      }
    }
  }

  private double[] seenCm2(short[] owner) {
    double[] seen = new double[ground.sites().size()];
    for (int i = 0; i < owner.length; i++) {
      if (owner[i] != AllotCanopy.NONE) {
        seen[owner[i]] += canopy.coverage()[i] & 0xff;
      }
    }
    return Arrays.stream(seen).map(v -> v / 255 * pixelCm2).toArray();
  }

  private double[] coverAndLeftover(short[] owner) {
    double inside = 0;
    double left = 0;
    for (int y = 0; y < canopy.height(); y++) {
      for (int x = 0; x < canopy.width(); x++) {
        int i = y * canopy.width() + x;
        int value = canopy.coverage()[i] & 0xff;
        if (value > 0 && onBoard(ground.deck().toMm(new PointPx(x, y)))) {
          inside += value;
          left += owner[i] == AllotCanopy.NONE ? value : 0;
        }
      }
    }
    double board = ground.layout().board().widthMm() * ground.layout().board().lengthMm() / 100;
    return new double[] {Math.min(1, inside / 255 * pixelCm2 / board), left / 255 * pixelCm2};
  }

  private boolean onBoard(PointMm p) {
    return p.xMm() >= 0
        && p.yMm() >= 0
        && p.xMm() <= ground.layout().board().widthMm()
        && p.yMm() <= ground.layout().board().lengthMm();
  }
}
