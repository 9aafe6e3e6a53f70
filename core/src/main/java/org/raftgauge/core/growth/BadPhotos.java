// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.raftgauge.core.growth.FitRule.Scale;
import org.raftgauge.core.leastsquares.MeanFunction;
import org.raftgauge.core.leastsquares.NonlinearFit;
import org.raftgauge.core.leastsquares.Points;

/**
 * Finds points that no candidate curve comes near.
 *
 * <p>Each candidate is fitted with Huber's weights (tuning 1.345), the scale being the median of
 * the absolute residuals but the p smallest over 0.6745, and never under half the stated error. A
 * point is bad where every candidate that fits the rest comparably well has it more than 4.5 scales
 * off: beyond what a mild outlier does, and rare by chance (checked by simulation in the tests).
 *
 * <p>Sources: Huber 1981, Robust Statistics, chapter 7; Holland and Welsch 1977, Commun. Statist.
 * A6 813-827 (scale).
 */
final class BadPhotos {
  private static final double TUNING = 1.345;
  private static final double FAR_OFF = 4.5;
  private static final int ROUNDS = 15;

  /** A candidate is asked only where its scale is at most twice the finest one's. */
  private static final double COMPARABLE = 2;

  /** The finest scale that a fit can have: half the stated error. */
  private static final double FINEST = 0.5;

  /** At most one point in four may be left out. */
  private static final int SHARE = 4;

  private BadPhotos() {}

  /** Distances of the points from a robust fit, in its scale. */
  private static final class Robust {
    private final double[] off;
    private final double scale;

    Robust(double[] off, double scale) {
      this.off = off;
      this.scale = scale;
    }

    /** Says whether it comes near every point and is asked whatever the others' scales are. */
    boolean clears() {
      return scale <= COMPARABLE * FINEST && Arrays.stream(off).allMatch(o -> o <= FAR_OFF);
    }
  }

  /** Returns the places of the bad points, ascending. */
  static List<Integer> of(Points points, FitRule rule, List<Candidate> candidates) {
    List<Robust> fits = new ArrayList<>();
    double finest = Double.POSITIVE_INFINITY;
    List<Candidate> closestFirst =
        candidates.stream().sorted(Comparator.comparingDouble(c -> c.fit().rss())).toList();
    for (Candidate candidate : closestFirst) {
      if (points.observed() >= candidate.model().parameterCount() + 3) {
        Robust fit = robust(points, rule.scale(), candidate);
        if (fit.clears()) {
          return List.of();
        }
        fits.add(fit);
        finest = Math.min(finest, fit.scale);
      }
    }
    double[] least = new double[points.size()];
    Arrays.fill(least, Double.POSITIVE_INFINITY);
    for (Robust fit : fits) {
      for (int i = 0; i < least.length && fit.scale <= COMPARABLE * finest; i++) {
        least[i] = Math.min(least[i], fit.off[i]);
      }
    }
    return fits.isEmpty() ? List.of() : worst(least, points.observed() / SHARE);
  }

  private static List<Integer> worst(double[] off, int most) {
    List<Integer> bad = new ArrayList<>();
    for (int i = 0; i < off.length; i++) {
      if (off[i] > FAR_OFF) {
        bad.add(i);
      }
    }
    bad.sort((a, b) -> Double.compare(off[b], off[a]));
    return bad.stream().limit(most).sorted().toList();
  }

  private static Robust robust(Points points, Scale scale, Candidate candidate) {
    MeanFunction mean = CurveMean.of(candidate.model(), scale);
    double[] at = candidate.fit().parameters();
    Robust now = standardised(points, mean, at);
    for (int round = 0; round < ROUNDS; round++) {
      double[] weights = new double[points.size()];
      for (int i = 0; i < weights.length; i++) {
        weights[i] = points.weight(i) * Math.min(1, TUNING / Math.max(now.off[i], 1e-9));
      }
      at = NonlinearFit.towards(mean, points.withWeights(weights), candidate.fit().sigma(), at);
      Robust next = standardised(points, mean, at);
      boolean settled = change(now.off, next.off) < 1e-3;
      now = next;
      if (settled) {
        break;
      }
    }
    return now;
  }

  private static Robust standardised(Points points, MeanFunction mean, double[] at) {
    double[] off = new double[points.size()];
    double[] gradient = new double[at.length];
    double[] open = new double[points.observed()];
    int n = 0;
    for (int i = 0; i < off.length; i++) {
      double r = points.y(i) - mean.at(points.x(i), at, gradient);
      boolean bound = points.isLowerBound(i);
      off[i] = Math.sqrt(points.weight(i)) * (bound ? Math.max(0, r) : Math.abs(r));
      if (!bound && points.weight(i) > 0) {
        open[n++] = off[i];
      }
    }
    Arrays.sort(open);
    double scale = Math.max(FINEST, median(Arrays.copyOfRange(open, at.length, n)) / 0.6745);
    for (int i = 0; i < off.length; i++) {
      off[i] /= scale;
    }
    return new Robust(off, scale);
  }

  private static double median(double[] sorted) {
    int n = sorted.length;
    return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
  }

  private static double change(double[] a, double[] b) {
    double most = 0;
    for (int i = 0; i < a.length; i++) {
      most = Math.max(most, Math.abs(a[i] - b[i]));
    }
    return most;
  }
}
