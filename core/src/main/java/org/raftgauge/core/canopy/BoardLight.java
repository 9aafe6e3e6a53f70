// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.TagPlace;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.DeckImage;

/**
 * Evens the light on a deck picture: finds the board's own colour among everything on it and fits
 * low-order surfaces to it.
 *
 * <p>The board is the colour that fills a good share of the deck while lying near the line of
 * daylight and lamp light, on which red and blue trade against each other: green leaf lies far on
 * one side of it, red and purple leaf on the other. The white about the corner markers, where there
 * is one, breaks the tie on boards that canopy has closed over.
 */
final class BoardLight {
  /** Pixels looked at, spread over the board. */
  private static final int SAMPLES = 40_000;

  /** Side of a cell of the histogram of colour balances, ln. */
  private static final double CELL = 0.05;

  private static final int CELLS = 96;

  /**
   * Spread of ln(R/G) + ln(B/G) of boards under lights that can be worked with, ln; leaf lies at
   * 1.2 and more (measured on rendered and real leaf).
   */
  private static final double TINT_SPREAD = 0.40;

  /** Where the likeliest colour lies this far on leaf's side, no board shows at all. */
  private static final double LEAF_TINT = 3 * TINT_SPREAD;

  /** Half width of the board's cluster of colour balances, ln. */
  private static final double CLUSTER = 0.15;

  /** Share of samples under which the board is not seen well enough to fit a surface to it. */
  private static final double LEAST_SHARE = 0.01;

  /**
   * A board at least this share as bright as the brightest things on its deck serves as the white
   * itself.
   */
  private static final double BRIGHT = 0.5;

  /**
   * A board dimmer than this share of full scale is not scaled up to white: its noise would be
   * scaled with it.
   */
  private static final double LIT = 0.18;

  /**
   * Red and blue both this much over green, ln, on the brightest third of a deck: no daylight or
   * white lamp comes near half of it, the lamps for growth of Pennisi et al. 2019 (Sci. Rep.
   * 9:14127) pass twice it.
   */
  private static final double LAMP = 0.8;

  /** What is said of such light: five times too little green. */
  private static final double STARVED = Math.log(5);

  private static final double MOST_LIGHT = 0.985;
  private static final double LEAST_LIGHT = 0.004;

  private final DeckImage deck;
  private final Layout layout;

  private BoardLight(DeckImage deck, Layout layout) {
    this.deck = deck;
    this.layout = layout;
  }

  /** Evens the light on a deck picture. */
  static EvenedLight of(DeckImage deck, Layout layout) {
    return new BoardLight(deck, layout).even();
  }

  private EvenedLight even() {
    List<double[]> samples = samples();
    List<double[]> white = markerWhite();
    if (growthLamp(samples)) {
      double[][] flat = {Surface.flat(STARVED), Surface.flat(STARVED), Surface.flat(0)};
      return new EvenedLight(LightSource.CAMERA, flat, 1, false);
    }
    double[] peak = peak(samples, white);
    List<double[]> board = new ArrayList<>();
    for (double[] s : samples) {
      if (Math.abs(s[2] - peak[0]) < CLUSTER && Math.abs(s[3] - peak[1]) < CLUSTER) {
        board.add(s);
      }
    }
    boolean leaf = peak[0] + peak[1] - whiteTint(white) < -LEAF_TINT;
    if (leaf || board.size() < Math.max(30, LEAST_SHARE * samples.size())) {
      return withoutBoard(white);
    }
    double green = quantile(board, 4, 0.5);
    boolean bright = Math.exp(green) > BRIGHT * Math.exp(quantile(samples, 4, 0.97));
    double[] strength =
        bright && Math.exp(green) > LIT
            ? brightSurface(board)
            : Surface.flat(whiteGreen(white, green));
    double[][] surfaces = {fit(board, 2), fit(board, 3), strength};
    return new EvenedLight(LightSource.BOARD, surfaces, Math.exp(green), bright);
  }

