// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Adds dead leaf to a canopy: brown parts that a plant carries.
 *
 * <p>Brown alone says little: stained boards, coir plugs and cards are brown as well. So a brown
 * part counts only if it is crisp (a stain fades out: a few pixels off, the ground is still brown),
 * outshines by far what the raft's holes show (a plug does not), and hangs on a plant: it reaches
 * into a hole, or, as an outer leaf does, borders on living leaf larger than itself. Where many
 * holes show brown, what is no brighter in them is plug, beside dead leaf too.
 */
final class DeadLeaf {
  /**
   * Brown's score is ln(red / blue), with the floor of {@link LeafRule}; dry leaf has 0.8 to 1.8,
   * stained foam under 0.5 (measured on leaves and boards of two renderers).
   */
  private static final double LEAST_BROWN = 0.6;

  /** Brown has this much less green than red, ln; living leaf has more green than red. */
  private static final double LEAST_RED = 0.18;

  /** A little under the ratio that {@link #LEAST_RED} is the logarithm of. */
  private static final double SURELY_RED = 0.999 * Math.exp(LEAST_RED);

  /** Brown has this much more green than blue, ln; red and purple leaf have as much or less. */
  private static final double LEAST_YELLOW = 0.1;

  /** Painted cards and tape are purer in colour than any dead tissue. */
  private static final double MOST_BROWN = 2.2;

  /** Under this much red over blue, in shares of white, brown is noise of something black. */
  private static final double LEAST_LIGHT = 0.03;

  /** What is about a part is looked at between these distances from it, px. */
  private static final int NEAR_PX = 2;

  private static final int FAR_PX = 4;

  /** A part smaller than this is an edge, px. */
  private static final int LEAST_PX = 12;

  /** In a hole dead leaf is this many times as bright as what the holes usually show. */
  private static final double PLUG_TIMES = 1.6;

  /** In a hole, what is darker than this share of white may be a plug that is better lit. */
  private static final double LEAST_IN_HOLE = 0.09;

  /** Beside a dead plant's lit parts, its brown in the hole keeps this share of their light. */
  private static final double SHADED = 0.45;

  /** Stalks may be this thin to hold a part together, px either side. */
  private static final int STALK_PX = 3;

