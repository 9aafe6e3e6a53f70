// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.PriorityQueue;
import org.raftgauge.core.book.PointMm;
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
 */
final class AllotCanopy {
  /** Nobody's. */
  static final short NONE = -1;

  /**
   * Of a plant beyond the deck picture's rim: a neighbour raft's, where boards lie side by side.
   */
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

  private record Step(float cost, int at, short site) implements Comparable<Step> {
    @Override
    public int compareTo(Step other) {
      int by = Float.compare(cost, other.cost);
      return by != 0 ? by : Integer.compare(at, other.at);
    }
  }

  private short[] shortestPaths(double[] speeds) {
    short[] owner = new short[leaf.length];
    Arrays.fill(owner, NONE);
    float[] cost = new float[leaf.length];
    Arrays.fill(cost, Float.MAX_VALUE);
    PriorityQueue<Step> queue = new PriorityQueue<>();
    seed(speeds, cost, queue);
    seedRim(cost, queue);
    while (!queue.isEmpty()) {
      Step step = queue.poll();
      if (owner[step.at] != NONE || step.cost > cost[step.at]) {
        continue;
      }
      owner[step.at] = step.site;
      walk(step, step.site == OUTSIDE ? 1 : speeds[step.site], cost, queue);
    }
    return owner;
  }

  private void seed(double[] speeds, float[] cost, PriorityQueue<Step> queue) {
    double beyondHole = 0.5 * ground.layout().grid().holeMm() / ground.deck().mmPerPx() + 2;
    double reach = Math.max(2, Math.max(beyondHole, SEED_SHARE * ground.pitchPx()));
    for (short s = 0; s < feet.length; s++) {
      for (int y = (int) (feet[s].yPx() - reach); y <= feet[s].yPx() + reach; y++) {
        for (int x = (int) (feet[s].xPx() - reach); x <= feet[s].xPx() + reach; x++) {
          double d = Math.hypot(x - feet[s].xPx(), y - feet[s].yPx());
          if (d > reach || x < 0 || y < 0 || x >= width || y >= height || !leaf[y * width + x]) {
            continue;
          }
          float c = (float) (d / speeds[s]);
          int i = y * width + x;
          if (c < cost[i]) {
            cost[i] = c;
            queue.add(new Step(c, i, s));
          }
        }
      }
    }
  }

  /**
   * Canopy that comes in over the picture's rim grows from beyond it: no plant of this board
   * reaches that far.
   */
  private void seedRim(float[] cost, PriorityQueue<Step> queue) {
    for (int i = 0; i < leaf.length; i++) {
      int x = i % width;
      int y = i / width;
      if (leaf[i] && (x <= 1 || y <= 1 || x >= width - 2 || y >= height - 2)) {
        cost[i] = 0;
        queue.add(new Step(0, i, OUTSIDE));
      }
    }
  }

  private void walk(Step step, double speed, float[] cost, PriorityQueue<Step> queue) {
    int x = step.at % width;
    int y = step.at / width;
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        int nx = x + dx;
        int ny = y + dy;
        if (nx < 0 || ny < 0 || nx >= width || ny >= height || !leaf[ny * width + nx]) {
          continue;
        }
        float c = step.cost + (float) ((dx != 0 && dy != 0 ? Math.sqrt(2) : 1) / speed);
        int i = ny * width + nx;
        if (c < cost[i]) {
          cost[i] = c;
          queue.add(new Step(c, i, step.site));
        }
      }
    }
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
