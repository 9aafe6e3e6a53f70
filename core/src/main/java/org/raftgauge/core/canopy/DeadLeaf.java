// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.raftgauge.core.pixels.Srgb;

/**
 * Adds dead leaf to a canopy: brown parts that a plant carries.
 *
 * <p>Brown alone says little: stained boards, coir plugs and cards are brown as well. So a brown
 * part counts only if it is crisp (a stain fades out: a few pixels off, the ground is still brown),
 * outshines by far what the raft's holes show (a plug does not), and hangs on a plant: it reaches
 * into a hole, or, as an outer leaf does, borders on living leaf larger than itself.
 */
final class DeadLeaf {
  /**
   * Brown's score is ln(red / blue), with the floor of {@link LeafRule}; dry leaf has 0.8 to 1.8,
   * stained foam under 0.5 (measured on leaves and boards of two renderers).
   */
  private static final double LEAST_BROWN = 0.6;

  /** Brown has this much less green than red, ln; living leaf has more green than red. */
  private static final double LEAST_RED = 0.18;

  /** Painted cards and tape are purer in colour than any dead tissue. */
  private static final double MOST_BROWN = 2.2;

  /** Under this much red over blue, in shares of white, brown is noise of something black. */
  private static final double LEAST_LIGHT = 0.03;

  /** The brown about a crisp part is under this share of its own. */
  private static final double FADED = 0.5;

  /** What is about a part is looked at between these distances from it, px. */
  private static final int NEAR_PX = 2;

  private static final int FAR_PX = 4;

  /** A part smaller than this is an edge, px. */
  private static final int LEAST_PX = 12;

  /** A dead plant's part beyond its hole is at least this share of the hole. */
  private static final double BEYOND = 0.15;

  /** A dead seedling covers at least this share of its hole. */
  private static final double INSIDE = 0.03;

  /** In a hole dead leaf is this many times as bright as what the holes usually show. */
  private static final double PLUG_TIMES = 1.6;

  /** In a hole, what is darker than this share of white may be a plug that is better lit. */
  private static final double LEAST_IN_HOLE = 0.09;

  /** Stalks may be this thin to hold a part together, px either side. */
  private static final int STALK_PX = 3;

  /** A dead leaf borders on living leaf along at least this share of its rim. */
  private static final double BORDER = 0.15;

  private final int width;
  private final int height;
  private final boolean[] leaf;
  private final boolean[] hole;
  private final double holePx;

  /**
   * Sets up the search.
   *
   * @param size width and height, px
   * @param leaf the living canopy
   * @param places of the deck
   */
  DeadLeaf(int[] size, boolean[] leaf, DeckPlaces places) {
    this.width = size[0];
    this.height = size[1];
    this.leaf = leaf;
    this.hole = places.hole();
    this.holePx = places.holePx();
  }

  /** Returns how brown a colour of evened linear light is; 0 where it cannot be dead leaf. */
  static double brown(double red, double green, double blue) {
    double redder = Math.log(red + LeafRule.FLOOR) - Math.log(green + LeafRule.FLOOR);
    double brown = warm(red, blue);
    boolean dull = brown < MOST_BROWN && red - blue > LEAST_LIGHT;
    return dull && redder > LEAST_RED ? brown : 0;
  }

  private static double warm(double red, double blue) {
    return Math.log(red + LeafRule.FLOOR) - Math.log(blue + LeafRule.FLOOR);
  }

  /** What is known of a brown part and of what is about it. */
  private static final class Part {
    private int pixels;
    private double warm;
    private int beyond;
    private double aboutWarm;
    private int about;
    private int besideLeaf;
    private int rim;
    private int living;

    boolean dead(double holePx2) {
      boolean crisp = aboutWarm <= FADED * warm / Math.max(1, pixels) * about;
      int inHole = pixels - beyond;
      boolean whole = inHole > 0 && (beyond > BEYOND * holePx2 || inHole > INSIDE * holePx2);
      boolean outer = besideLeaf > BORDER * rim && living > pixels && 2 * beyond > pixels;
      return pixels >= LEAST_PX && crisp && (whole || outer);
    }
  }

