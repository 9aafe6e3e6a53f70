// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.raftgauge.core.book.Board;
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
    short[] owner = allot.allot(heights(allot.coarse()));
    SiteColour colour = new SiteColour(ground.deck(), canopy);
    new BareHoles(ground, canopy, colour).clear(owner);
    List<Border> meeting = allot.borders(owner);
    spreadEdges(owner);
    Borders borders = Borders.of(canopy.width(), canopy.height(), owner, n);
    double[] seen = seenCm2(owner, 1);
    SiteHeights.OfSite[] heights = new SiteHeights(ground, canopy).of(owner, seen);
    double usual = usualCm2(seen, heights);
    OneSite one = new OneSite(ground, canopy, colour, owner);
    List<SiteMeasure> sites = new ArrayList<>();
    List<PointMm> centres = new ArrayList<>();
    for (int s = 0; s < n; s++) {
      sites.add(
          one.measure(s, new OneSite.Seen(seen[s], heights[s], borders.sharedFraction(s), usual)));
      PointPx foot = allot.feet()[s];
      centres.add(ground.deck().toMm(foot));
    }
    return new SiteCanopy(sites, meeting, owner, coverAndLeftover(owner), centres);
  }

  /** Returns the median area of the plants, 0 without any. */
  private static double usualCm2(double[] seen, SiteHeights.OfSite[] heights) {
    double[] plants =
        IntStream.range(0, seen.length)
            .filter(s -> seen[s] > 0)
            .mapToDouble(s -> seen[s] * heights[s].factor())
            .sorted()
            .toArray();
    return plants.length == 0 ? 0 : plants[Math.floorDiv(plants.length, 2)];
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
    byte[] coverage = canopy.coverage();
    for (int round = 0; round < 2; round++) {
      short[] before = owner.clone();
      for (int y = 1; y < canopy.height() - 1; y++) {
        for (int i = y * width + 1; i < (y + 1) * width - 1; i++) {
          if (coverage[i] <= 0 || before[i] != AllotCanopy.NONE) {
            continue; // bare, half covered and nobody's, or owned
          }
          short best = AllotCanopy.NONE;
          for (int k = 0; k < 9 && best == AllotCanopy.NONE; k++) {
            best = before[i + (k % 3 - 1) * width + Math.floorDiv(k, 3) - 1];
          }
          owner[i] = best;
        }
      }
    }
  }

  /** Sums each site's canopy; an owner may stand for some pixels each way. */
  private double[] seenCm2(short[] owner, int parts) {
    long[] seen = new long[ground.sites().size()];
    byte[] coverage = canopy.coverage();
    int across = canopy.width() / parts;
    for (int y = 0; y < canopy.height() / parts * parts; y++) {
      int row = y / parts * across;
      for (int x = 0, i = y * canopy.width(); x < across * parts; x++, i++) {
        if (coverage[i] != 0) {
          short site = owner[row + x / parts];
          if (site != AllotCanopy.NONE) {
            seen[site] += coverage[i] & 0xff;
          }
        }
      }
    }
    return Arrays.stream(seen).mapToDouble(v -> v / 255.0 * pixelCm2).toArray();
  }

  private double[] coverAndLeftover(short[] owner) {
    Board board = ground.layout().board();
    PointPx from = ground.deck().toPx(new PointMm(0, 0));
    PointPx to = ground.deck().toPx(new PointMm(board.widthMm(), board.lengthMm()));
    byte[] coverage = canopy.coverage();
    long inside = 0;
    long left = 0;
    for (int y = first(from.yPx()); y <= last(to.yPx(), canopy.height()); y++) {
      int row = y * canopy.width();
      for (int x = first(from.xPx()); x <= last(to.xPx(), canopy.width()); x++) {
        int value = coverage[row + x] & 0xff;
        inside += value;
        left += owner[row + x] == AllotCanopy.NONE ? value : 0;
      }
    }
    double boardCm2 = board.widthMm() * board.lengthMm() / 100;
    return new double[] {
      Math.min(1, inside / 255.0 * pixelCm2 / boardCm2), left / 255.0 * pixelCm2
    };
  }

  /** Returns the first pixel at or past a place in the picture. */
  private static int first(double px) {
    return (int) Math.max(0, Math.ceil(px));
  }

  private static int last(double px, int n) {
    return (int) Math.min(n - 1.0, Math.floor(px));
  }
}
