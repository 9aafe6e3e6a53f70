// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

/** Sheet sizes, upright: ISO 216 and ANSI. */
public enum Paper {
  /** 210 x 297 mm. */
  A4(210, 297),
  /** 297 x 420 mm. */
  A3(297, 420),
  /** 215.9 x 279.4 mm. */
  LETTER(215.9, 279.4);

  private final double widthMm;
  private final double heightMm;

  Paper(double widthMm, double heightMm) {
    this.widthMm = widthMm;
    this.heightMm = heightMm;
  }

  /** Returns the short side, mm. */
  public double widthMm() {
    return widthMm;
  }

  /** Returns the long side, mm. */
  public double heightMm() {
    return heightMm;
  }
}
