// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.plane.DeckImage;

/**
 * The colour of the plugs in a deck's holes, where it could pass for leaf: mossy or brown foam.
 *
 * <p>A plant stands in the middle of its hole and the plug shows about it, so the plug's colour is
 * one that is commoner near the hole's rim than in its middle; on an empty raft it fills the holes
 * and is nowhere beside them. All plugs of a raft are of one material.
 *
 * <p>The darker a patch of it, the more the camera's floor drains its colour: a plug's colours lie
 * along a line from no colour outwards, and end where they thin out before the leaf's begin.
 *
 * @param du direction of the line in {@code u = ln(G/R)}, of length 1 with {@code dv}
 * @param dv direction of the line in {@code v = ln(G/B)}
 * @param end how far out the line goes
 * @param reach how far beside it a colour is still plug
 * @param brightest green light past which it is not the plug, 1 is white
 */
record PlugColour(double du, double dv, double end, double reach, double brightest) {
  /** Fewer pixels tell no colour. */
  private static final int LEAST_PIXELS = 30;

  /** Share of the rims' pixels under which a colour is not the plugs'. */
  private static final double LEAST_SHARE = 0.08;

  /** A plug is this many times commoner near the rim than in the middle. */
  private static final double TIMES_MIDDLE = 1.6;

  /** A colour that fills this share of all rims is the plugs' as well; holes may be narrower. */
  private static final double FILLED = 0.4;

  /**
   * A colour as vivid as green leaf, u + v, is no plug's: young rosettes fill their holes, and
   * their hearts are paler than the leaves about them. Moss as vivid as that is told by holes that
   * are full of it, by the disc that it fills ({@link PlugDisc}), or the site held ({@link
   * FillsHole}).
   */
  private static final double VIVID = 1.2;

  /**
   * Where this many times as much of the rims is grey, with half the brightness of the colour in
   * question or more, that is the plug, and the colour is leaf (working value: grey plugs about
   * young red leaf 4, about green leaf 2.1 to 2.5; greenish plugs in haze 1.5).
   */
  private static final double TIMES_GREY = 2;

  private static final double AS_BRIGHT = 0.5;

  /** Leaf reaches beyond the holes; plugs do not: beside them they are rarer than this share. */
  private static final double BESIDE = 0.1;

  /** A plug is at most this many times as bright as nine tenths of its commonest colour. */
  private static final double BRIGHTER = 1.5;

  /**
   * Evenly lit plugs are at most this many times as bright as a third of their commonest colour,
   * leaf of that colour being the brighter part of it.
   */
  private static final double EVENLY_BRIGHTER = 2.0;

  /** Half of evenly lit plugs outshine a tenth of them by no more than this; shade is darker. */
  private static final double EVENLY = 1.8;

  /**
   * The brightest tenth of plugs outshines three quarters of them by no more than this, for they
   * are of one material; leaves' rims that have their colour, mixed with the dark of a hole, are of
   * any brightness (working value, read off three rendered sets: plugs 1.04 to 1.16, rims 1.2 to
   * 2.3; plugs mixed with rims, on coarse or dim photos, lie between and are bounded as rims are).
   */
  private static final double OF_ONE_LIGHT = 1.2;

  /** Foam, coir, peat and moss have about as much green as blue or more, ln; purple leaf less. */
  private static final double LEAST_V = -0.15;

  /** Limits of the reach; between them three standard deviations. */
  private static final double LEAST_REACH = 0.10;

  private static final double MOST_REACH = 0.25;

  /** A plug's line ends at most this far beyond its commonest colour. */
  private static final double MOST_BEYOND = 0.6;

  /** The line ends this many standard deviations beyond the commonest colour. */
  private static final double SPREADS = 2.5;

  /** Tells whether a colour in evened light, 1 is white, is the plug's. */
  boolean shows(double red, double green, double blue) {
    double u = HoleColours.u(red, green);
    double v = HoleColours.u(blue, green);
    double along = u * du + v * dv;
    return green < brightest && along > 0 && along < end && Math.abs(u * dv - v * du) < reach;
  }

  /** Returns how far a colour in evened light lies from the plug's line. */
  double distance(double red, double green, double blue) {
    double u = HoleColours.u(red, green);
    double v = HoleColours.u(blue, green);
    double along = Math.max(0, Math.min(end, u * du + v * dv));
    return Math.sqrt(square(u - along * du) + square(v - along * dv));
  }

  private static double square(double v) {
    return v * v;
  }

