// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

import org.raftgauge.proving.solid.Noise;

/** The outline of a leaf blade: half width along the midrib, as a share of the widest. */
enum Outline {
  /** Nearly round, blunt, widest past the middle. */
  ROUND {
    @Override
    double halfWidth(double s) {
      return ellipse(Math.pow(s, 1.18), 2.3) * (0.42 + 0.58 * Noise.step(0, 0.30, s));
    }
  },
  /** Widest past the middle, with four rounded lobes a side. */
  OAK {
    @Override
    double halfWidth(double s) {
      double lobes = 0.5 + 0.5 * Math.cos(2 * Math.PI * (3.6 * s - 0.62));
      double body = ellipse(Math.pow(s, 1.35), 2.2) * (0.30 + 0.70 * Noise.step(0.05, 0.55, s));
      return body * (1 - 0.46 * lobes * (1 - Noise.step(0.80, 0.92, s)));
    }
  },
  /** Egg-shaped with a short point. */
  OVATE {
    @Override
    double halfWidth(double s) {
      return Math.pow(s, 0.55) * Math.pow(1 - s, 0.72) / 0.4165;
    }
  },
  /** Long, narrow at the base, rounded at the top. */
  SPOON {
    @Override
    double halfWidth(double s) {
      return ellipse(Math.pow(s, 1.45), 2.4) * (0.45 + 0.55 * Noise.step(0.05, 0.6, s));
    }
  },
  /** Cut nearly to the rib into side lobes, with a larger lobe at the end. */
  CUT {
    @Override
    double halfWidth(double s) {
      double end = ellipse(Math.min(1, Math.max(0, (s - 0.55) / 0.45)), 2);
      double side = Math.pow(0.5 - 0.5 * Math.cos(2 * Math.PI * 3.1 * s), 1.4);
      double sides = s < 0.66 ? (0.22 + 0.62 * side) * Noise.step(0, 0.25, s + 0.04) : 0;
      return Math.max(0.13 * Noise.step(1.0, 0.9, s), Math.max(end, sides));
    }
  },
  /** Round to egg-shaped, without a point. */
  COTYLEDON {
    @Override
    double halfWidth(double s) {
      return ellipse(Math.pow(s, 0.95), 2.1);
    }
  };

  /**
   * Returns the half width at a place along the blade.
   *
   * @param s 0 at the base of the blade to 1 at its tip
   * @return share of the widest half width, about 0..1
   */
  abstract double halfWidth(double s);

  /** A superellipse over 0..1, 1 in the middle. */
  private static double ellipse(double s, double power) {
    double t = Math.abs(2 * s - 1);
    return Math.pow(Math.max(0, 1 - Math.pow(t, power)), 1 / power);
  }
}
