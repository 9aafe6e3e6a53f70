// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;
import java.util.Optional;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.relief.HeightMap;

/**
 * How high each plant stands: as a height map shows it where enough of the plant was seen, else by
 * its crop's model.
 */
final class SiteHeights {
  /** A plant of which less was seen is not measured by what was: its rest may stand otherwise. */
  private static final double LEAST_SEEN = 0.5;

  /** Fewer pixels than this are no plant's height. */
  private static final int LEAST_PIXELS = 30;

  /** A top reaching past this share of the camera's height is a mismatch. */
  private static final double TALLEST = 0.5;

  private final Ground ground;
  private final Canopy canopy;

  /**
   * A plant's height.
   *
   * @param meanMm mean height of its top surface, mm
   * @param factor what its area on the deck plane is multiplied by to take the height out
   * @param relief what a height map says of it, where it is from one
   */
  record OfSite(double meanMm, double factor, Optional<Seen> relief) {}

  /**
   * What a height map says of a plant.
   *
   * @param p95Mm height that 5 % of its top surface reach over, mm
   * @param seenFraction share of the plant whose height was seen
   */
  record Seen(double p95Mm, double seenFraction) {}

  SiteHeights(Ground ground, Canopy canopy) {
    this.ground = ground;
    this.canopy = canopy;
  }

  /** Returns the height of each site's plant. */
  OfSite[] of(short[] owner, double[] seenCm2) {
    double cameraMm = ground.pose().heightMm();
    OfSite[] heights = new OfSite[seenCm2.length];
    for (int s = 0; s < heights.length; s++) {
      HeightModel model = ground.heights().get(s);
      double height = Parallax.heightMm(seenCm2[s], model, cameraMm);
      heights[s] = new OfSite(height, Parallax.factor(height, cameraMm), Optional.empty());
    }
    ground.relief().ifPresent(map -> seen(map, owner, heights));
    return heights;
  }

  private void seen(HeightMap map, short[] owner, OfSite[] heights) {
    int[] pixels = new int[heights.length];
    for (int i = 0; i < owner.length; i++) {
      pixels[place(owner, i)] += leaf(owner, i) ? 1 : 0;
    }
    double[][] mm = new double[heights.length][];
    for (int s = 0; s < mm.length; s++) {
      mm[s] = new double[pixels[s]];
    }
    int[] n = new int[mm.length];
    double most = TALLEST * ground.pose().heightMm();
    for (int i = 0; i < owner.length; i++) {
      if (leaf(owner, i) && map.seen(i) && map.mm(i) < most) {
        mm[owner[i]][n[owner[i]]++] = Math.max(0, map.mm(i));
      }
    }
    for (int s = 0; s < mm.length; s++) {
      if (n[s] >= LEAST_PIXELS && n[s] >= LEAST_SEEN * pixels[s]) {
        heights[s] = ofPixels(Arrays.copyOf(mm[s], n[s]), (double) n[s] / pixels[s]);
      }
    }
  }

  private boolean leaf(short[] owner, int i) {
    return owner[i] >= 0 && canopy.coverage()[i] < 0; // 128 and more
  }

  private static int place(short[] owner, int i) {
    return Math.max(0, owner[i]);
  }

  /** Each pixel stands for less deck the higher it lies; the mean is over the deck covered. */
  private OfSite ofPixels(double[] mm, double seenFraction) {
    double cameraMm = ground.pose().heightMm();
    double deck = 0;
    double volume = 0;
    for (double h : mm) {
      double factor = Parallax.factor(h, cameraMm);
      deck += factor;
      volume += factor * h;
    }
    Arrays.sort(mm);
    double p95 = mm[(int) Math.min(mm.length - 1.0, Math.floor(0.95 * mm.length))];
    return new OfSite(volume / deck, deck / mm.length, Optional.of(new Seen(p95, seenFraction)));
  }
}
