// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;
import java.util.List;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.pixels.PointPx;

/**
 * Gives canopy pixels to sites.
 *
 * <p>A pixel goes along the canopy, not across the deck, to its site: shortest paths start at every
 * site's expected foot and run inside the canopy only, at a speed that goes with the plant's own
 * radius, so that a border between a large and a small plant lies nearer to the small one
 * (multiplicatively weighted geodesic distance; shortest paths by Dijkstra 1959). Canopy that no
 * path reaches belongs to the nearest plant if it lies within that plant's reach, as a leaf behind
 * a shadow does, and to nobody otherwise.
 *
 * <p>Large plants are walked through on every second pixel each way; all pixels are walked only
 * where that leaves open whose they are: along borders and in what is thinner than two pixels.
 */
final class AllotCanopy {
  /** Nobody's. */
  static final short NONE = -1;

  /** Of a plant beyond the deck picture's rim: a neighbour raft's. */
  static final short OUTSIDE = -2;

  /**
   * Radius of the ground in which a site's plant must show to start paths, as a share of the pitch.
   */
  private static final double SEED_SHARE = 0.13;

  /** An island farther from a plant's expected foot than this share of the pitch is nobody's. */
  private static final double REACH_SHARE = 0.55;

  /** A pitch of fewer coarse pixels than this leaves too little of a plant to allot. */
  private static final double LEAST_PITCH_PX = 60;

  private final Ground ground;
  private final int parts;
  private final int width;
  private final int height;
  private final boolean[] leaf;
  private final PointPx[] feet;
  private final AllotCanopy coarse;
  private double[] speeds;
  private CanopyPaths paths;

  /** Sets up an allotment on all pixels. */
  AllotCanopy(Ground ground, Canopy canopy) {
    this(ground, canopy, 1);
  }

  private AllotCanopy(Ground ground, Canopy canopy, int parts) {
    this.ground = ground;
    this.parts = parts;
    int coarser = (int) Math.max(1, Math.min(2, ground.pitchPx() / LEAST_PITCH_PX));
    this.coarse = parts < coarser ? new AllotCanopy(ground, canopy, coarser) : this;
    this.width = canopy.width() / parts;
    this.height = canopy.height() / parts;
    this.leaf = new boolean[width * height];
    for (int y = 0, i = 0; y < height; y++) {
      // 128 and more is leaf; of a coarse pixel its middle tells.
      int at = (y * parts + parts / 2) * canopy.width() + parts / 2;
      for (int x = 0; x < width; x++, i++, at += parts) {
        leaf[i] = canopy.coverage()[at] < 0;
      }
    }
    this.feet = new PointPx[ground.sites().size()];
  }

  /**
   * Returns the allotment on every second pixel each way, where plants are large enough: it tells
   * sizes well, borders only roughly.
   */
  AllotCanopy coarse() {
    return coarse;
  }

  /** Returns how many pixels of the deck picture, each way, one of the allotment stands for. */
  int parts() {
    return parts;
  }

  private double pitchPx() {
    return ground.pitchPx() / parts;
  }

  private double mmPerPx() {
    return ground.deck().mmPerPx() * parts;
  }

  /** Returns each plant's radius over the usual one's, from an allotment at equal speeds. */
  private double[] speeds() {
    double[] equal = new double[feet.length];
    Arrays.fill(equal, 1);
    return new PlantRadii(width, height, walked(equal).owners(), feet).speeds(pitchPx());
  }

  private void placeFeet(double[] heightsMm) {
    List<SiteId> sites = ground.sites();
    for (int s = 0; s < feet.length; s++) {
      PointMm centre = ground.layout().grid().centre(sites.get(s));
      PointPx foot = ground.deck().toPx(Parallax.seenAt(centre, heightsMm[s], ground.pose()));
      feet[s] = new PointPx((foot.xPx() + 0.5) / parts - 0.5, (foot.yPx() + 0.5) / parts - 0.5);
    }
  }