  private final int width;
  private final int height;
  private final boolean[] leaf;
  private final boolean[] hole;
  private final boolean[] plugs;
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
    this.plugs = places.plug();
    this.holePx = places.holePx();
  }

  /** Returns how brown a colour of evened linear light is; 0 where it cannot be dead leaf. */
  static double brown(double red, double green, double blue) {
    if (red - blue <= LEAST_LIGHT || red + LeafRule.FLOOR < SURELY_RED * (green + LeafRule.FLOOR)) {
      return 0; // what most of a board is, told without logarithms
    }
    double redder = Math.log(red + LeafRule.FLOOR) - Math.log(green + LeafRule.FLOOR);
    double brown = warm(red, blue);
    boolean hue = redder > LEAST_RED && warm(green, blue) > LEAST_YELLOW;
    return brown < MOST_BROWN && hue ? brown : 0;
  }

  private static float warm(float[][] even, int i) {
    return (float) warm(even[0][i], even[2][i]);
  }

  private static double warm(double longer, double blue) {
    return Math.log(longer + LeafRule.FLOOR) - Math.log(blue + LeafRule.FLOOR);
  }

  /**
   * Sets dead leaf in the canopy.
   *
   * @param even three planes of evened light
   * @param counts where dead leaf may be added
   */
  void add(float[][] even, boolean[] counts) {
    boolean[] brown = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      brown[i] = !leaf[i] && counts[i] && brown(even[0][i], even[1][i], even[2][i]) > LEAST_BROWN;
    }
    if (!any(brown)) {
      return;
    }
    boolean[] lit = new boolean[leaf.length];
    PlugLight holes = new PlugLight(width, height, hole, holePx);
    // Coir and burnt clay are as brown as dead leaf, but they show in many holes alike.
    double brownPlug = holes.common(even, leaf, brown);
    double plug = PLUG_TIMES * Math.max(brownPlug, holes.usual(even, leaf, counts));
    for (int i = 0; i < leaf.length; i++) {
      lit[i] =
          brown[i] && (!plugs[i] || PlugLight.luminance(even, i) > Math.max(plug, LEAST_IN_HOLE));
    }
    if (!any(lit)) {
      return;
    }
    Parts parts = Parts.alsoDiagonal(BoxFilter.any(lit, width, height, STALK_PX), width, height);
    boolean[] nearHole = BoxFilter.any(hole, width, height, 2);
    BrownPart[] found = look(parts, lit, even, nearHole);
    boolean[] deadPart = new boolean[found.length];
    for (int p = 0; p < found.length; p++) {
      deadPart[p] = found[p].dead(Math.PI / 4 * holePx * holePx);
    }
    boolean[] dead = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      dead[i] = lit[i] && deadPart[parts.label(i)];
    }
    if (brownPlug == 0 && any(dead)) {
      addShaded(dead, brown, even, nearHole);
    }
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] |= dead[i];
    }
  }

  private static boolean any(boolean[] mask) {
    for (boolean set : mask) {
      if (set) {
        return true;
      }
    }
    return false;
  }

  /** Adds what is brown in the holes of dead plants, if it is lit nearly as they are. */
  private void addShaded(boolean[] dead, boolean[] brown, float[][] even, boolean[] nearHole) {
    Parts holes = Parts.of(nearHole, width, height);
    double[] light = new double[holes.count()];
    int[] n = new int[light.length];
    for (int i = 0; i < leaf.length; i++) {
      if (nearHole[i] && dead[i]) {
        light[holes.label(i)] += PlugLight.luminance(even, i);
        n[holes.label(i)]++;
      }
    }
    for (int i = 0; i < leaf.length; i++) {
      if (nearHole[i] && brown[i] && n[holes.label(i)] >= LEAST_PX) {
        int at = holes.label(i);
        dead[i] |= PlugLight.luminance(even, i) > SHADED * light[at] / n[at];
      }
    }
  }

  private BrownPart[] look(Parts parts, boolean[] mask, float[][] even, boolean[] nearHole) {
    BrownPart[] found = new BrownPart[parts.count()];
    for (int p = 0; p < found.length; p++) {
      found[p] = new BrownPart();
    }
    Parts living = Parts.alsoDiagonal(leaf, width, height);
    for (int i = 0; i < leaf.length; i++) {
      if (mask[i]) {
        BrownPart part = found[parts.label(i)];
        part.add(warm(even, i));
        part.beyond += nearHole[i] ? 0 : 1;
        border(i, mask, living, part);
        about(i, mask, even, part);
      }
    }
    return found;
  }

  private void border(int i, boolean[] mask, Parts living, BrownPart part) {
    boolean rim = false;
    boolean besideLeaf = false;
    for (int side : sides(i)) {
      rim |= !mask[side];
      if (living.label(side) >= 0) {
        besideLeaf = true;
        part.living = Math.max(part.living, living.size(living.label(side)));
      }
    }
    if (rim && !besideLeaf) {
      part.bareRim.add(i % width, Math.floorDiv(i, width));
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
  private void about(int i, boolean[] mask, float[][] even, BrownPart part) {
    int[] sides = sides(i);
    if (mask[sides[0]] && mask[sides[1]] && mask[sides[2]] && mask[sides[3]]) {
      return;
    }
    for (int k = 0; k < 8; k++) {
      double angle = Math.PI / 4 * k;
      int x = i % width + (int) Math.round(FAR_PX * Math.cos(angle));
      int y = i / width + (int) Math.round(FAR_PX * Math.sin(angle));
      if (x >= 0 && y >= 0 && x < width && y < height && open(x, y, mask)) {
        part.aboutWarm += warm(even, y * width + x);
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
