// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

/** How far a raft has grown. */
public enum Stage {
  /** Small plants far apart. */
  YOUNG("Y", 6, 0.035),
  /** Plants of half the pitch across or a bit more. */
  MIDDLE("M", 14, 0.24),
  /** Plants that reach each other; many overlap. */
  LATE("L", 24, 0.88),
  /** Canopy closed over the whole board. */
  FULL("X", 32, 1.6);

  private final String code;
  private final int dat;
  private final double areaOverPitch;

  Stage(String code, int dat, double areaOverPitch) {
    this.code = code;
    this.dat = dat;
    this.areaOverPitch = areaOverPitch;
  }

  /** Returns the letter for raft ids. */
  String code() {
    return code;
  }

  /** Returns the days after transplant that the book is given. */
  int dat() {
    return dat;
  }

  /** Returns the median projected area over the deck area of one site. */
  double areaOverPitch() {
    return areaOverPitch;
  }
}