  /**
   * Allots the canopy.
   *
   * @param heightsMm expected mean height of each plant, mm
   * @return the site's place in order for each pixel, or {@link #NONE}
   */
  short[] allot(double[] heightsMm) {
    placeFeet(heightsMm);
    short[] owner = owners(heightsMm);
    new GiveBack(width, height, feet).overhangs(owner);
    new Islands(leaf, width, feet).give(owner, REACH_SHARE * pitchPx());
    for (int i = 0; i < owner.length; i++) {
      owner[i] = owner[i] == OUTSIDE ? NONE : owner[i];
    }
    return owner;
  }

  /** Where a pixel's whole neighbourhood is one plant's seen coarsely, so is the pixel. */
  private short[] owners(double[] heightsMm) {
    coarse.placeFeet(heightsMm);
    coarse.speeds = coarse.speeds();
    coarse.paths = coarse.walked(coarse.speeds);
    return coarse == this
        ? paths.owners()
        : new FinerPaths(coarse.paths, leaf, width, coarse.speeds).owners();
  }

  /**
   * Tells of the borders that the last allotment drew.
   *
   * @param owner whose each pixel is in the end
   */
  List<Border> borders(short[] owner) {
    short[] seen = new short[coarse.width * coarse.height];
    for (int y = 0, i = 0; y < coarse.height; y++) {
      int at = (y * coarse.parts + coarse.parts / 2) * width + coarse.parts / 2;
      for (int x = 0; x < coarse.width; x++, i++, at += coarse.parts) {
        seen[i] = owner[at];
      }
    }
    double mm = coarse.mmPerPx();
    return new FindBorders(ground.sites(), coarse.speeds, mm * mm / 100).of(coarse.paths, seen);
  }

  /** Returns the expected feet in the deck picture, px, as of the last allotment. */
  PointPx[] feet() {
    return feet.clone();
  }

  private CanopyPaths walked(double[] speeds) {
    CanopyPaths paths = new CanopyPaths(leaf, width, height, speeds);
    seed(speeds, paths);
    seedRim(paths);
    paths.run();
    return paths;
  }

  private void seed(double[] speeds, CanopyPaths paths) {
    double beyondHole = 0.5 * ground.layout().grid().holeMm() / mmPerPx() + 2;
    double reach = Math.max(2, Math.max(beyondHole, SEED_SHARE * pitchPx()));
    for (short s = 0; s < feet.length; s++) {
      for (int y = (int) (feet[s].yPx() - reach); y <= feet[s].yPx() + reach; y++) {
        for (int x = (int) (feet[s].xPx() - reach); x <= feet[s].xPx() + reach; x++) {
          double dx = x - feet[s].xPx();
          double dy = y - feet[s].yPx();
          double d = Math.sqrt(dx * dx + dy * dy);
          if (d <= reach && x >= 0 && y >= 0 && x < width && y < height) {
            paths.start(x, y, (float) (d / speeds[s]), s);
          }
        }
      }
    }
  }

  /**
   * Canopy that comes in over the picture's rim grows from beyond it: no plant of this board
   * reaches that far.
   */
  private void seedRim(CanopyPaths paths) {
    SiteGrid grid = ground.layout().grid();
    float beside = beyondRimPx(grid.firstXMm());
    float above = beyondRimPx(grid.firstYMm());
    for (int y = 0; y < height; y++) {
      for (int x : new int[] {0, 1, width - 2, width - 1}) {
        paths.start(x, y, beside, OUTSIDE);
      }
    }
    for (int y : new int[] {0, 1, height - 2, height - 1}) {
      for (int x = 2; x < width - 2; x++) {
        paths.start(x, y, above, OUTSIDE);
      }
    }
  }

  /** A board beside this one has its first plants as far from its edge; px beyond the rim. */
  private float beyondRimPx(double firstMm) {
    return (float) Math.max(0, (firstMm - ground.deck().marginMm()) / mmPerPx());
  }
}