  /**
   * Says whether red and blue both outshine green by far on the brightest part of the deck: lamps
   * for growth, under which the board's own balance would be looked for in vain near daylight.
   */
  private static boolean growthLamp(List<double[]> samples) {
    if (samples.isEmpty()) {
      return false;
    }
    double bright = quantile(samples, 4, 0.7);
    double[] least =
        samples.stream()
            .filter(s -> s[4] >= bright)
            .mapToDouble(s -> Math.min(s[2], s[3]))
            .toArray();
    return Quantile.of(least, 0.5) > LAMP;
  }

  /**
   * White's strength where the board is too dark to tell it: the markers' white, else the brightest
   * a camera usually gives white.
   */
  private static double whiteGreen(List<double[]> white, double boardGreen) {
    return white.isEmpty() ? Math.max(boardGreen, Math.log(0.6)) : quantile(white, 4, 0.7);
  }

  /** The board's strength where no shade lies on it: shade is not the board's own colour. */
  private static double[] brightSurface(List<double[]> board) {
    double lit = quantile(board, 4, 0.75);
    List<double[]> unshaded = board.stream().filter(s -> s[4] > lit - 0.7).toList();
    return fit(unshaded, 4);
  }

  private EvenedLight withoutBoard(List<double[]> white) {
    if (white.size() < 30) {
      return EvenedLight.ofCamera();
    }
    double green = quantile(white, 4, 0.7);
    double[][] flat = {
      Surface.flat(quantile(white, 2, 0.5)),
      Surface.flat(quantile(white, 3, 0.5)),
      Surface.flat(green)
    };
    return new EvenedLight(LightSource.MARKER_WHITE, flat, Math.exp(green), true);
  }

  /**
   * Samples (u, v, ln R/G, ln B/G, ln G) of the deck inside the board, off the markers and the tag.
   */
  private List<double[]> samples() {
    List<double[]> samples = new ArrayList<>();
    int width = deck.image().width();
    int height = deck.image().height();
    int step = Math.max(1, (int) Math.sqrt((double) width * height / SAMPLES));
    for (int y = step / 2; y < height; y += step) {
      for (int x = step / 2; x < width; x += step) {
        PointMm at = deck.toMm(new PointPx(x, y));
        if (deck.seen(x, y) && onBareBoard(at)) {
          sample(x, y, samples);
        }
      }
    }
    return samples;
  }

  private boolean onBareBoard(PointMm at) {
    double rim = 0.01 * layout.board().widthMm();
    boolean inside =
        at.xMm() > rim
            && at.yMm() > rim
            && at.xMm() < layout.board().widthMm() - rim
            && at.yMm() < layout.board().lengthMm() - rim;
    return inside && !onMark(at);
  }

  private boolean onMark(PointMm at) {
    for (PointMm c : layout.markers().map(CornerMarkers::centresMm).orElse(List.of())) {
      double reach = 0.7 * layout.markers().orElseThrow().sideMm();
      if (Math.abs(at.xMm() - c.xMm()) < reach && Math.abs(at.yMm() - c.yMm()) < reach) {
        return true;
      }
    }
    TagPlace tag = layout.tag().orElse(new TagPlace(-1e4, -1e4, 1));
    double reach = 0.7 * tag.sideMm();
    return Math.abs(at.xMm() - tag.xMm()) < reach && Math.abs(at.yMm() - tag.yMm()) < reach;
  }

  /**
   * The same of the ring of white that a marker keeps about itself, one cell (an eighth of its
   * side) wide.
   */
  private List<double[]> markerWhite() {
    List<double[]> samples = new ArrayList<>();
    if (layout.markers().isEmpty()) {
      return samples;
    }
    double side = layout.markers().get().sideMm();
    double ring = side * (0.5 + 1 / 16.0);
    for (PointMm c : layout.markers().get().centresMm()) {
      for (double along = -ring; along <= ring; along += deck.mmPerPx()) {
        ringSample(c.xMm() + along, c.yMm() - ring, samples);
        ringSample(c.xMm() + along, c.yMm() + ring, samples);
        ringSample(c.xMm() - ring, c.yMm() + along, samples);
        ringSample(c.xMm() + ring, c.yMm() + along, samples);
      }
    }
    if (samples.isEmpty()) {
      return samples;
    }
    double bright = quantile(samples, 4, 0.8);
    return samples.stream().filter(s -> s[4] > bright - 0.25).toList();
  }

