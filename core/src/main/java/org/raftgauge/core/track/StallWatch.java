// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * Weighs whether a plant has all but stopped growing since one of its last sights.
 *
 * <p>For each of these sights the plant is followed under three suppositions, begun from what was
 * believed of it there: that it grows as ever, at half the reference's rate, or at an eighth. The
 * evidence is the log of the odds of the last over the better of the others, at the sight from
 * which it is largest: a generalised likelihood ratio with known size and unknown onset (Basseville
 * and Nikiforov 1993, Detection of Abrupt Changes, section 2.4.3; from memory). One-step errors
 * alone, as a CUSUM sums them, forget how far the plant has fallen behind meanwhile.
 */
final class StallWatch {
  /** Growth missing under each supposition, as a share of the reference's; the first is ever's. */
  private static final double[] MISSING = {0, 0.5, 0.875};

  private static final int STALLED = 2;

  /** Sights from which on it may have stalled; earlier ones would show as lagging by now. */
  private static final int MOST_ONSETS = 6;

  /** A sight counts as no farther off than so many deviations. */
  private static final double BEND = 3;

  /** A plant that is slow anyhow is as ever up to this share of the reference's rate. */
  private static final double SLOW_ANYHOW = 0.25;

  /** Log odds that stalling is likelier beforehand than growing at half the rate. */
  private static final double OVER_HALF = 1;

  private final TrackRules rules;
  private final Deque<Onset> onsets = new ArrayDeque<>();
  private double evidence;

  /** A plant followed from one of its sights on. */
  private static final class Onset {
    private final double[] share = new double[MISSING.length];
    private final double[] lnLikelihood = new double[MISSING.length];
    private final double ownRate;
    private double variance;

    Onset(double share, double variance, double ownRate) {
      Arrays.fill(this.share, share);
      this.variance = variance;
      this.ownRate = ownRate;
    }

    void take(Sight sight, double drift) {
      variance += drift * drift * sight.days;
      double total = variance + sight.variance;
      double gain = variance / total;
      for (int h = 0; h < MISSING.length; h++) {
        double own = h == 0 ? bounded(ownRate, SLOW_ANYHOW * sight.rate) : -MISSING[h] * sight.rate;
        share[h] += own * sight.days;
        double off = bounded((sight.y - share[h]) / Math.sqrt(total), BEND);
        lnLikelihood[h] -= off * off / 2;
        share[h] += gain * off * Math.sqrt(total);
      }
      variance *= 1 - gain;
    }

    double evidence() {
      double overEver = lnLikelihood[STALLED] - lnLikelihood[0];
      double overHalf = lnLikelihood[STALLED] - lnLikelihood[1];
      return Math.min(overEver, overHalf + OVER_HALF);
    }

    private static double bounded(double value, double most) {
      return Math.max(-most, Math.min(most, value));
    }
  }

  /**
   * A sight.
   *
   * @param y ln(area) less the expected
   * @param variance of y, without what stays from evening to evening
   * @param days since the sight before
   * @param rate the reference's growth rate, 1/day
   */
  record Sight(double y, double variance, double days, double rate) {}

  StallWatch(TrackRules rules) {
    this.rules = rules;
  }

  /**
   * Takes a sight.
   *
   * @param sight what was seen
   * @param before what was believed before it
   */
  void take(Sight sight, PlantTrack before) {
    if (onsets.size() == MOST_ONSETS) {
      onsets.removeFirst();
    }
    onsets.addLast(new Onset(before.share(), before.ownVariance(), before.rate()));
    evidence = 0;
    for (Onset onset : onsets) {
      onset.take(sight, rules.shareDrift());
      evidence = Math.max(evidence, onset.evidence());
    }
  }

  /** Returns the log of the odds; 0 where it grows. */
  double evidence() {
    return evidence;
  }
}
