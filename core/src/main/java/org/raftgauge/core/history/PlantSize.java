// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.Duration;
import java.time.Instant;
import org.raftgauge.core.site.SiteMeasure;

/**
 * How large a plant was in a look.
 *
 * @param lnRadius half of ln of its projected area in cm2
 * @param variance of that, beside what all plants of the look have in common
 * @param at when
 */
record PlantSize(double lnRadius, double variance, Instant at) {
  /** Spread of ln of an open plant's radius about the truth, from the error of its area. */
  private static final double OF_AREA = 0.03;

  /**
   * Spread of what a plant's ln radius wanders in a day beside its crop's; a working value, twice
   * what plants are simulated with.
   */
  private static final double A_DAY = 0.01;

  /**
   * Spread of the ln ratio of two radii as a photo judges them, while they hardly touch, and what
   * is added for plants that share all of their outline, by its square (read off rendered photos of
   * one seed: 0.06 under a tenth of the outline shared, 0.11 at half, 0.25 at nine tenths).
   */
  private static final double RATIO = 0.06;

  private static final double RATIO_SHARED = 0.2;

  /**
   * What the seen area of a plant that shares all of its outline says less of its ln radius than an
   * open one's, for much of it lies under its neighbours; a working value (0.1 to 0.8 do alike).
   */
  private static final double HIDDEN = 0.2;

  /**
   * Standard errors by which expected and seen sizes usually differ at most (2 spoils overlapped
   * plants of three rendered sets, 3 none).
   */
  private static final double USUAL = 3;

  /**
   * Returns the size of a plant as a look shows it.
   *
   * @param splitShare share of its area that its borders leave open
   */
  static PlantSize of(SiteMeasure site, Instant at, double splitShare) {
    double hidden = HIDDEN * site.sharedOutlineFraction() * site.sharedOutlineFraction();
    double variance = OF_AREA * OF_AREA + splitShare * splitShare / 4 + hidden * hidden;
    return new PlantSize(lnRadius(site), variance, at);
  }

  /** Returns half of ln of a plant's area, which is over 0. */
  static double lnRadius(SiteMeasure site) {
    return Math.log(site.projectedAreaCm2().orElseThrow()) / 2;
  }

  /** Returns the variance of the ln ratio of two plants' radii as a photo judges it. */
  static double varianceOfRatio(SiteMeasure a, SiteMeasure b) {
    double shared = Math.max(a.sharedOutlineFraction(), b.sharedOutlineFraction());
    double spread = RATIO + RATIO_SHARED * shared * shared;
    return spread * spread;
  }

  /** Returns what this size, expected, and the one that a look shows come to (Kalman 1960). */
  PlantSize with(PlantSize seen) {
    double gain = variance / (variance + seen.variance);
    double ln = lnRadius + gain * (seen.lnRadius - lnRadius);
    return new PlantSize(ln, (1 - gain) * variance, seen.at);
  }

  /**
   * Returns this size, expected, as uncertain as it has to be for what a look shows: a plant that
   * was cut, eaten or replaced, or mistaken in the look before, is not what it was.
   */
  PlantSize inLightOf(PlantSize seen) {
    double off = seen.lnRadius - lnRadius;
    double usual = USUAL * USUAL * (variance + seen.variance);
    return new PlantSize(lnRadius, variance + Math.max(0, off * off - usual), at);
  }

  /** Returns the size to expect at a later time, with what the crop has grown. */
  PlantSize by(Instant later, double grown) {
    double days = Duration.between(at, later).toSeconds() / 86_400.0;
    return new PlantSize(lnRadius + grown, variance + A_DAY * A_DAY * days, later);
  }
}
