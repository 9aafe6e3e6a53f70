// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.util.Arrays;

/**
 * One plant's (or raft's) areas over time: day, area, relative standard error of the area, and
 * whether the site was closed, the area then being a lower bound.
 */
public final class Series {
  private final double[] dat;
  private final double[] areaCm2;
  private final double[] errorFraction;
  private final boolean[] closed;

  private Series(double[] dat, double[] areaCm2, double[] errorFraction, boolean[] closed) {
    this.dat = dat;
    this.areaCm2 = areaCm2;
    this.errorFraction = errorFraction;
    this.closed = closed;
  }

  /**
   * Makes a series of open areas of equal relative error.
   *
   * @param dat days after transplant (or degree-days), finite, ascending
   * @param areaCm2 areas, finite and above 0, same length
   * @throws IllegalArgumentException if that does not hold
   */
  public static Series of(double[] dat, double[] areaCm2) {
    sameLength(dat.length, areaCm2.length, "areaCm2");
    for (int i = 0; i < dat.length; i++) {
      if (!(areaCm2[i] > 0) || Double.isInfinite(areaCm2[i])) {
        throw new IllegalArgumentException("areaCm2 must be finite and > 0, got " + areaCm2[i]);
      }
      if (!Double.isFinite(dat[i]) || (i > 0 && dat[i] < dat[i - 1])) {
        throw new IllegalArgumentException(
            "dat must be finite and ascending, got " + Arrays.toString(dat));
      }
    }
    return new Series(
        dat.clone(), areaCm2.clone(), new double[dat.length], new boolean[dat.length]);
  }

  /**
   * Returns the same series with the standard error of each area as a fraction of it, 0 or more.
   */
  public Series withErrors(double[] newErrorFraction) {
    sameLength(dat.length, newErrorFraction.length, "errorFraction");
    for (double e : newErrorFraction) {
      if (!(e >= 0) || Double.isInfinite(e)) {
        throw new IllegalArgumentException("errorFraction must be finite and >= 0, got " + e);
      }
    }
    return new Series(dat, areaCm2, newErrorFraction.clone(), closed);
  }

  /** Returns the same series with the closed sites marked: their areas are lower bounds. */
  public Series withClosed(boolean[] newClosed) {
    sameLength(dat.length, newClosed.length, "closed");
    return new Series(dat, areaCm2, errorFraction, newClosed.clone());
  }

  /** Returns the part of the series up to and with day {@code last}. */
  public Series upTo(double last) {
    int n = 0;
    while (n < dat.length && dat[n] <= last) {
      n++;
    }
    return new Series(
        Arrays.copyOf(dat, n),
        Arrays.copyOf(areaCm2, n),
        Arrays.copyOf(errorFraction, n),
        Arrays.copyOf(closed, n));
  }

  /** Returns the number of points. */
  public int size() {
    return dat.length;
  }

  /** Returns the day of point {@code i}. */
  public double dat(int i) {
    return dat[i];
  }

  /** Returns the area of point {@code i} in cm2. */
  public double areaCm2(int i) {
    return areaCm2[i];
  }

  /** Returns ln of the area of point {@code i} in cm2. */
  public double lnArea(int i) {
    return Math.log(areaCm2[i]);
  }

  /** Returns the standard error of area {@code i} as a fraction of it; 0 where none was given. */
  public double errorFraction(int i) {
    return errorFraction[i];
  }

  /** Returns whether the site was closed at point {@code i}. */
  public boolean isClosed(int i) {
    return closed[i];
  }

  private static void sameLength(int expected, int got, String name) {
    if (expected != got) {
      throw new IllegalArgumentException(name + " must have length " + expected + ", got " + got);
    }
  }
}
