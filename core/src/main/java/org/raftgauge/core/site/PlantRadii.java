// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;
import org.raftgauge.core.pixels.PointPx;

/** Estimates each plant's radius from the directions in which nothing but deck stops it. */
final class PlantRadii {
  private static final int RAYS = 48;

  /**
   * Fewer free directions than this say little: then the radius of the disc of the same area is
   * taken.
   */
  private static final int LEAST_FREE = 8;

  /**
   * A plant whose upper quarter of free directions reaches this many times as far as the lower one
   * is ragged: many a ray falls between two leaves, and the upper quarter tells its radius (chosen
   * on rendered photos; for compact plants the middle does better).
   */
  private static final double RAGGED = 1.6;

  /** No plant spreads that much slower or faster than the usual one. */
  private static final double LEAST_SPEED = 0.35;

  private static final double MOST_SPEED = 2;

  private final int width;
  private final int height;
  private final short[] owner;
  private final PointPx[] feet;

  PlantRadii(int width, int height, short[] owner, PointPx[] feet) {
    this.width = width;
    this.height = height;
    this.owner = owner;
    this.feet = feet;
  }

  /** Returns each plant's radius over the usual one, within limits; 1 where there is no plant. */
  double[] speeds(double pitchPx) {
    int[] areas = new int[feet.length];
    for (short o : owner) {
      if (o >= 0) {
        areas[o]++;
      }
    }
    double[] radii = new double[feet.length];
    for (short s = 0; s < feet.length; s++) {
      radii[s] = areas[s] == 0 ? 0 : radius(s, areas[s], pitchPx);
    }
    double[] some = Arrays.stream(radii).filter(r -> r > 0).sorted().toArray();
    double usual = some.length == 0 ? 1 : some[some.length / 2];
    double[] speeds = new double[feet.length];
    for (int s = 0; s < feet.length; s++) {
      speeds[s] = radii[s] == 0 ? 1 : Math.max(LEAST_SPEED, Math.min(MOST_SPEED, radii[s] / usual));
    }
    return speeds;
  }

  private double radius(short site, int area, double pitchPx) {
    double[] free = new double[RAYS];
    int n = 0;
    for (int k = 0; k < RAYS; k++) {
      double extent = freeExtent(site, 2 * Math.PI * k / RAYS, pitchPx);
      if (extent > 0) {
        free[n++] = extent;
      }
    }
    double disc = Math.sqrt(area / Math.PI);
    if (n < LEAST_FREE) {
      return disc;
    }
    Arrays.sort(free, 0, n);
    double upper = free[3 * n / 4];
    return upper > RAGGED * free[n / 4] ? upper : free[n / 2];
  }

  /** How far the plant reaches in a direction, px; 0 where another plant lies there. */
  private double freeExtent(short site, double angle, double pitchPx) {
    double dx = Math.cos(angle);
    double dy = Math.sin(angle);
    double last = 0;
    for (double d = 0; d < pitchPx; d += 1) {
      int x = (int) Math.round(feet[site].xPx() + d * dx);
      int y = (int) Math.round(feet[site].yPx() + d * dy);
      if (x < 0 || y < 0 || x >= width || y >= height) {
        return last;
      }
      short o = owner[y * width + x];
      if (o == site) {
        last = d;
      } else if (o != AllotCanopy.NONE) {
        return d < last + 4 ? 0 : last;
      }
    }
    return last;
  }
}
