// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
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
  /** A plug that scores less is told from leaf by its score. */
  private static final double LEAST_SCORE = 0.35;

  /** Cells of the histogram over u and v, from -2 to 2. */
  private static final int CELLS = 50;

  private static final double CELL = 4.0 / CELLS;

  /** Spread of u + v of foam, coir and peat: green leaf lies at 1.2 and more (no source). */
  private static final double DULL = 0.8;

  /** Half width of a plug's cluster of colours. */
  private static final double CLUSTER = 0.25;

  /** Share of the rims' pixels under which a colour is not the plugs'. */
  private static final double LEAST_SHARE = 0.08;

  /** A plug is this many times commoner near the rim than in the middle. */
  private static final double TIMES_MIDDLE = 1.6;

  /** A colour that fills this share of all rims is the plugs' as well; holes may be narrower. */
  private static final double FILLED = 0.4;

  /**
   * A colour as vivid as green leaf, u + v, is no plug's: young rosettes fill their holes, and
   * their hearts are paler than the leaves about them. Moss as vivid as that is told by the disc
   * that it fills ({@link PlugDisc}), or the site held ({@link FillsHole}).
   */
  private static final double VIVID = 1.2;

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

  /** Foam, coir, peat and moss have about as much green as blue or more, ln; purple leaf less. */
  private static final double LEAST_V = -0.15;

  /** Limits of the reach; between them three standard deviations. */
  private static final double LEAST_REACH = 0.10;

  private static final double MOST_REACH = 0.25;

  /** A plug's line ends at most this far beyond its commonest colour. */
  private static final double MOST_BEYOND = 0.6;

  /** The line ends this many standard deviations beyond the commonest colour. */
  private static final double SPREADS = 2.5;

  /** The leaf-like colours of a part of all holes' surroundings. */
  private static final class Part {
    private final List<double[]> colours = new ArrayList<>();
    private int seen;

    void add(double score, float[][] even, int i) {
      seen++;
      if (score > LEAST_SCORE) {
        float green = even[1][i];
        colours.add(new double[] {u(even[0][i], green), u(even[2][i], green), green});
      }
    }

    List<double[]> near(double[] mode) {
      return colours.stream()
          .filter(s -> square(s[0] - mode[0]) + square(s[1] - mode[1]) < CLUSTER * CLUSTER)
          .toList();
    }

    double share(double[] mode) {
      return near(mode).size() / (double) Math.max(1, seen);
    }
  }

  /** Tells whether a colour in evened light, 1 is white, is the plug's. */
  boolean shows(double red, double green, double blue) {
    double u = u(red, green);
    double v = u(blue, green);
    double along = u * du + v * dv;
    return green < brightest && along > 0 && along < end && Math.abs(u * dv - v * du) < reach;
  }

  /** Returns how far a colour in evened light lies from the plug's line. */
  double distance(double red, double green, double blue) {
    double u = u(red, green);
    double v = u(blue, green);
    double along = Math.max(0, Math.min(end, u * du + v * dv));
    return Math.sqrt(square(u - along * du) + square(v - along * dv));
  }

  private static double square(double v) {
    return v * v;
  }

  private static double u(double other, double green) {
    return Math.log(green + LeafRule.FLOOR) - Math.log(other + LeafRule.FLOOR);
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
    Looks looks = new Looks();
    for (SiteId site : layout.grid().sites()) {
      looks.add(deck, layout, site, even, scores);
    }
    return looks.plug();
  }

  /** What the holes of a deck show. */
  private static final class Looks {
    private final Part middle = new Part();
    private final Part rim = new Part();
    private final Part beside = new Part();

    void add(DeckImage deck, Layout layout, SiteId site, float[][] even, float[] scores) {
      PointPx c = deck.toPx(layout.grid().centre(site));
      double radius = 0.5 * layout.grid().holeMm() / deck.mmPerPx();
      int width = deck.image().width();
      int bottom = (int) Math.min(deck.image().height() - 1.0, c.yPx() + 2 * radius);
      int right = (int) Math.min(width - 1.0, c.xPx() + 2 * radius);
      for (int y = (int) Math.max(0, c.yPx() - 2 * radius); y <= bottom; y++) {
        for (int x = (int) Math.max(0, c.xPx() - 2 * radius); x <= right; x++) {
          double dx = x - c.xPx();
          double dy = y - c.yPx();
          double radii = Math.sqrt(dx * dx + dy * dy) / radius;
          int i = y * width + x;
          if (radii < 0.4) {
            middle.add(scores[i], even, i);
          } else if (radii > 0.5 && radii < 0.8) {
            rim.add(scores[i], even, i);
          } else if (radii > 1.3 && radii < 1.8) {
            beside.add(scores[i], even, i);
          }
        }
      }
    }

    Optional<PlugColour> plug() {
      double[] mode = mode();
      List<double[]> cluster = rim.near(mode);
      boolean plugLike = mode[1] > LEAST_V && mode[0] + mode[1] < VIVID;
      if (!plugLike || cluster.size() < Math.max(30, LEAST_SHARE * rim.seen)) {
        return Optional.empty();
      }
      double atRim = rim.share(mode);
      double inMiddle = middle.share(mode);
      boolean plug = atRim > TIMES_MIDDLE * inMiddle || atRim > FILLED;
      if (!plug || beside.share(mode) > BESIDE * atRim) {
        return Optional.empty();
      }
      return Optional.of(line(mode, cluster));
    }

    private PlugColour line(double[] mode, List<double[]> cluster) {
      double u = Quantile.of(cluster.stream().mapToDouble(s -> s[0]).toArray(), 0.5);
      double v = Quantile.of(cluster.stream().mapToDouble(s -> s[1]).toArray(), 0.5);
      double du = u / Math.hypot(u, v);
      double dv = v / Math.hypot(u, v);
      double[] off = cluster.stream().mapToDouble(s -> Math.abs(s[0] * dv - s[1] * du)).toArray();
      // Three standard deviations are 4.45 medians of the distance.
      double reach = Math.max(LEAST_REACH, Math.min(MOST_REACH, 4.45 * Quantile.of(off, 0.5)));
      return new PlugColour(du, dv, end(mode, du, dv, reach), reach, brightest(cluster));
    }

    private static double brightest(List<double[]> cluster) {
      double[] light = cluster.stream().mapToDouble(s -> s[2]).toArray();
      double most = BRIGHTER * Quantile.of(light, 0.9);
      boolean evenly = Quantile.of(light, 0.5) < EVENLY * Quantile.of(light, 0.1);
      return evenly ? Math.min(most, EVENLY_BRIGHTER * Quantile.of(light, 0.35)) : most;
    }

    /** Walks outwards along the line to where the plug's colours thin out. */
    private double end(double[] mode, double du, double dv, double reach) {
      double[] cells = new double[2 * CELLS];
      for (double[] s : rim.colours) {
        int at = (int) ((s[0] * du + s[1] * dv) / CELL);
        if (at >= 0 && at < cells.length && Math.abs(s[0] * dv - s[1] * du) < reach) {
          cells[at]++;
        }
      }
      int at = (int) Math.max(1, (mode[0] * du + mode[1] * dv) / CELL);
      int last = Math.min(cells.length - 3, at + (int) (MOST_BEYOND / CELL));
      while (at < last && calm(cells, at + 1) >= calm(cells, at)) {
        at++;
      }
      int half = at;
      while (half < last && calm(cells, half) > 0.5 * calm(cells, at)) {
        half++;
      }
      // A normal spread falls to half at 1.18 standard deviations.
      return Math.min(last, at + SPREADS * (half - at) / 1.18 + 0.5) * CELL;
    }

    private static double calm(double[] cells, int at) {
      return (cells[at - 1] + 2 * cells[at] + cells[at + 1]) / 4;
    }

    /** The commonest colour near the rims, dull ones before vivid ones. */
    private double[] mode() {
      double[] cells = new double[CELLS * CELLS];
      for (double[] s : rim.colours) {
        int p = (int) Math.floor(s[0] / CELL) + CELLS / 2;
        int q = (int) Math.floor(s[1] / CELL) + CELLS / 2;
        for (int k = 0; k < 9 && p > 0 && q > 0 && p < CELLS - 1 && q < CELLS - 1; k++) {
          cells[(p + k % 3 - 1) * CELLS + q + Math.floorDiv(k, 3) - 1]++;
        }
      }
      double[] best = {0, 0, -1};
      for (int i = 0; i < cells.length; i++) {
        double u = (Math.floorDiv(i, CELLS) - CELLS / 2 + 0.5) * CELL;
        double v = (i % CELLS - CELLS / 2 + 0.5) * CELL;
        double likely = cells[i] * Math.exp(-0.5 * (u + v) * (u + v) / (DULL * DULL));
        if (likely > best[2]) {
          best = new double[] {u, v, likely};
        }
      }
      return best;
    }
  }
}
