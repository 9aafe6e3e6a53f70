// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Finds what is painted or dyed yellow or orange on a deck: insect traps, cards, labels, tape.
 *
 * <p>A dye that takes out blue alone sends back nearly all red light. Living tissue that looks
 * yellow does not: what is left of its chlorophyll, and the tannins of a dying leaf, take out red
 * too, and its surface reflects some white, which dilutes the colour. So a dye is at once purer and
 * brighter in red than tissue. A part must also be flat: one material in one plane, without veins,
 * folds and shaded sides.
 */
final class PaintedParts {
  /**
   * Least ln(red / blue), with the floor of {@link LeafRule}. Short of chlorophyll a leaf has up to
   * 1.6 (pale tissue of two renderers; a fully yellowed leaf sends back some 45 % of red and 9 % of
   * blue, from memory); a chart's yellow and orange-yellow have 3.5 and 3.0 (published sRGB values
   * of a 24-patch chart). Dull reds reach into red leaf and cannot be told.
   */
  private static final double LEAST_PURE = 2.0;

  /** A little under the ratio that {@link #LEAST_PURE} is the logarithm of. */
  private static final float SURELY_PURE = (float) (0.999 * Math.exp(LEAST_PURE));

  /** Least red, in shares of white; pure yellow or red tissue keeps under it. */
  private static final float LEAST_RED = 0.32f;

  /** Red over green that any warm colour has; the camera's noise is allowed for. */
  private static final float WARM = 0.97f;

  /** Lightness of the middle half of a part spreads less than this, ln (working value). */
  private static final double FLAT = 0.3;

  /** Smaller parts are glints and edges, px. */
  private static final int LEAST_PX = 24;

  /** A part's edge is mixed with what is beside it, and bleeds in compression, this far, px. */
  private static final int RIM_PX = 4;

  /** Rim pixels keep at least this much red, in shares of white; red leaf has less. */
  private static final float RIM_RED = 0.2f;

  /**
   * Where red and green are both cut off at full scale, leaf looks as yellow and as flat as a card:
   * share of full scale.
   */
  private static final float CLIPPED = 0.9f;

  private PaintedParts() {}

  /**
   * Finds the painted parts with their mixed edges.
   *
   * @param even three planes of evened light
   * @param rgb three planes of the same picture's linear light as the camera gave it, 0..1
   * @param width px
   * @return where they lie; empty where there are none
   */
  static boolean[] find(float[][] even, float[][] rgb, int width) {
    boolean[] pure = new boolean[even[0].length];
    int n = 0;
    for (int i = 0; i < pure.length; i++) {
      pure[i] =
          pure(even[0][i], even[1][i], even[2][i]) && (rgb[0][i] < CLIPPED || rgb[1][i] < CLIPPED);
      n += pure[i] ? 1 : 0;
    }
    return n < LEAST_PX ? new boolean[0] : flat(pure, even, width);
  }

  /** Says whether a colour of evened linear light is purer and brighter than yellow or red leaf. */
  static boolean pure(float red, float green, float blue) {
    float floor = (float) LeafRule.FLOOR;
    return red > LEAST_RED
        && red > WARM * green
        && red + floor > SURELY_PURE * (Math.max(0, blue) + floor);
  }

  private static boolean[] flat(boolean[] pure, float[][] even, int width) {
    int height = pure.length / width;
    Parts parts = Parts.of(pure, width, height);
    double[][] light = new double[parts.count()][];
    int[] n = new int[light.length];
    for (int i = 0; i < pure.length; i++) {
      if (pure[i] && parts.size(parts.label(i)) >= LEAST_PX) {
        int at = parts.label(i);
        light[at] = light[at] == null ? new double[parts.size(at)] : light[at];
        light[at][n[at]++] = Math.log(PlugLight.luminance(even, i));
      }
    }
    boolean[] flat = new boolean[light.length];
    for (int at = 0; at < flat.length; at++) {
      flat[at] = n[at] > 0 && middleHalf(light[at]) < FLAT;
    }
    boolean[] painted = new boolean[pure.length];
    boolean any = false;
    for (int i = 0; i < pure.length; i++) {
      painted[i] = pure[i] && flat[parts.label(i)];
      any |= painted[i];
    }
    return any ? withRim(painted, even, width) : new boolean[0];
  }

  private static double middleHalf(double[] light) {
    return Quantile.of(light, 0.75) - Quantile.of(light, 0.25);
  }

  private static boolean[] withRim(boolean[] painted, float[][] even, int width) {
    boolean[] near = BoxFilter.any(painted, width, painted.length / width, RIM_PX);
    for (int i = 0; i < near.length; i++) {
      near[i] = near[i] && (painted[i] || (even[0][i] > RIM_RED && even[0][i] > WARM * even[1][i]));
    }
    return near;
  }
}
