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
  /**
   * Spread of a canopy height that comes from a crop's model: 25 % of it, as the model's own
   * scatter on rendered plants.
   */
  private static final double HEIGHT_SPREAD = 0.25;

  /** Spread of where the outline is put, px, from one photo to the next. */
  private static final double EDGE_PX = 0.15;

  /** Spread of where the border between two plants is put, mm. */
  private static final double SPLIT_MM = 4;

  private final Ground ground;
  private final Canopy canopy;
  private final short[] owner;
  private final double mmPerPx;

  /**
   * What is known of a site before its shape.
   *
   * @param seenCm2 its area on the deck plane
   * @param heightMm its mean canopy height
   * @param shared share of its outline that touches neighbours
   */
  record Seen(double seenCm2, double heightMm, double shared) {}

  OneSite(Ground ground, Canopy canopy, short[] owner) {
    this.ground = ground;
    this.canopy = canopy;
    this.owner = owner;
    this.mmPerPx = ground.deck().mmPerPx();
  }

  SiteMeasure measure(int site, Seen seen) {
    double factor = Parallax.factor(seen.heightMm, ground.pose().heightMm());
    double area = seen.seenCm2 * factor;
    boolean closed = seen.shared > ground.closedOutline().get(site);
    int[] box = box(site);
    List<List<PointPx>> outlines = box.length == 0 ? List.of() : outlines(site, box);
    if (outlines.isEmpty()) {
      return new SiteMeasure(
          ground.sites().get(site),
          OptionalDouble.of(area),
          OptionalDouble.of(0.5 * mmPerPx * mmPerPx / 100),
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
    double se = standardError(area, seen, shape.perimeterPx() * mmPerPx);
    return new SiteMeasure(
        ground.sites().get(site),
        OptionalDouble.of(area),
        OptionalDouble.of(se),
        OptionalDouble.of(area),
        closed,
        seen.shared,
        seen.heightMm,
        factor,
        List.of(shapeOf(site, shape, new Scale(area, Math.sqrt(factor)), seen)),
        List.of(new SiteColour(ground.deck(), canopy).of(site, owner, box)),
        quality(se, area),
        "");
  }

  private static double quality(double se, double area) {
    return 1 / (1 + 5 * se / Math.max(area, 1));
  }

  private record Scale(double areaCm2, double length) {}

  private SiteMeasure.Shape shapeOf(int site, ShapeOf shape, Scale scale, Seen seen) {
    double mm = mmPerPx * scale.length;
    PointMm centroid = centroid(site, seen.heightMm);
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

  /** Root of the summed squares of what height, pose, outline and split may do to the area, cm2. */
  private double standardError(double area, Seen seen, double perimeterMm) {
    double h = ground.pose().heightMm();
    double height = area * 2 * HEIGHT_SPREAD * seen.heightMm / (h - seen.heightMm);
    double half =
        Math.hypot(ground.layout().board().widthMm(), ground.layout().board().lengthMm()) / 2;
    double pose = area * 2 * ground.poseErrorMm() / half;
    double edge = perimeterMm * EDGE_PX * mmPerPx / 100;
    double split = perimeterMm * seen.shared * SPLIT_MM / 100;
    return Math.sqrt(height * height + pose * pose + edge * edge + split * split);
  }

  /** Centroid of the canopy, moved back to where it stands. */
  private PointMm centroid(int site, double heightMm) {
    double sx = 0;
    double sy = 0;
    double sum = 0;
    for (int i = 0; i < owner.length; i++) {
      if (owner[i] == site) {
        int w = canopy.coverage()[i] & 0xff;
        sx += (double) w * (i % canopy.width());
        sy += (double) w * Math.floorDiv(i, canopy.width());
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

  /** Left, top, right, bottom of the pixels at least half covered; empty where there is none. */
  private int[] box(int site) {
    int[] box = {Integer.MAX_VALUE, Integer.MAX_VALUE, -1, -1};
    for (int i = 0; i < owner.length; i++) {
      if (owner[i] == site && canopy.coverage()[i] < 0) {
        int x = i % canopy.width();
        int y = i / canopy.width();
        box[0] = Math.min(box[0], x);
        box[1] = Math.min(box[1], y);
        box[2] = Math.max(box[2], x);
        box[3] = Math.max(box[3], y);
      }
    }
    return box[2] < 0 ? new int[0] : box;
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
