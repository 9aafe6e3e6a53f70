// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.Layout;
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

  private BoardLight() {}

  /** Where the likeliest colour lies this far on leaf's side, no board shows at all. */
  private static final double LEAF_TINT = 3 * BoardBalance.TINT_SPREAD;

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

  /** Six numbers need no more points: they know a surface to a thousandth of its noise. */
  private static final int MOST_POINTS = 8000;

  /** What is said of such light: five times too little green. */
  private static final double STARVED = Math.log(5);

  /** Evens the light on a deck picture. */
  static EvenedLight of(DeckImage deck, Layout layout) {
    DeckSamples looked = new DeckSamples(deck, layout);
    return even(looked.board(), looked.markerWhite());
  }

  private static EvenedLight even(List<double[]> samples, List<double[]> white) {
    if (growthLamp(samples)) {
      double[][] flat = {Surface.flat(STARVED), Surface.flat(STARVED), Surface.flat(0)};
      return new EvenedLight(LightSource.CAMERA, flat, 1, false);
    }
    double[] peak = BoardBalance.peak(samples, white);
    List<double[]> board = new ArrayList<>();
    for (double[] s : samples) {
      if (Math.abs(s[2] - peak[0]) < CLUSTER && Math.abs(s[3] - peak[1]) < CLUSTER) {
        board.add(s);
      }
    }
    boolean leaf = peak[0] + peak[1] - BoardBalance.whiteTint(white) < -LEAF_TINT;
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

  private static EvenedLight withoutBoard(List<double[]> white) {
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

  private static double[] fit(List<double[]> samples, int column) {
    int step = (samples.size() + MOST_POINTS - 1) / MOST_POINTS;
    double[][] points = new double[(samples.size() + step - 1) / step][];
    for (int i = 0; i < points.length; i++) {
      double[] s = samples.get(i * step);
      points[i] = new double[] {s[0], s[1], s[column]};
    }
    return Surface.fit(points, 0.01);
  }

  private static double quantile(List<double[]> samples, int column, double share) {
    return DeckSamples.quantile(samples, column, share);
  }
}
