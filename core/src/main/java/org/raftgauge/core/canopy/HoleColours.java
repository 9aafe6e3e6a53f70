// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.raftgauge.core.book.Layout;
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

  /** One hole is enough where its colour is this much duller, else it takes two. */
  private static final double MUCH_DULLER = 0.4;

  /** In all holes together. */
  private final HolePart middle = new HolePart();

  private final HolePart rim = new HolePart();

  /** Of each hole what is near its rim. */
  private final List<HolePart> rims = new ArrayList<>();

  /** Of each hole what is in it. */
  private final List<HolePart> single = new ArrayList<>();

  private final DeckImage deck;
  private final float[][] even;
  private final float[] scores;
  private final double radius;
  private final PointPx[] holes;

  private HoleColours(DeckImage deck, Layout layout, float[][] even, float[] scores) {
    this.deck = deck;
    this.even = even;
    this.scores = scores;
    this.radius = 0.5 * layout.grid().holeMm() / deck.mmPerPx();
    this.holes =
        layout.grid().sites().stream()
            .map(site -> deck.toPx(layout.grid().centre(site)))
            .toArray(PointPx[]::new);
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
    HoleColours looks = new HoleColours(deck, layout, even, scores);
    for (PointPx hole : looks.holes) {
      looks.add(hole);
    }
    return looks;
  }

  /** What is done with a pixel, given its index, about so many radii from a hole's middle. */
  private interface EachPixel {
    void see(int i, double radii);
  }

  /** Goes over a square about a hole, as wide as so many of its radii to either side. */
  private void about(PointPx c, double most, EachPixel each) {
    int width = deck.image().width();
    int bottom = (int) Math.min(deck.image().height() - 1.0, c.yPx() + most * radius);
    int right = (int) Math.min(width - 1.0, c.xPx() + most * radius);
    for (int y = (int) Math.max(0, c.yPx() - most * radius); y <= bottom; y++) {
      for (int x = (int) Math.max(0, c.xPx() - most * radius); x <= right; x++) {
        double dx = x - c.xPx();
        double dy = y - c.yPx();
        each.see(y * width + x, Math.sqrt(dx * dx + dy * dy) / radius);
      }
    }
  }

  private void add(PointPx hole) {
    HolePart in = new HolePart();
    HolePart near = new HolePart();
    about(
        hole,
        0.8,
        (i, radii) -> {
          if (radii < 0.4) {
            see(i, middle, in);
          } else if (radii > 0.5 && radii < 0.8) {
            see(i, rim, in, near);
            if (scores[i] <= LEAST_SCORE) {
              near.addDull(colour(i));
            }
          }
        });
    single.add(in);
    rims.add(near);
  }

  private void see(int i, HolePart... parts) {
    for (HolePart part : parts) {
      part.see();
    }
    if (scores[i] > LEAST_SCORE) {
      double[] colour = colour(i);
      for (HolePart part : parts) {
        part.add(colour);
      }
    }
  }

  private double[] colour(int i) {
    double green = even[1][i];
    double log = Math.log(green + LeafRule.FLOOR);
    return new double[] {
      log - Math.log(even[0][i] + LeafRule.FLOOR),
      log - Math.log(even[2][i] + LeafRule.FLOOR),
      green
    };
  }

  /** Returns what is about the middle of the holes, where plants stand. */
  HolePart middle() {
    return middle;
  }

  /** Returns what is in the holes near their rims, where plugs show. */
  HolePart rim() {
    return rim;
  }

  /** Returns the share of a colour beside the holes, where no plug can be, 0..1. */
  double shareBeside(double[] mode) {
    return shareBeside(mode, holes);
  }

  /** Looks there only now: most colours are known to be leaf before. */
  private double shareBeside(double[] mode, PointPx... some) {
    int[] seen = new int[2];
    for (PointPx hole : some) {
      about(
          hole,
          1.8,
          (i, radii) -> {
            if (radii > 1.3 && radii < 1.8) {
              seen[0]++;
              seen[1] += scores[i] > LEAST_SCORE && HolePart.isNear(colour(i), mode) ? 1 : 0;
            }
          });
    }
    return seen[1] / (double) Math.max(1, seen[0]);
  }

  /**
   * Returns how many times as much of a rim is grey as is of a colour, in the holes that show the
   * colour: each counts by how much of it it shows, so that a lone plug of the colour is not
   * outvoted by the grey ones of other holes.
   *
   * @param mode the colour
   * @param green what is darker is not counted as grey: the camera's floor drains dark plugs of
   *     colour
   */
  double timesGreyBeside(double[] mode, double green) {
    double grey = 0;
    double own = 0;
    for (HolePart each : rims) {
      double share = each.share(mode);
      grey += share * each.greyShare(green);
      own += share * share;
    }
    return own == 0 ? 0 : grey / own;
  }

  /** Returns the commonest colour near the rims, dull ones before vivid ones. */
  double[] mode() {
    double[] cells = new double[CELLS * CELLS];
    for (double[] s : rim.colours()) {
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
    if (share >= DULLER) {
      return false;
    }
    long full =
        IntStream.range(0, holes.length)
            .filter(h -> single.get(h).share(mode) > FULL && shareBeside(mode, holes[h]) < BARE)
            .count();
    return share < MUCH_DULLER ? full > 0 : full > 1;
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
        middle.colours().stream()
            .filter(s -> s[0] + s[1] >= heart)
            .mapToDouble(s -> s[2])
            .toArray();
    double[] here = rim.near(mode).stream().mapToDouble(s -> s[2]).toArray();
    return heart > 0
        && share > DULLER
        && share < PALER
        && Quantile.of(here, 0.5) > AS_BRIGHT * Quantile.of(leaf, 0.5);
  }

  /** Returns u + v of the leaf in a part: that of its more vivid quarter begins there. */
  private static double vividness(HolePart part) {
    double[] vivid = part.colours().stream().mapToDouble(s -> s[0] + s[1]).toArray();
    return vivid.length == 0 ? 0 : Quantile.of(vivid, 0.75);
  }
}
