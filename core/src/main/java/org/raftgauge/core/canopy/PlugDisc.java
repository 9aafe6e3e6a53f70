// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * Takes from a canopy what is the disc of a plug: moss and algae on it stop at its rim all round.
 *
 * <p>A plug ends where its hole ends, on a circle. Hardly a rosette does: its leaves reach
 * differently far, so that one which fills its hole crosses the rim here and leaves it bare there.
 * A young round head may. So a disc is taken away only where the raft speaks against a plant: the
 * others are many times larger, or nearly all holes show the same, or several while others outgrow.
 */
final class PlugDisc {
  /** Directions that are looked into. */
  private static final int SECTORS = 16;

  /** The circle's radius in radii of the hole as the layout has it; that is often a guess. */
  private static final double LEAST_RADIUS = 0.72;

  private static final double MOST_RADIUS = 1.3;

  /** Radii of a circle differ by less than this share (standard deviation, working value). */
  private static final double ROUND = 0.05;

  /** Up to this many times as uneven a circle, a hole may show its plug. */
  private static final double NEARLY = 1.5;

  /** A pixel reaches this far beyond its centre, from which radii are read, px. */
  private static final double HALF_PX = 0.5;

  /** The outline's place is known to this, px. */
  private static final double OUTLINE_PX = 0.4;

  /** Share of the disc that is covered. */
  private static final double COVERED = 0.3;

  /** The raft's plants cover this many times the area of a plug (working value). */
  private static final double TIMES = 4;

  /** So many discs of one size are plugs where the raft's plants cover this many times as much. */
  private static final int SEVERAL = 3;

  private static final double TIMES_SEVERAL = 2;

  /** Past this many times, a disc that is only nearly round is no plant either (working value). */
  private static final double MANY_TIMES = 10;

  /** Share of holes that show discs where all are plugs (working value). */
  private static final double NEARLY_ALL = 0.8;

  /** Plugs' radii differ by no more than this ratio; those of healthy plants by 20 % and more. */
  private static final double ALIKE = 1.08;

  /** The brightest tenth of a plug outshines its darkest by no more than this (working value). */
  private static final double ONE_THING = 2;

  private final DeckImage deck;
  private final boolean[] leaf;
  private final double holePx;

  private PlugDisc(DeckImage deck, boolean[] leaf, double holePx) {
    this.deck = deck;
    this.leaf = leaf;
    this.holePx = holePx;
  }

  /**
   * Takes plugs away.
   *
   * @param deck the deck picture
   * @param layout its layout
   * @param leaf the canopy, changed in place
   * @param wide the canopy without the thin arcs about plugs
   * @param luminance of each pixel
   * @return sites where a plug may be left, or had leaf on it when it was taken away
   */
  static BitSet drop(
      DeckImage deck, Layout layout, boolean[] leaf, boolean[] wide, float[] luminance) {
    PlugDisc discs = new PlugDisc(deck, wide, layout.grid().holeMm() / deck.mmPerPx());
    List<SiteId> sites = layout.grid().sites();
    PointPx[] holes =
        sites.stream().map(s -> deck.toPx(layout.grid().centre(s))).toArray(PointPx[]::new);
    Found found = discs.find(holes);
    boolean many = discs.others(found.nearly.cardinality(), holes.length) > MANY_TIMES;
    double others = discs.others(found.round.cardinality(), holes.length);
    BitSet plugs = many ? found.nearly : found.plugs(others, holes.length);
    boolean suspect = found.several() || others > TIMES_SEVERAL;
    BitSet doubtful = new BitSet();
    for (int s = 0; s < holes.length; s++) {
      boolean one = found.nearly.get(s) && discs.isOneThing(holes[s], luminance);
      // Plants may stand on moss that fills their holes; discs alike and plain are hardly rosettes.
      doubtful.set(s, plugs.get(s) ? !many && !one : suspect && found.round.get(s) && one);
      if (plugs.get(s)) {
        discs.clear(holes[s], leaf);
      }
    }
    return doubtful;
  }

  /**
   * The holes that show discs.
   *
   * @param round those that are round
   * @param nearly those and the nearly round ones
   * @param alike whether the round ones are of one size
   */
  private record Found(BitSet round, BitSet nearly, boolean alike) {
    boolean several() {
      return alike && round.cardinality() >= SEVERAL;
    }

    /** Returns the discs that are plugs by their number and the size of the other plants. */
    BitSet plugs(double others, int sites) {
      boolean all = alike && round.cardinality() > NEARLY_ALL * sites;
      return others > TIMES || all || (several() && others > TIMES_SEVERAL) ? round : new BitSet();
    }
  }

  private Found find(PointPx[] holes) {
    BitSet round = new BitSet();
    BitSet nearly = new BitSet();
    double least = Double.MAX_VALUE;
    double most = 0;
    for (int s = 0; s < holes.length; s++) {
      Circle circle = circle(holes[s]);
      nearly.set(s, circle.uneven < NEARLY);
      if (circle.uneven < 1) {
        round.set(s);
        least = Math.min(least, circle.radiusPx);
        most = Math.max(most, circle.radiusPx);
      }
    }
    return new Found(round, nearly, most < ALIKE * least);
  }

