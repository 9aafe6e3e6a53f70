// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Adds to red leaf what stands out from the plugs by its light: the dull rims of young red leaves
 * over near-black plugs are hardly coloured, but several times as bright. Only where colour shows a
 * plant already: a bare plug may be brighter than the others for many reasons.
 */
final class RedInHole {
  /** Leaf is this many times as bright as what the holes usually show (working value). */
  private static final double TIMES = 2.2;

  /** It must be this leaf-like in colour at least; water that glints is not. */
  private static final double TINGED = 0.4;

  /** Share of a hole that leaf covers, told by colour, before its rims are looked for. */
  private static final double LEAST_LEAF = 0.05;

  private final int[] size;
  private final DeckPlaces places;

  /**
   * Sets up the search.
   *
   * @param size width and height, px
   * @param places of the deck
   */
  RedInHole(int[] size, DeckPlaces places) {
    this.size = size;
    this.places = places;
  }

  /**
   * Adds to the canopy.
   *
   * @param leaf the canopy
   * @param even three planes of evened light
   * @param scores of each pixel
   * @param red where leaf is red
   */
  void add(boolean[] leaf, float[][] even, float[] scores, boolean[] red) {
    boolean[] hole = places.hole();
    boolean[] outside = new boolean[hole.length];
    for (int i = 0; i < hole.length; i++) {
      outside[i] = !hole[i];
    }
    // The hole's wall, lit by the board, is none of the plug.
    boolean[] wall = BoxFilter.any(outside, size[0], size[1], (int) (places.holePx() / 8));
    PlugLight plugs = new PlugLight(size[0], size[1], hole, places.holePx());
    double least = TIMES * plugs.usual(even, leaf, red);
    boolean[] planted = planted(leaf, hole);
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] |=
          planted[i]
              && red[i]
              && !wall[i]
              && scores[i] > TINGED
              && PlugLight.luminance(even, i) > least;
    }
  }

  /** Says which pixels lie in holes that show leaf. */
  private boolean[] planted(boolean[] leaf, boolean[] hole) {
    Parts holes = Parts.of(hole, size[0], size[1]);
    int[] covered = new int[holes.count()];
    for (int i = 0; i < leaf.length; i++) {
      if (hole[i] && leaf[i]) {
        covered[holes.label(i)]++;
      }
    }
    boolean[] planted = new boolean[leaf.length];
    for (int i = 0; i < leaf.length; i++) {
      int at = holes.label(i);
      planted[i] = at >= 0 && covered[at] > LEAST_LEAF * holes.size(at);
    }
    return planted;
  }
}
