// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.farmyear;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.raftgauge.proving.verdict.Plight;

/** A plant of the farm year: logistic in area, with a vigour of its own and what befalls it. */
final class Lettuce {
  private static final double CAPACITY_CM2 = 430;
  private static final double START_CM2 = 9;

  private final Plight plight;
  private final double vigour;
  private final double slowed;
  private final double bias;
  private double size = START_CM2;
  private double lost;

  /**
   * @param draw the farm's dice
   * @param raftFactor what its raft does to its size
   */
  Lettuce(SplittableRandom draw, double raftFactor) {
    // A triangular spread of 17 %: no long tails, unlike a normal one.
    double triangle = draw.nextDouble() + draw.nextDouble() - 1;
    this.vigour = raftFactor * Math.exp(0.17 * triangle * Math.sqrt(6));
    // What stays with the measure of its site: uniform with a deviation of 2.5 %.
    this.bias = Math.exp(0.025 * Math.sqrt(12) * (draw.nextDouble() - 0.5));
    double kind = draw.nextDouble();
    OptionalDouble onset = OptionalDouble.of(draw.nextDouble(1, 22));
    double factor = draw.nextDouble(0.3, 0.9);
    if (kind < 0.05) {
      this.plight =
          new Plight(
              "lags", factor < 0.6 ? "growth under 60 %" : "growth 60 to 90 %", onset, false);
      this.slowed = factor;
    } else if (kind < 0.08) {
      this.plight = new Plight("stalls", "", onset, true);
      this.slowed = draw.nextDouble(0, 0.1);
    } else if (kind < 0.095) {
      this.plight = new Plight("wilts", "", onset, true);
      this.slowed = 0;
    } else if (kind < 0.105) {
      this.plight = new Plight("never emerges", "", OptionalDouble.of(0), true);
      this.slowed = 1;
    } else {
      this.plight = Plight.healthy();
      this.slowed = 1;
    }
  }

  Plight plight() {
    return plight;
  }

  double bias() {
    return bias;
  }

  /** Returns the area of a plant of vigour 1 that nothing befell. */
  double usualCm2() {
    return size;
  }

  /** Returns the true area. */
  double areaCm2() {
    return plight.kind().equals("never emerges") ? 0 : vigour * size * Math.exp(-lost);
  }

  /** Cuts it to a stubble. */
  void cut() {
    size = START_CM2;
  }

  /**
   * Grows for a day.
   *
   * @param dat days after transplant at the end of it
   * @param pace of the day: 1 is usual
   * @param feed of the pond: 1 is usual
   */
  void grow(double dat, double pace, double feed) {
    double before = size;
    size += 0.235 * pace * size * (1 - size / CAPACITY_CM2);
    double grown = Math.log(size / before);
    boolean befallen = plight.onsetDat().isPresent() && dat > plight.onsetDat().getAsDouble();
    double factor = feed * (befallen ? slowed : 1);
    lost += (1 - factor) * grown;
    if (befallen && plight.kind().equals("wilts")) {
      lost += 0.12;
    }
  }
}