  private void ringSample(double xMm, double yMm, List<double[]> samples) {
    PointPx p = deck.toPx(new PointMm(xMm, yMm));
    int x = (int) Math.round(p.xPx());
    int y = (int) Math.round(p.yPx());
    if (x >= 0
        && y >= 0
        && x < deck.image().width()
        && y < deck.image().height()
        && deck.seen(x, y)) {
      sample(x, y, samples);
    }
  }

  private void sample(int x, int y, List<double[]> samples) {
    int i = 3 * (y * deck.image().width() + x);
    byte[] rgb = deck.image().rgb();
    double r = Srgb.linear(rgb[i]);
    double g = Srgb.linear(rgb[i + 1]);
    double b = Srgb.linear(rgb[i + 2]);
    double most = Math.max(r, Math.max(g, b));
    boolean halfClipped = most > MOST_LIGHT && Math.min(r, Math.min(g, b)) < MOST_LIGHT;
    if (halfClipped || most < LEAST_LIGHT) {
      return;
    }
    double floor = 0.001;
    samples.add(
        new double[] {
          2.0 * x / deck.image().width() - 1,
          2.0 * y / deck.image().height() - 1,
          Math.log((r + floor) / (g + floor)),
          Math.log((b + floor) / (g + floor)),
          Math.log(g + floor)
        });
  }

  /** The colour balance that is most likely the board's. */
  private static double[] peak(List<double[]> samples, List<double[]> white) {
    double[] cells = new double[CELLS * CELLS];
    for (double[] s : samples) {
      int p = cell(s[2]);
      int q = cell(s[3]);
      if (p > 0 && q > 0 && p < CELLS - 1 && q < CELLS - 1) {
        spread(cells, p, q);
      }
    }
    double whiteTint = whiteTint(white);
    double[] best = {0, 0, -1};
    for (int i = 0; i < cells.length; i++) {
      double p = value(i / CELLS);
      double q = value(i % CELLS);
      double score = cells[i] * likelihood(p, q, whiteTint);
      if (score > best[2]) {
        best = new double[] {p, q, score};
      }
    }
    return best;
  }

  private static double whiteTint(List<double[]> white) {
    return white.isEmpty() ? 0 : quantile(white, 2, 0.5) + quantile(white, 3, 0.5);
  }

  private static double likelihood(double p, double q, double whiteTint) {
    double tint = p + q - whiteTint;
    return Math.exp(-0.5 * (tint / TINT_SPREAD) * (tint / TINT_SPREAD));
  }

  private static void spread(double[] cells, int p, int q) {
    for (int dp = -1; dp <= 1; dp++) {
      for (int dq = -1; dq <= 1; dq++) {
        cells[(p + dp) * CELLS + q + dq] += (2 - Math.abs(dp)) * (2 - Math.abs(dq)) / 16.0;
      }
    }
  }

  private static int cell(double value) {
    return (int) Math.floor(value / CELL) + CELLS / 2;
  }

  private static double value(int cell) {
    return (cell - CELLS / 2 + 0.5) * CELL;
  }

  private static double[] fit(List<double[]> samples, int column) {
    double[][] points = new double[samples.size()][];
    for (int i = 0; i < points.length; i++) {
      double[] s = samples.get(i);
      points[i] = new double[] {s[0], s[1], s[column]};
    }
    return Surface.fit(points, 0.01);
  }

  private static double quantile(List<double[]> samples, int column, double share) {
    return Quantile.of(samples.stream().mapToDouble(s -> s[column]).toArray(), share);
  }
}