  /** Says whether what fills a hole is of one brightness. */
  private boolean isOneThing(PointPx hole, float[] luminance) {
    int[] box = box(hole, LEAST_RADIUS * holePx / 2);
    double[] light = new double[(box[2] - box[0] + 1) * (box[3] - box[1] + 1)];
    int n = 0;
    for (int y = box[1]; y <= box[3]; y++) {
      for (int x = box[0]; x <= box[2]; x++) {
        int i = y * deck.image().width() + x;
        if (leaf[i]) {
          light[n++] = luminance[i];
        }
      }
    }
    light = Arrays.copyOf(light, n);
    return n > 0 && Quantile.of(light, 0.9) <= ONE_THING * Quantile.of(light, 0.1);
  }

  /** Says whether a site's canopy ends on a circle about as large as its hole, or nearly so. */
  static boolean nearlyRound(DeckImage deck, double holeMm, boolean[] leaf, PointPx centre) {
    return new PlugDisc(deck, leaf, holeMm / deck.mmPerPx()).circle(centre).uneven < NEARLY;
  }

  /** Returns the mean canopy of the other sites, in plugs; 0 where discs are none or the half. */
  private double others(int found, int sites) {
    if (found == 0 || 2 * found >= sites) {
      return 0;
    }
    int all = 0;
    for (boolean is : leaf) {
      all += is ? 1 : 0;
    }
    double disc = Math.PI / 4 * holePx * holePx;
    return (all - found * disc) / (disc * (sites - found));
  }

  /**
   * The circle that a site's canopy ends on.
   *
   * @param radiusPx its radius
   * @param uneven spread of its radii over what a round one has; infinite where there is no circle
   */
  private record Circle(double radiusPx, double uneven) {
    static final Circle NONE = new Circle(0, Double.POSITIVE_INFINITY);
  }

  private Circle circle(PointPx centre) {
    double radius = holePx / 2;
    double[] sum = new double[3];
    int[] box = box(centre, MOST_RADIUS * radius + 2);
    sum(box, sum);
    if (sum[0] < COVERED * Math.PI * radius * radius * LEAST_RADIUS * LEAST_RADIUS) {
      return Circle.NONE;
    }
    double[] radii = radii(box, new PointPx(sum[1] / sum[0], sum[2] / sum[0]));
    double mean = Arrays.stream(radii).average().orElse(0);
    double spread =
        Math.sqrt(Arrays.stream(radii).map(r -> (r - mean) * (r - mean)).average().orElse(0));
    boolean asLarge =
        mean + HALF_PX > LEAST_RADIUS * radius
            && mean < MOST_RADIUS * radius
            && sum[0] > COVERED * Math.PI * mean * mean;
    return asLarge ? new Circle(mean, spread / Math.max(ROUND * mean, OUTLINE_PX)) : Circle.NONE;
  }

  /** Left, top, right and bottom of a square in the picture. */
  private int[] box(PointPx centre, double reach) {
    return new int[] {
      (int) Math.max(0, centre.xPx() - reach),
      (int) Math.max(0, centre.yPx() - reach),
      (int) Math.min(deck.image().width() - 1.0, centre.xPx() + reach),
      (int) Math.min(deck.image().height() - 1.0, centre.yPx() + reach)
    };
  }

  /** Sums up a box's leaf pixels: how many, their columns, their rows. */
  private void sum(int[] box, double[] sum) {
    for (int y = box[1]; y <= box[3]; y++) {
      for (int x = box[0]; x <= box[2]; x++) {
        if (leaf[y * deck.image().width() + x]) {
          sum[0]++;
          sum[1] += x;
          sum[2] += y;
        }
      }
    }
  }

  /** Finds how far leaf reaches in each direction. */
  private double[] radii(int[] box, PointPx middle) {
    double[] radii = new double[SECTORS];
    for (int y = box[1]; y <= box[3]; y++) {
      for (int x = box[0]; x <= box[2]; x++) {
        if (leaf[y * deck.image().width() + x]) {
          double dx = x - middle.xPx();
          double dy = y - middle.yPx();
          int sector = (int) ((Math.atan2(dy, dx) / Math.PI + 1) / 2 * SECTORS) % SECTORS;
          radii[sector] = Math.max(radii[sector], Math.sqrt(dx * dx + dy * dy));
        }
      }
    }
    return radii;
  }

  private void clear(PointPx centre, boolean[] canopy) {
    int[] box = box(centre, MOST_RADIUS * holePx / 2);
    for (int y = box[1]; y <= box[3]; y++) {
      int row = y * deck.image().width();
      Arrays.fill(canopy, row + box[0], row + box[2] + 1, false);
    }
  }
}
