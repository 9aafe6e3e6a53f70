// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/** The leaf-like colours in and beside the holes of a deck. */
final class HoleColours {
  /** Cells of the histogram over u and v, from -2 to 2. */
  static final int CELLS = 50;

  static final double CELL = 4.0 / CELLS;

  /** A plug that scores less is told from leaf by its score. */
  private static final double LEAST_SCORE = 0.35;

  /** Spread of u + v of foam, coir and peat: green leaf lies at 1.2 and more (no source). */
  private static final double DULL = 0.8;

  /** Half width of a plug's cluster of colours. */
  private static final double CLUSTER = 0.25;

  /**
   * Within four fifths of the layout's radius, which is often a guess, an empty hole has the plug's
   * colour to this share (working value).
   */
  private static final double FULL = 0.7;

  /** Beside an empty hole less than this share has its colour. */
  private static final double BARE = 0.1;

  /** A plug is this much duller than the leaf of its raft; pale hearts are not (working value). */
  private static final double DULLER = 0.5;

  /**
   * Leaf that is more vivid than this share of a plant's heart is no paler leaf (working value).
   */
  private static final double PALER = 0.8;

  /** What has this share of a heart's brightness lies up among the leaves (working value). */
  private static final double AS_BRIGHT = 0.5;

  /** Green light of a board of the same make is far under this; 1 is white. */
  private static final double MOST_GREEN = 2;

  /** One hole is enough where its colour is this much duller, else it takes two. */
  private static final double MUCH_DULLER = 0.4;

  /** In all holes together. */
  private final Part middle = new Part();

  private final Part rim = new Part();
  private final Part beside = new Part();

  /** Green of what is of no leaf-like colour near the rims. */
  private final Histogram colourless = new Histogram(MOST_GREEN);

  /** Of each hole what is in it, and what is beside it. */
  private final List<Part[]> single = new ArrayList<>();

  private final float[][] even;
  private final float[] scores;

  private HoleColours(float[][] even, float[] scores) {
    this.even = even;
    this.scores = scores;
  }

  /** Colours of a part of a hole or of its surroundings. */
  static final class Part {
    private final List<double[]> colours = new ArrayList<>();
    private int seen;

    /** Returns how many pixels were looked at, those of no leaf-like colour too. */
    int seen() {
      return seen;
    }

    /** Returns u, v and green of each leaf-like pixel. */
    List<double[]> colours() {
      return colours;
    }

    /** Returns those of a colour. */
    List<double[]> near(double[] mode) {
      return colours.stream().filter(s -> isNear(s, mode)).toList();
    }

    /** Returns the share of a colour, 0..1. */
    double share(double[] mode) {
      return colours.stream().filter(s -> isNear(s, mode)).count() / (double) Math.max(1, seen);
    }

    private static boolean isNear(double[] s, double[] mode) {
      double du = s[0] - mode[0];
      double dv = s[1] - mode[1];
      return du * du + dv * dv < CLUSTER * CLUSTER;
    }
  }

  /** Returns {@code ln(G / other)} with the floor of {@link LeafRule}. */
  static double u(double other, double green) {
    return Math.log(green + LeafRule.FLOOR) - Math.log(other + LeafRule.FLOOR);
  }

  /**
   * Looks into the holes of a deck.
   *
   * @param deck the deck picture
   * @param layout its layout
   * @param even three planes of evened light
   * @param scores of the same pixels
   */
  static HoleColours of(DeckImage deck, Layout layout, float[][] even, float[] scores) {
    HoleColours looks = new HoleColours(even, scores);
    double radius = 0.5 * layout.grid().holeMm() / deck.mmPerPx();
    for (SiteId site : layout.grid().sites()) {
      looks.add(deck, deck.toPx(layout.grid().centre(site)), radius);
    }
    return looks;
  }

  private void add(DeckImage deck, PointPx c, double radius) {
    Part in = new Part();
    Part about = new Part();
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
          add(middle, in, i);
        } else if (radii > 0.5 && radii < 0.8) {
          add(rim, in, i);
        } else if (radii > 1.3 && radii < 1.8) {
          add(beside, about, i);
        }
      }
    }
    single.add(new Part[] {in, about});
  }

  private void add(Part all, Part one, int i) {
    all.seen++;
    one.seen++;
    if (scores[i] > LEAST_SCORE) {
      float green = even[1][i];
      double[] colour = {u(even[0][i], green), u(even[2][i], green), green};
      all.colours.add(colour);
      one.colours.add(colour);
    } else if (all == rim) {
      colourless.add(even[1][i]);
    }
  }

  /** Returns what is about the middle of the holes, where plants stand. */
  Part middle() {
    return middle;
  }

  /** Returns what is in the holes near their rims, where plugs show. */
  Part rim() {
    return rim;
  }

  /** Returns what is beside the holes, where no plug can be. */
  Part beside() {
    return beside;
  }

  /**
   * Returns the share of the rims that is of no leaf-like colour.
   *
   * @param green what is darker does not count: the camera's floor drains dark plugs of colour
   */
  double colourlessAtRim(double green) {
    return colourless.from(green) / (double) Math.max(1, rim.seen);
  }

  /** Returns the commonest colour near the rims, dull ones before vivid ones. */
  double[] mode() {
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

  /**
   * Says whether holes are full of a colour that is not beside them and much duller than the raft's
   * leaf: empty ones, whose plugs show.
   */
  boolean fillsEmptyOnes(double[] mode) {
    double leaf = vividness(rim);
    if (leaf <= 0) {
      return false; // red leaf, which is as dull as any plug
    }
    double share = (mode[0] + mode[1]) / leaf;
    long full =
        single.stream().filter(p -> p[0].share(mode) > FULL && p[1].share(mode) < BARE).count();
    return share < MUCH_DULLER ? full > 0 : share < DULLER && full > 1;
  }

  /**
   * Says whether a colour is rather that of paler leaves, which lie about a plant's heart as a plug
   * does: duller than the heart by less than plugs are, and nearly as bright, for plugs lie below
   * the leaves.
   */
  boolean looksLikePaleLeaf(double[] mode) {
    double heart = vividness(middle);
    double share = (mode[0] + mode[1]) / heart;
    double[] leaf =
        middle.colours.stream().filter(s -> s[0] + s[1] >= heart).mapToDouble(s -> s[2]).toArray();
    double[] here = rim.near(mode).stream().mapToDouble(s -> s[2]).toArray();
    return heart > 0
        && share > DULLER
        && share < PALER
        && Quantile.of(here, 0.5) > AS_BRIGHT * Quantile.of(leaf, 0.5);
  }

  /** Returns u + v of the leaf in a part: that of its more vivid quarter begins there. */
  private static double vividness(Part part) {
    double[] vivid = part.colours.stream().mapToDouble(s -> s[0] + s[1]).toArray();
    return vivid.length == 0 ? 0 : Quantile.of(vivid, 0.75);
  }
}