  /**
   * Sets dead leaf in the canopy.
   *
   * @param even three planes of evened light
   * @param counts where dead leaf may be added
   */
  void add(float[][] even, boolean[] counts) {
    float[] warm = new float[leaf.length];
    boolean[] mask = new boolean[leaf.length];
    double plug = PLUG_TIMES * plugLight(even, counts);
    for (int i = 0; i < leaf.length; i++) {
      double brown = brown(even[0][i], even[1][i], even[2][i]);
      warm[i] = (float) warm(even[0][i], even[2][i]);
      boolean lit = !hole[i] || luminance(even, i) > Math.max(plug, LEAST_IN_HOLE);
      mask[i] = !leaf[i] && counts[i] && brown > LEAST_BROWN && lit;
    }
    Parts parts = Parts.alsoDiagonal(BoxFilter.any(mask, width, height, STALK_PX), width, height);
    Part[] found = look(parts, mask, warm);
    boolean[] dead = new boolean[found.length];
    for (int p = 0; p < dead.length; p++) {
      dead[p] = found[p].dead(Math.PI / 4 * holePx * holePx);
    }
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] |= mask[i] && dead[parts.label(i)];
    }
  }

  /**
   * Returns the light of the usual hole: the median over the holes of what each shows beside leaf;
   * 1 where none shows enough.
   */
  private double plugLight(float[][] even, boolean[] counts) {
    Parts holes = Parts.of(hole, width, height);
    boolean[] outside = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      outside[i] = !hole[i];
    }
    // The hole's width is often a guess: its wall does not count.
    boolean[] wall = BoxFilter.any(outside, width, height, (int) (holePx / 8));
    double[][] light = new double[holes.count()][];
    int[] n = new int[light.length];
    for (int i = 0; i < leaf.length; i++) {
      if (hole[i] && !wall[i] && !leaf[i] && counts[i]) {
        int at = holes.label(i);
        light[at] = light[at] == null ? new double[holes.size(at)] : light[at];
        light[at][n[at]++] = luminance(even, i);
      }
    }
    double[] usual =
        IntStream.range(0, light.length)
            .filter(at -> n[at] >= LEAST_PX)
            .mapToDouble(at -> Quantile.of(Arrays.copyOf(light[at], n[at]), 0.5))
            .toArray();
    return usual.length == 0 ? 1 : Quantile.of(usual, 0.5);
  }

  private static double luminance(float[][] even, int i) {
    return Srgb.luminance(even[0][i], even[1][i], even[2][i]);
  }

  private Part[] look(Parts parts, boolean[] mask, float[] warm) {
    Part[] found = new Part[parts.count()];
    for (int p = 0; p < found.length; p++) {
      found[p] = new Part();
    }
    Parts living = Parts.alsoDiagonal(leaf, width, height);
    boolean[] nearHole = BoxFilter.any(hole, width, height, 2);
    for (int i = 0; i < leaf.length; i++) {
      if (mask[i]) {
        Part part = found[parts.label(i)];
        part.pixels++;
        part.warm += warm[i];
        part.beyond += nearHole[i] ? 0 : 1;
        border(i, mask, living, part);
        about(i, mask, warm, part);
      }
    }
    return found;
  }

  private void border(int i, boolean[] mask, Parts living, Part part) {
    boolean rim = false;
    boolean besideLeaf = false;
    for (int side : sides(i)) {
      rim |= !mask[side];
      if (living.label(side) >= 0) {
        besideLeaf = true;
        part.living = Math.max(part.living, living.size(living.label(side)));
      }
    }
    part.rim += rim ? 1 : 0;
    part.besideLeaf += besideLeaf ? 1 : 0;
  }

  private int[] sides(int i) {
    int x = i % width;
    int y = i / width;
    return new int[] {
      x > 0 ? i - 1 : i,
      x < width - 1 ? i + 1 : i,
      y > 0 ? i - width : i,
      y < height - 1 ? i + width : i
    };
  }

  /** Adds up how brown the open ground is that lies a few pixels off a place on a part's rim. */
  private void about(int i, boolean[] mask, float[] warm, Part part) {
    int[] sides = sides(i);
    if (mask[sides[0]] && mask[sides[1]] && mask[sides[2]] && mask[sides[3]]) {
      return;
    }
    for (int k = 0; k < 8; k++) {
      double angle = Math.PI / 4 * k;
      int x = i % width + (int) Math.round(FAR_PX * Math.cos(angle));
      int y = i / width + (int) Math.round(FAR_PX * Math.sin(angle));
      if (x >= 0 && y >= 0 && x < width && y < height && open(x, y, mask)) {
        part.aboutWarm += warm[y * width + x];
        part.about++;
      }
    }
  }

  /** Says whether a place is open ground, with no brown part, leaf or hole near it. */
  private boolean open(int x, int y, boolean[] mask) {
    for (int v = Math.max(0, y - NEAR_PX); v <= Math.min(height - 1, y + NEAR_PX); v += NEAR_PX) {
      for (int u = Math.max(0, x - NEAR_PX); u <= Math.min(width - 1, x + NEAR_PX); u += NEAR_PX) {
        int i = v * width + u;
        if (mask[i] || leaf[i] || hole[i]) {
          return false;
        }
      }
    }
    return true;
  }
}
