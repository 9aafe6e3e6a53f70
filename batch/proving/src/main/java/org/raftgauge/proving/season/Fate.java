// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import java.util.Random;

/**
 * What becomes of a plant.
 *
 * @param kind what
 * @param onsetDat from when, days after transplant
 * @param factor on its growth rate from then on
 */
record Fate(Kind kind, double onsetDat, double factor) {

  /** What may befall a plant. */
  enum Kind {
    HEALTHY,
    LAGS,
    STALLS,
    DIES,
    NEVER_EMERGES
  }

  static Fate draw(Random random) {
    double u = random.nextDouble();
    double onset = 2 + 18 * random.nextDouble();
    if (u < 0.06) {
      return new Fate(Kind.LAGS, onset * 0.7, 0.35 + 0.55 * random.nextDouble());
    }
    if (u < 0.09) {
      return new Fate(Kind.STALLS, onset, 0.15 * random.nextDouble());
    }
    if (u < 0.105) {
      return new Fate(Kind.DIES, onset, -2);
    }
    if (u < 0.12) {
      return new Fate(Kind.NEVER_EMERGES, 0, 0);
    }
    return new Fate(Kind.HEALTHY, Double.MAX_VALUE, 1);
  }
}
