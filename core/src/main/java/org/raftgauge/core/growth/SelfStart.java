// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.growth.FitRule.Scale;
import org.raftgauge.core.leastsquares.Points;

/**
 * First guesses of the working parameters: a coarse grid over the shape, scaled to the span of the
 * days, the log of the scale solved exactly at each node (it is linear), the best few nodes kept.
 *
 * <p>Source: the separable ("variable projection") idea of Golub and Pereyra 1973, SIAM J. Numer.
 * Anal. 10:413-432, on a grid. The grid's reach is a working choice: rates from half a turn to
 * forty turns of the exponential over the span.
 */
final class SelfStart {
  private static final int KEPT = 4;
  private static final double[] TURNS = {0.5, 1, 1.8, 3, 4.5, 6.5, 9, 13, 20, 40};
  private static final double[] PLACES = {-0.3, 0, 0.2, 0.35, 0.5, 0.65, 0.8, 1, 1.3};
  private static final double[] ZEROS = {0.001, 0.01, 0.03, 0.1, 0.3, 1, 3};
  private static final double[] SHAPES = {0.2, 1, 4};

  private static final class Node {
    private final double[] working;
    private final double rss;

    Node(double[] working, double rss) {
      this.working = working;
      this.rss = rss;
    }

    double rss() {
      return rss;
    }

    double[] working() {
      return working;
    }
  }

  /** Rounding of a sum of squares. */
  private static final double ROUNDING = 1e-9;

  /** Of so many points one is looked at first. */
  private static final int FEW = 5;

  private final CurveModel model;
  private final Scale scale;
  private final Sample all;
  private final Sample few;
  private final double first;
  private final double span;

  private SelfStart(CurveModel model, Scale scale, Points points) {
    this.model = model;
    this.scale = scale;
    this.all = Sample.of(points, 1);
    this.few = Sample.of(points, FEW);
    double lo = Double.POSITIVE_INFINITY;
    double hi = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < points.size(); i++) {
      if (points.weight(i) > 0) {
        lo = Math.min(lo, points.x(i));
        hi = Math.max(hi, points.x(i));
      }
    }
    this.first = lo;
    this.span = Math.max(hi - lo, 1e-9);
  }

  /** Returns the best few starts, best first; empty where no node gives a curve above 0. */
  static List<double[]> of(CurveModel model, Scale scale, Points points) {
    return new SelfStart(model, scale, points).best();
  }

  /**
   * Keeps the best few. Some of the points never fit worse than all of them do, so that a node
   * which they rule out needs no look at the others.
   */
  private List<double[]> best() {
    List<Node> kept = new ArrayList<>();
    for (double[] shape : shapes()) {
      double most = kept.size() < KEPT ? Double.POSITIVE_INFINITY : kept.get(KEPT - 1).rss();
      if (!(scaled(shape, few).rss() * (1 - ROUNDING) > most)) {
        keep(scaled(shape, all), kept);
      }
    }
    return kept.stream().map(Node::working).toList();
  }

  /** Puts a node after those that are no worse, and drops what is one too many. */
  private static void keep(Node node, List<Node> kept) {
    int place = 0;
    while (place < kept.size() && kept.get(place).rss() <= node.rss()) {
      place++;
    }
    if (Double.isFinite(node.rss()) && place < KEPT) {
      kept.add(place, node);
      kept.subList(Math.min(KEPT, kept.size()), kept.size()).clear();
    }
  }

  private List<double[]> shapes() {
    List<double[]> out = new ArrayList<>();
    for (double turns : TURNS) {
      double rate = turns / span;
      switch (model) {
        case EXPONENTIAL -> {
          out.add(new double[] {0, rate});
          out.add(new double[] {0, -rate});
        }
        case MONOMOLECULAR -> {
          for (double zero : ZEROS) {
            out.add(new double[] {0, Math.log(rate), first - zero * span});
          }
        }
        case RICHARDS -> addPlaces(out, rate, SHAPES);
        case LOGISTIC, GOMPERTZ, EXPOLINEAR -> addPlaces(out, rate, new double[0]);
      }
    }
    return out;
  }

  private void addPlaces(List<double[]> out, double rate, double[] shapes) {
    for (double place : PLACES) {
      double day = first + place * span;
      if (shapes.length == 0) {
        out.add(new double[] {0, Math.log(rate), day});
      }
      for (double shape : shapes) {
        out.add(new double[] {0, Math.log(rate), day, Math.log(shape)});
      }
    }
  }

  /** Solves the log of the scale, lower bounds counting as observed, and the sum of squares. */
  private Node scaled(double[] shape, Sample points) {
    double[] ln = new double[points.dat.length];
    model.shape().lnAreas(points.dat, shape, ln);
    double[] working = shape.clone();
    working[0] = scale == Scale.LN_AREA ? points.meanDifference(ln) : Math.log(points.ratio(ln));
    double rss = 0;
    for (int i = 0; i < ln.length; i++) {
      double fitted = ln[i] + working[0];
      double r = points.y[i] - (scale == Scale.LN_AREA ? fitted : Math.exp(fitted));
      rss += points.weights[i] > 0 ? points.weights[i] * r * r : 0;
    }
    return new Node(working, rss);
  }

  /** Points as arrays. */
  private static final class Sample {
    private final double[] dat;
    private final double[] y;
    private final double[] weights;

    private Sample(int n) {
      dat = new double[n];
      y = new double[n];
      weights = new double[n];
    }

    /** Takes the first point and every {@code step}-th after it. */
    static Sample of(Points points, int step) {
      Sample sample = new Sample((points.size() + step - 1) / step);
      for (int i = 0; i < sample.dat.length; i++) {
        sample.dat[i] = points.x(i * step);
        sample.y[i] = points.y(i * step);
        sample.weights[i] = points.weight(i * step);
      }
      return sample;
    }

    double meanDifference(double[] ln) {
      double sum = 0;
      double total = 0;
      for (int i = 0; i < ln.length; i++) {
        if (weights[i] > 0) {
          sum += weights[i] * (y[i] - ln[i]);
          total += weights[i];
        }
      }
      return sum / total;
    }

    double ratio(double[] ln) {
      double over = 0;
      double under = 0;
      for (int i = 0; i < ln.length; i++) {
        if (weights[i] > 0) {
          double m = Math.exp(ln[i]);
          over += weights[i] * y[i] * m;
          under += weights[i] * m * m;
        }
      }
      return over / under;
    }
  }
}
