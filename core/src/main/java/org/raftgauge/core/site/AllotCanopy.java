// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * Gives canopy pixels to sites.
 *
 * <p>A pixel goes along the canopy, not across the deck, to its site: shortest paths start at every
 * site's expected foot and run inside the canopy only, at a speed that goes with the plant's own
 * radius, so that a border between a large and a small plant lies nearer to the small one
 * (multiplicatively weighted geodesic distance; shortest paths by Dijkstra 1959). Canopy that no
 * path reaches belongs to the nearest plant if it lies within that plant's reach, as a leaf behind
 * a shadow does, and to nobody otherwise.
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

  private final Ground ground;
  private final int width;
  private final int height;
  private final boolean[] leaf;
  private final PointPx[] feet;

  AllotCanopy(Ground ground, Canopy canopy) {
    this.ground = ground;
    this.width = canopy.width();
    this.height = canopy.height();
    this.leaf = new boolean[width * height];
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] = canopy.coverage()[i] < 0; // 128 and more
    }
    this.feet = new PointPx[ground.sites().size()];
  }

  /**
   * Allots the canopy.
   *
   * @param heightsMm expected mean height of each plant, mm
   * @return the site's place in order for each pixel, or {@link #NONE}
   */
  short[] allot(double[] heightsMm) {
    List<SiteId> sites = ground.sites();
    for (int s = 0; s < feet.length; s++) {
      PointMm centre = ground.layout().grid().centre(sites.get(s));
      feet[s] = ground.deck().toPx(Parallax.seenAt(centre, heightsMm[s], ground.pose()));
    }
    double[] equal = new double[feet.length];
    Arrays.fill(equal, 1);
    short[] first = shortestPaths(equal);
    short[] owner =
        shortestPaths(new PlantRadii(width, height, first, feet).speeds(ground.pitchPx()));
    new GiveBack(width, height, feet).overhangs(owner);
    islands(owner);
    for (int i = 0; i < owner.length; i++) {
      owner[i] = owner[i] == OUTSIDE ? NONE : owner[i];
    }
    return owner;
  }

  /** Returns the expected feet in the deck picture, px, as of the last allotment. */
  PointPx[] feet() {
    return feet.clone();
  }

  /** Paths under way: the cheapest known to each pixel, and whose it is. */
  private final class Paths {
    final short[] owner = new short[leaf.length];
    private final float[] cost = new float[leaf.length];
    private final short[] by = new short[leaf.length];
    private final PathQueue queue = new PathQueue();

    Paths() {
      Arrays.fill(owner, NONE);
      Arrays.fill(cost, Float.MAX_VALUE);
    }

    void reach(int at, float c, short site) {
      if (c < cost[at]) {
        cost[at] = c;
        by[at] = site;
        queue.add(c, at);
      }
    }

    void run(double[] speeds) {
      while (!queue.isEmpty()) {
        long step = queue.poll();
        int at = PathQueue.at(step);
        float c = PathQueue.cost(step);
        if (owner[at] == NONE && c <= cost[at]) {
          owner[at] = by[at];
          walk(at, c, 1 / (by[at] == OUTSIDE ? 1 : speeds[by[at]]));
        }
      }
    }

    private void walk(int at, float c, double pace) {
      int x = at % width;
      int y = at / width;
      double diagonal = pace * Math.sqrt(2);
      for (int ny = Math.max(0, y - 1); ny <= Math.min(height - 1, y + 1); ny++) {
        for (int nx = Math.max(0, x - 1); nx <= Math.min(width - 1, x + 1); nx++) {
          int i = ny * width + nx;
          if (leaf[i] && owner[i] == NONE) {
            reach(i, c + (float) (nx != x && ny != y ? diagonal : pace), by[at]);
          }
        }
      }
    }
  }

  private short[] shortestPaths(double[] speeds) {
    Paths paths = new Paths();
    seed(speeds, paths);
    seedRim(paths);
    paths.run(speeds);
    return paths.owner;
  }

  private void seed(double[] speeds, Paths paths) {
    double beyondHole = 0.5 * ground.layout().grid().holeMm() / ground.deck().mmPerPx() + 2;
    double reach = Math.max(2, Math.max(beyondHole, SEED_SHARE * ground.pitchPx()));
    for (short s = 0; s < feet.length; s++) {
      for (int y = (int) (feet[s].yPx() - reach); y <= feet[s].yPx() + reach; y++) {
        for (int x = (int) (feet[s].xPx() - reach); x <= feet[s].xPx() + reach; x++) {
          double d = Math.hypot(x - feet[s].xPx(), y - feet[s].yPx());
          if (d <= reach && x >= 0 && y >= 0 && x < width && y < height && leaf[y * width + x]) {
            paths.reach(y * width + x, (float) (d / speeds[s]), s);
          }
        }
      }
    }
  }

  /**
   * Canopy that comes in over the picture's rim grows from beyond it: no plant of this board
   * reaches that far.
   */
  private void seedRim(Paths paths) {
    SiteGrid grid = ground.layout().grid();
    float beside = beyondRimPx(grid.firstXMm());
    float above = beyondRimPx(grid.firstYMm());
    for (int i = 0; i < leaf.length; i++) {
      int x = i % width;
      int y = i / width;
      if (leaf[i] && (x <= 1 || x >= width - 2)) {
        paths.reach(i, beside, OUTSIDE);
      } else if (leaf[i] && (y <= 1 || y >= height - 2)) {
        paths.reach(i, above, OUTSIDE);
      }
    }
  }

  /** A board beside this one has its first plants as far from its edge; px beyond the rim. */
  private float beyondRimPx(double firstMm) {
    DeckImage deck = ground.deck();
    return (float) Math.max(0, (firstMm - deck.marginMm()) / deck.mmPerPx());
  }

  /** Gives islands that lie within a plant's reach to the nearest one. */
  private void islands(short[] owner) {
    boolean[] done = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      if (leaf[i] && owner[i] == NONE && !done[i]) {
        int[] island = island(i, owner, done);
        short to = nearest(island);
        if (to != NONE) {
          for (int p : island) {
            owner[p] = to;
          }
        }
      }
    }
  }

  private int[] island(int start, short[] owner, boolean[] done) {
    Deque<Integer> open = new ArrayDeque<>();
    open.add(start);
    done[start] = true;
    int[] found = new int[64];
    int n = 0;
    while (!open.isEmpty()) {
      int at = open.poll();
      if (n == found.length) {
        found = Arrays.copyOf(found, 2 * n);
      }
      found[n++] = at;
      int x = at % width;
      int y = at / width;
      for (int k = 0; k < 9; k++) {
        int nx = x + k % 3 - 1;
        int ny = y + Math.floorDiv(k, 3) - 1;
        int i = ny * width + nx;
        if (nx >= 0
            && ny >= 0
            && nx < width
            && ny < height
            && leaf[i]
            && !done[i]
            && owner[i] == NONE) {
          done[i] = true;
          open.add(i);
        }
      }
    }
    return Arrays.copyOf(found, n);
  }

  private short nearest(int[] island) {
    double cx = 0;
    double cy = 0;
    for (int p : island) {
      cx += p % width;
      cy += Math.floorDiv(p, width);
    }
    PointPx centre = new PointPx(cx / island.length, cy / island.length);
    short best = NONE;
    double bestPx = REACH_SHARE * ground.pitchPx();
    for (short s = 0; s < feet.length; s++) {
      double d = feet[s].distancePx(centre);
      if (d < bestPx) {
        bestPx = d;
        best = s;
      }
    }
    return best;
  }
}
