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
    AllotCanopy coarse = AllotCanopy.coarse(ground, canopy);
    double[] first = heights(coarse);
    short[] owner = allot.allot(first, coarse.speeds(first));
    new BareHoles(ground, canopy).clear(owner);
    spreadEdges(owner);
    Borders borders = Borders.of(canopy.width(), canopy.height(), owner, n);
    double[] seen = seenCm2(owner, 1);
    SiteHeights.OfSite[] heights = new SiteHeights(ground, canopy).of(owner, seen);
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

  /** Returns the mean heights of plants that are allotted coarsely, as if they were flat. */
  private double[] heights(AllotCanopy coarse) {
    short[] owner = coarse.allot(new double[ground.sites().size()]);
    double[] seen = seenCm2(owner, coarse.parts());
    short[] fine = ground.relief().isPresent() ? finer(owner, coarse.parts()) : owner;
    SiteHeights.OfSite[] heights = new SiteHeights(ground, canopy).of(fine, seen);
    return Arrays.stream(heights).mapToDouble(SiteHeights.OfSite::meanMm).toArray();
  }

  /** Returns the owners of pixels, from those of squares of some pixels each way. */
  private short[] finer(short[] owner, int parts) {
    short[] fine = new short[canopy.width() * canopy.height()];
    int across = canopy.width() / parts;
    for (int i = 0; i < fine.length; i++) {
      int x = i % canopy.width() / parts;
      int y = Math.floorDiv(i, canopy.width()) / parts;
      int place = y * across + x;
      fine[i] = x < across && place < owner.length ? owner[place] : AllotCanopy.NONE;
    }
    return fine;
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

  /** Sums each site's canopy; an owner may stand for some pixels each way. */
  private double[] seenCm2(short[] owner, int parts) {
    double[] seen = new double[ground.sites().size()];
    int across = canopy.width() / parts;
    for (int i = 0; i < owner.length; i++) {
      if (owner[i] != AllotCanopy.NONE) {
        seen[owner[i]] += coverage(i % across * parts, i / across * parts, parts);
      }
    }
    return Arrays.stream(seen).map(v -> v / 255 * pixelCm2).toArray();
  }

  private int coverage(int left, int top, int parts) {
    int sum = 0;
    for (int y = top; y < top + parts; y++) {
      for (int x = left; x < left + parts; x++) {
        sum += canopy.coverage()[y * canopy.width() + x] & 0xff;
      }
    }
    return sum;
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
