// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

/**
 * What is believed of one plant: its ln(share of expected) and how fast that changes.
 *
 * <p>A local linear trend with a rate that decays, followed by a Kalman filter (Durbin and Koopman
 * 2012, "Time Series Analysis by State Space Methods", sections 3.2 and 4.3; from memory): {@code
 * d' = d + v dt}, {@code v' = v exp(-dt / memory)}. A single sight that is far out counts little; a
 * second one on the same side is believed and the state is let loose.
 */
final class PlantTrack {
  private static final double FAR = 3;
  private static final double FIRST_RATE_SD = 0.02;
  private static final double LOOSE_RATE_SD = 0.1;

  private final TrackRules rules;
  private double share;
  private double rate;
  private double varShare;
  private double varRate;
  private double covariance;
  private double lastAge;
  private double far;
  private double innovation;
  private double stall;
  private int sights;
  private double lasting;

  /**
   * The error of a sight.
   *
   * @param fresh standard deviation of what is new in every photo
   * @param lasting of what stays from evening to evening and never averages out
   * @param common by how much its raft's plants depart together, which tells no stall of one plant
   */
  record ErrorOf(double fresh, double lasting, double common) {
    ErrorOf(double fresh, double lasting) {
      this(fresh, lasting, 0);
    }
  }

  PlantTrack(TrackRules rules) {
    this.rules = rules;
    this.varShare = rules.healthySd() * rules.healthySd();
    this.varRate = FIRST_RATE_SD * FIRST_RATE_SD;
  }

  /**
   * Takes a sight.
   *
   * @param age days
   * @param y ln(area) less the expected, not finite is not allowed
   * @param error of y
   * @param expectedRate growth rate of the reference, 1/day
   */
  void take(double age, double y, ErrorOf error, double expectedRate) {
    double variance = error.fresh() * error.fresh();
    lasting = error.lasting();
    double dt = sights == 0 ? 0 : Math.max(0, age - lastAge);
    if (sights > 0) {
      addStallEvidence(y, dt, variance + error.common() * error.common(), expectedRate);
      predict(dt);
    }
    double spread = Math.sqrt(varShare + variance);
    innovation = (y - share) / spread;
    double weight = variance;
    if (Math.abs(innovation) > FAR && sights > 0) {
      if (far * innovation > 0) {
        varShare += y * y + share * share - 2 * y * share;
        varRate += LOOSE_RATE_SD * LOOSE_RATE_SD;
      } else {
        weight *= innovation * innovation;
      }
      far = innovation;
    } else {
      far = 0;
    }
    update(y, weight);
    lastAge = age;
    sights++;
  }

  /** Takes a lower bound: it tells something only where it lies over what is believed. */
  void takeAtLeast(double age, double y, ErrorOf error, double expectedRate) {
    double dt = sights == 0 ? 0 : Math.max(0, age - lastAge);
    if (sights == 0 || y > share + rate * dt) {
      take(age, y, error, expectedRate);
    } else {
      predict(dt);
      lastAge = age;
      sights++;
    }
  }

  /** Notes a sight that is far out and not taken: a second one on the same side is believed. */
  void noteFar(double by) {
    far = by;
  }

  /** Moves the belief by a step that was found not to be the plant's. */
  void shift(double step) {
    share += step;
  }

  private void predict(double dt) {
    double keep = Math.exp(-dt / rules.rateMemoryDays());
    share += rate * dt;
    rate *= keep;
    double v11 = varShare + 2 * dt * covariance + dt * dt * varRate;
    double v12 = keep * (covariance + dt * varRate);
    varShare = v11 + rules.shareDrift() * rules.shareDrift() * dt;
    covariance = v12;
    varRate = keep * keep * varRate + rules.rateDrift() * rules.rateDrift() * dt;
  }

  private void update(double y, double variance) {
    double total = varShare + variance;
    double gainShare = varShare / total;
    double gainRate = covariance / total;
    double error = y - share;
    share += gainShare * error;
    rate += gainRate * error;
    varRate -= gainRate * covariance;
    covariance *= 1 - gainShare;
    varShare *= 1 - gainShare;
  }

  /** Adds the log likelihood ratio of "grows at an eighth of the reference" over "as ever". */
  private void addStallEvidence(double y, double dt, double variance, double expectedRate) {
    double missing = Math.max(0, 0.875 * expectedRate * dt);
    double total = varShare + variance + rules.shareDrift() * rules.shareDrift() * dt;
    double error = y - share;
    double ratio = (-2 * error * missing - missing * missing) / (2 * total);
    stall = Math.max(0, stall + Math.max(-3, Math.min(3, ratio)));
  }

  /** Returns the ln(share) that is foretold for an age. */
  double foretold(double age) {
    return share + rate * Math.max(0, age - lastAge);
  }

  /** Returns the age at the last sight, days. */
  double lastAge() {
    return lastAge;
  }

  double share() {
    return share;
  }

  double rate() {
    return rate;
  }

  double shareSd() {
    return Math.sqrt(varShare + lasting * lasting);
  }

  double rateSd() {
    return Math.sqrt(varRate);
  }

  double innovation() {
    return innovation;
  }

  int sights() {
    return sights;
  }

  double stallEvidence() {
    return stall;
  }
}
