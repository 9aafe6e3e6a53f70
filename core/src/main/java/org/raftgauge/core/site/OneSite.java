// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.opencv.TraceOutline;
import org.raftgauge.core.pixels.PointPx;

/** Measures one site once its canopy is known. */
final class OneSite {
  /** Bare pixels within this many px of a site's box may be leaf that was missed. */
  private static final int NEAR_PX = 6;

  /** Less than half covered pixels lie at most this far outside the outline, px. */
  private static final int RIM = 2;

  private final Ground ground;
  private final Canopy canopy;
  private final short[] owner;
  private final double mmPerPx;
  private final int[][] boxes;
  private final AreaError error;
  private final SiteColour colour;

  /**
   * What is known of a site before its shape.
   *
   * @param seenCm2 its area on the deck plane
   * @param height how high it stands
   * @param shared share of its outline that touches neighbours
   * @param usualCm2 the usual area of the board's plants, 0 without any
   */
  record Seen(double seenCm2, SiteHeights.OfSite height, double shared, double usualCm2) {

    double heightMm() {
      return height.meanMm();
    }
  }

  OneSite(Ground ground, Canopy canopy, SiteColour colour, short[] owner) {
    this.ground = ground;
    this.canopy = canopy;
    this.colour = colour;
    this.owner = owner;
    this.mmPerPx = ground.deck().mmPerPx();
    this.error = new AreaError(ground, canopy);
    this.boxes = boxes(ground.sites().size(), canopy, owner);
  }

  SiteMeasure measure(int site, Seen seen) {
    double factor = seen.height.factor();
    double area = seen.seenCm2 * factor;
    boolean closed = seen.shared > ground.closedOutline().get(site);
    int[] box = boxes[site];
    List<List<PointPx>> outlines = box[2] < 0 ? List.of() : outlines(site, box);
    if (outlines.isEmpty()) {
      return new SiteMeasure(
          ground.sites().get(site),
          OptionalDouble.of(area),
          OptionalDouble.of(error.ofNothingCm2()),
          OptionalDouble.of(area),
          false,
          0,
          0,
          1,
          List.of(),
          List.of(),
          1,
          "");
    }
    ShapeOf shape = ShapeOf.longest(outlines);
    double se = error.cm2(site, seen, look(site, outlines));
    return new SiteMeasure(
        ground.sites().get(site),
        OptionalDouble.of(area),
        OptionalDouble.of(se),
        OptionalDouble.of(area),
        closed,
        seen.shared,
        seen.heightMm(),
        factor,
        List.of(shapeOf(site, shape, new Scale(area, Math.sqrt(factor)), seen)),
        List.of(colour.of(site, owner, box)),
        quality(se, area),
        "",
        relief(seen, area),
        0);
  }

  private AreaError.Look look(int site, List<List<PointPx>> outlines) {
    int[] box = boxes[site];
    int leaf = 0;
    int bare = 0;
    for (int y = Math.max(0, box[1] - NEAR_PX);
        y <= Math.min(canopy.height() - 1, box[3] + NEAR_PX);
        y++) {
      int row = y * canopy.width();
      int end = row + Math.min(canopy.width(), box[2] + NEAR_PX + 1);
      for (int i = canopy.nextDoubtful(row + Math.max(0, box[0] - NEAR_PX)); i < end; ) {
        boolean covered = canopy.coverage()[i] < 0;
        leaf += covered && owner[i] == site ? 1 : 0;
        bare += !covered && owner[i] == AllotCanopy.NONE ? 1 : 0;
        i = canopy.nextDoubtful(i + 1);
      }
    }
    double pixelCm2 = mmPerPx * mmPerPx / 100;
    return new AreaError.Look(
        ShapeOf.perimeterPx(outlines) * mmPerPx,
        ShapeOf.about(outlines).hullAreaPx() * pixelCm2,
        leaf * pixelCm2,
        bare * pixelCm2);
  }

  private List<SiteMeasure.Relief> relief(Seen seen, double areaCm2) {
    return seen.height.relief().stream()
        .map(
            r ->
                new SiteMeasure.Relief(
                    ground.relief().orElseThrow().source(),
                    r.p95Mm(),
                    areaCm2 * seen.heightMm() / 10, // cm2 times mm
                    r.seenFraction()))
        .toList();
  }

  private static double quality(double se, double area) {
    return 1 / (1 + 5 * se / Math.max(area, 1));
  }

  private record Scale(double areaCm2, double length) {}

  private SiteMeasure.Shape shapeOf(int site, ShapeOf shape, Scale scale, Seen seen) {
    double mm = mmPerPx * scale.length;
    PointMm centroid = centroid(site, seen.heightMm());
    PointMm centre = ground.layout().grid().centre(ground.sites().get(site));
    double hullCm2 = shape.hullAreaPx() * mm * mm / 100;
    return new SiteMeasure.Shape(
        Math.sqrt(4 * scale.areaCm2 * 100 / Math.PI),
        shape.largestDiameterPx() * mm,
        shape.perimeterPx() * mm,
        Math.min(1, scale.areaCm2 / hullCm2),
        centroid.xMm() - centre.xMm(),
        centroid.yMm() - centre.yMm());
  }

  /** Centroid of the canopy, moved back to where it stands. */
  private PointMm centroid(int site, double heightMm) {
    double sx = 0;
    double sy = 0;
    double sum = 0;
    int[] box = boxes[site];
    for (int y = Math.max(0, box[1] - RIM); y <= Math.min(canopy.height() - 1, box[3] + RIM); y++) {
      for (int x = Math.max(0, box[0] - RIM);
          x <= Math.min(canopy.width() - 1, box[2] + RIM);
          x++) {
        int i = y * canopy.width() + x;
        int w = owner[i] == site ? canopy.coverage()[i] & 0xff : 0;
        sx += (double) w * x;
        sy += (double) w * y;
        sum += w;
      }
    }
    PointMm seen = ground.deck().toMm(new PointPx(sx / sum, sy / sum));
    PointMm foot = ground.pose().foot();
    double shrink = 1 / ground.pose().magnification(heightMm);
    return new PointMm(
        foot.xMm() + (seen.xMm() - foot.xMm()) * shrink,
        foot.yMm() + (seen.yMm() - foot.yMm()) * shrink);
  }

  /** Left, top, right, bottom of each site's pixels that are at least half covered. */
  private static int[][] boxes(int sites, Canopy canopy, short[] owner) {
    int[][] boxes = new int[sites][];
    for (int s = 0; s < sites; s++) {
      boxes[s] = new int[] {canopy.width(), canopy.height(), -1, -1};
    }
    byte[] coverage = canopy.coverage();
    for (int y = 0, i = 0; y < canopy.height(); y++) {
      for (int x = 0; x < canopy.width(); x++, i++) {
        if (owner[i] != AllotCanopy.NONE && coverage[i] < 0) {
          int[] box = boxes[owner[i]];
          box[0] = Math.min(box[0], x);
          box[1] = Math.min(box[1], y);
          box[2] = Math.max(box[2], x);
          box[3] = y;
        }
      }
    }
    return boxes;
  }

  private List<List<PointPx>> outlines(int site, int[] box) {
    int w = box[2] - box[0] + 1;
    int h = box[3] - box[1] + 1;
    byte[] mask = new byte[w * h];
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int i = (y + box[1]) * canopy.width() + x + box[0];
        mask[y * w + x] = owner[i] == site && canopy.coverage()[i] < 0 ? (byte) 255 : 0;
      }
    }
    return TraceOutline.outer(w, h, mask);
  }
}
