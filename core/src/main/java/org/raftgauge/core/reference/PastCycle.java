// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

/** The areas of all plants of one past cycle, in any order: day and ln area (cm2) of each photo. */
public final class PastCycle {
  private final double[] dat;
  private final double[] lnArea;

  private PastCycle(double[] dat, double[] lnArea) {
    this.dat = dat;
    this.lnArea = lnArea;
  }

  /**
   * Makes a cycle.
   *
   * @param dat days (or degree-days), finite, at least one
   * @param lnArea ln of areas in cm2, finite, same length
   */
  public static PastCycle of(double[] dat, double[] lnArea) {
    if (dat.length != lnArea.length || dat.length == 0) {
      throw new IllegalArgumentException(
          "dat and lnArea must have one length > 0, got " + dat.length + " and " + lnArea.length);
    }
    for (int i = 0; i < dat.length; i++) {
      if (!Double.isFinite(dat[i]) || !Double.isFinite(lnArea[i])) {
        throw new IllegalArgumentException("point " + i + " must be finite");
      }
    }
    return new PastCycle(dat.clone(), lnArea.clone());
  }

  int size() {
    return dat.length;
  }

  double dat(int i) {
    return dat[i];
  }

  double lnArea(int i) {
    return lnArea[i];
  }
}
