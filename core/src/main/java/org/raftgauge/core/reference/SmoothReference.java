// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The median and spread of ln area by day from past cycles, each smooth in the day.
 *
 * <p>LMS with L = 0 (areas lognormal). The median is over all cycles; the spread is that of plants
 * within a cycle, each cycle's common shift taken out first, as it will be for tonight's cohort.
 *
 * <p>Source: Cole and Green 1992, Stat. Med. 11:1305-1319; differs: medians by least absolute
 * residuals instead of penalised likelihood, so that sick plants of the past do not pull.
 */
public final class SmoothReference {
  /** Cycles that are needed before history counts as a reference. */
  public static final int FEWEST_CYCLES = 3;

  /** Ratio of the standard deviation to the median absolute residual of the normal. */
  private static final double SD_PER_MAD = 1.482602218505602;

  private final SmoothMedian median;
  private final SmoothMedian lnSpread;
  private final double first;
  private final double last;
  private final Between between;

  /** How cycles differ: deviation of their common shifts, and of their shapes after the shift. */
  private record Between(double shiftSd, double shapeSd, int cycles) {}

  private SmoothReference(
      SmoothMedian median, SmoothMedian lnSpread, double[] range, Between between) {
    this.median = median;
    this.lnSpread = lnSpread;
    this.first = range[0];
    this.last = range[1];
    this.between = between;
  }

  /**
   * Makes a reference.
   *
   * @param cycles past cycles of the same crop and variety
   * @return empty under three cycles
   */
  public static Optional<SmoothReference> of(List<PastCycle> cycles) {
    if (cycles.size() < FEWEST_CYCLES) {
      return Optional.empty();
    }
    double[] x = cycles.stream().flatMapToDouble(c -> Points.days(c)).toArray();
    double[] y = cycles.stream().flatMapToDouble(c -> Points.areas(c)).toArray();
    SmoothMedian median = SmoothMedian.of(x, y);
    List<Double> shifts = new ArrayList<>();
    List<Double> shapes = new ArrayList<>();
    double[] ln = new double[x.length];
    int at = 0;
    for (PastCycle cycle : cycles) {
      double[] off = Points.residuals(cycle, median);
      double shift = Points.median(off);
      shifts.add(shift);
      shapes.addAll(Points.shape(cycle, off, shift));
      for (double r : off) {
        ln[at++] = Math.log(Math.max(1e-4, Math.abs(r - shift)));
      }
    }
    Between between = new Between(Points.sd(shifts), Points.rootMeanSquare(shapes), cycles.size());
    double[] range = {Arrays.stream(x).min().orElse(0), Arrays.stream(x).max().orElse(0)};
    return Optional.of(new SmoothReference(median, SmoothMedian.of(x, ln), range, between));
  }

  /** Returns the first day of any photo that the reference rests on. */
  public double firstDat() {
    return first;
  }

  /** Returns the last day of any photo that the reference rests on. */
  public double lastDat() {
    return last;
  }

  /** Returns the number of cycles. */
  public int cycles() {
    return between.cycles();
  }

  /** Returns the median ln area (cm2); empty outside the days of history. */
  public Optional<Double> lnArea(double dat) {
    return dat < first || dat > last ? Optional.empty() : Optional.of(median.at(dat));
  }

  /** Returns the distribution of areas (cm2) at a day; empty outside the days of history. */
  public Optional<Lms> at(double dat) {
    return lnArea(dat).map(m -> new Lms(0, Math.exp(m), SD_PER_MAD * Math.exp(lnSpread.at(dat))));
  }

  /** Returns the relative growth rate per day of the median; empty outside the days of history. */
  public Optional<Double> rgrPerDay(double dat) {
    double h = (last - first) / 2000;
    return lnArea(dat).map(m -> (median.at(dat + h) - median.at(dat - h)) / (2 * h));
  }

  /** Returns the standard deviation of whole cycles' shifts in ln area: seasons, mostly. */
  public double shiftSd() {
    return between.shiftSd();
  }

  /** Returns the error (sd) of the median ln area once tonight's common shift is taken out. */
  public double shapeError() {
    return between.shapeSd() * Math.sqrt(1 + 1.0 / between.cycles());
  }

  /**
   * Returns what plants have in common against the reference: the median of their differences.
   *
   * @param dat days, inside or outside of history's; those outside are passed over
   * @param lnArea ln areas in cm2, same length
   * @return empty where fewer than three plants lie in the days of history
   */
  public Optional<CommonShift> shiftOf(double[] dat, double[] lnArea) {
    double[] off = new double[dat.length];
    int n = 0;
    for (int i = 0; i < dat.length; i++) {
      if (dat[i] >= first && dat[i] <= last) {
        off[n++] = lnArea[i] - median.at(dat[i]);
      }
    }
    return CommonShift.of(Arrays.copyOf(off, n));
  }
}