  /**
   * Looks for the colour of a deck's plugs.
   *
   * @param deck the deck picture
   * @param layout its layout
   * @param even three planes of evened light
   * @param scores of the same pixels
   * @return the colour, where there is one that could pass for leaf
   */
  static Optional<PlugColour> of(DeckImage deck, Layout layout, float[][] even, float[] scores) {
    return plug(HoleColours.of(deck, layout, even, scores));
  }

  private static Optional<PlugColour> plug(HoleColours holes) {
    double[] mode = holes.mode();
    List<double[]> cluster = holes.rim().near(mode);
    boolean plug =
        mode[1] > LEAST_V
            && cluster.size() >= LEAST_PIXELS
            && (aboutPlants(holes, mode) || holes.fillsEmptyOnes(mode));
    return plug ? Optional.of(line(holes.rim(), mode, cluster)) : Optional.empty();
  }

  /** Says whether a colour lies about plants in their holes, and not beside the holes. */
  private static boolean aboutPlants(HoleColours holes, double[] mode) {
    double atRim = holes.rim().share(mode);
    if (atRim < LEAST_SHARE) {
      return false;
    }
    boolean plug = atRim > TIMES_MIDDLE * holes.middle().share(mode) || atRim > FILLED;
    boolean dull = mode[0] + mode[1] < VIVID && !holes.looksLikePaleLeaf(mode);
    return plug && dull && !greyPlugs(holes, mode) && holes.shareBeside(mode) <= BESIDE * atRim;
  }

  /** Says whether the plugs are rather what shows grey beside the colour in question. */
  private static boolean greyPlugs(HoleColours holes, double[] mode) {
    double[] green = holes.rim().near(mode).stream().mapToDouble(s -> s[2]).toArray();
    double least = AS_BRIGHT * Quantile.of(green, 0.5);
    return holes.timesGreyBeside(mode, least) > TIMES_GREY;
  }

  private static PlugColour line(HolePart rim, double[] mode, List<double[]> cluster) {
    double u = Quantile.of(cluster.stream().mapToDouble(s -> s[0]).toArray(), 0.5);
    double v = Quantile.of(cluster.stream().mapToDouble(s -> s[1]).toArray(), 0.5);
    double du = u / Math.hypot(u, v);
    double dv = v / Math.hypot(u, v);
    double[] off = cluster.stream().mapToDouble(s -> Math.abs(s[0] * dv - s[1] * du)).toArray();
    // Three standard deviations are 4.45 medians of the distance.
    double reach = Math.max(LEAST_REACH, Math.min(MOST_REACH, 4.45 * Quantile.of(off, 0.5)));
    double[] cells = new double[2 * HoleColours.CELLS];
    for (double[] s : rim.colours()) {
      int at = (int) ((s[0] * du + s[1] * dv) / HoleColours.CELL);
      if (at >= 0 && at < cells.length && Math.abs(s[0] * dv - s[1] * du) < reach) {
        cells[at]++;
      }
    }
    double end = end(cells, mode[0] * du + mode[1] * dv);
    return new PlugColour(du, dv, end, reach, brightest(cluster));
  }

  private static double brightest(List<double[]> cluster) {
    double[] light = cluster.stream().mapToDouble(s -> s[2]).toArray();
    double most = BRIGHTER * Quantile.of(light, 0.9);
    boolean evenly = Quantile.of(light, 0.5) < EVENLY * Quantile.of(light, 0.1);
    boolean rims = Quantile.of(light, 0.9) > OF_ONE_LIGHT * Quantile.of(light, 0.75);
    return evenly || rims ? Math.min(most, EVENLY_BRIGHTER * Quantile.of(light, 0.35)) : most;
  }

  /** Walks outwards along the line to where the plug's colours thin out. */
  private static double end(double[] cells, double modeAlong) {
    int at = (int) Math.max(1, modeAlong / HoleColours.CELL);
    int last = Math.min(cells.length - 3, at + (int) (MOST_BEYOND / HoleColours.CELL));
    while (at < last && calm(cells, at + 1) >= calm(cells, at)) {
      at++;
    }
    int half = at;
    while (half < last && calm(cells, half) > 0.5 * calm(cells, at)) {
      half++;
    }
    // A normal spread falls to half at 1.18 standard deviations.
    return Math.min(last, at + SPREADS * (half - at) / 1.18 + 0.5) * HoleColours.CELL;
  }

  private static double calm(double[] cells, int at) {
    return (cells[at - 1] + 2 * cells[at] + cells[at + 1]) / 4;
  }
}
