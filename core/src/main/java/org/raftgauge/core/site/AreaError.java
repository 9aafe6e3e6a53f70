// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.canopy.Canopy;

/**
 * Standard error of a projected area: the root of the summed squares of twelve terms, each of them
 * common to a whole plant and therefore not averaged over its pixels.
 *
 * <ul>
 *   <li>height: {@code A * 2 dh / (H - h)}, from {@code A = seen * (1 - h / H)^2}
 *   <li>view: what stands up is seen from the side, by {@code h * tan(angle off the camera's foot)}
 *       over the plant's width
 *   <li>pose: {@code A * 2 e / r}, a place error {@code e} at the board's half diagonal {@code r}
 *   <li>edge pixels: the outline lies a share of a pixel in or out, all along it
 *   <li>colour and light: the share of the canopy whose colour lies near the threshold, which dim
 *       or coloured light, haze and dirt raise
 *   <li>weak leaf, weak bare deck: the same of the plant's own pixels, and of those about it that
 *       came close to counting as leaf
 *   <li>split: the border to a neighbour lies in or out, all along the shared outline
 *   <li>shared: where plants grow into each other, parts of the usual plant's size change owner
 *   <li>closed: past the share of outline at which a site counts as closed, still more of it does
 *   <li>leaves: where plants touch, a whole leaf may be given to the wrong one; the less a plant
 *       fills its hull, the more of it hangs on thin stalks
 * </ul>
 *
 * <p>The constants are maximum likelihood estimates (errors taken as Student t with 8 degrees of
 * freedom, so that gross errors do not set them) on 6 621 sites of 195 rendered photos of six
 * seeds, dead plants among them. Dealt out by photo to four folds, sites not fitted on have a
 * spread of 1.02 and 95 % intervals that cover 94.7 %. Heights were true ones' model there, spread
 * 9 %. The term of closed sites was chosen afterwards, between what 110 sites of those seeds (0.4)
 * and 55 of another one (0.8) ask for; without it, errors of sites that share half of their outline
 * spread over 1.6 and 2.9 standard errors.
 */
final class AreaError {
  /**
   * Spread of a plant's height about its crop's model, as a share; 9 % with a well-fitted model.
   */
  private static final double HEIGHT = 0.13;

  /** Share of the side view that counts. */
  private static final double VIEW = 0.25;

  /** How far the whole outline lies in or out, px. */
  private static final double EDGE_PX = 0.09;

  /** Share of the doubtful canopy that is wrong. */
  private static final double DOUBT = 0.34;

  /** Share of the leaf near the threshold that is none. */
  private static final double WEAK_LEAF = 0.19;

  /** Share of the bare deck near the threshold that is leaf. */
  private static final double WEAK_BARE = 0.11;

  /** Share of a plant, of the usual size at least, that goes astray for each shared outline. */
  private static final double SHARED = 0.13;

  /** Share of a plant that goes astray for each share of the outline past {@link #CLOSED_FROM}. */
  private static final double CLOSED = 0.6;

  /** Sites that share more of their outline than this are closed by the default limit. */
  private static final double CLOSED_FROM = 0.35;

  /** How far the border between two plants lies off, mm. */
  private static final double SPLIT_MM = 2.1;

  /**
   * How much of a plant that is all leaves on stalks goes astray, by the root of what it shares.
   */
  private static final double LEAVES = 1.0;

  /** No area is known better than this, cm2. */
  private static final double LEAST_CM2 = 0.02;

  private final Ground ground;
  private final double doubtFraction;

  AreaError(Ground ground, Canopy canopy) {
    this.ground = ground;
    this.doubtFraction = canopy.doubtFraction();
  }

  /**
   * What else the error hangs on.
   *
   * @param perimeterMm length of all its outlines
   * @param hullCm2 area of the hull about all of it
   * @param weakLeafCm2 area of its leaf whose colour is near the threshold
   * @param weakBareCm2 area of bare deck about it whose colour is near the threshold
   */
  record Look(double perimeterMm, double hullCm2, double weakLeafCm2, double weakBareCm2) {}

  /**
   * Returns the standard error.
   *
   * @param site the site's place in the order of the grid
   * @param seen what is known of the site
   * @param look what else the error hangs on
   * @return cm2, over 0
   */
  double cm2(int site, OneSite.Seen seen, Look look) {
    double area = seen.seenCm2() * seen.height().factor();
    double most = Math.max(area, seen.usualCm2());
    double open = Math.max(0, 1 - seen.seenCm2() / Math.max(look.hullCm2, seen.seenCm2()));
    double[] terms = {
      area * 2 * heightErrorMm(seen) / (ground.pose().heightMm() - seen.heightMm()),
      view(site, area, seen.heightMm()),
      area * 2 * ground.poseErrorMm() / halfDiagonalMm(),
      look.perimeterMm * EDGE_PX * ground.deck().mmPerPx() / 100,
      DOUBT * doubtFraction * area,
      WEAK_LEAF * look.weakLeafCm2,
      WEAK_BARE * look.weakBareCm2,
      look.perimeterMm * seen.shared() * SPLIT_MM / 100,
      SHARED * most * seen.shared(),
      CLOSED * most * Math.max(0, seen.shared() - CLOSED_FROM),
      LEAVES * most * open * Math.sqrt(seen.shared()),
      LEAST_CM2
    };
    return Math.sqrt(Arrays.stream(terms).map(t -> t * t).sum());
  }

  private double view(int site, double areaCm2, double heightMm) {
    double widthMm = 10 * Math.sqrt(areaCm2);
    return VIEW * widthMm * heightMm * offFootMm(site) / ground.pose().heightMm() / 100;
  }

  private double halfDiagonalMm() {
    return Math.hypot(ground.layout().board().widthMm(), ground.layout().board().lengthMm()) / 2;
  }

  /**
   * Returns the standard error where nothing was found: half the largest speck that is not believed
   * to be a plant, cm2.
   */
  double ofNothingCm2() {
    return BareHoles.speckCm2(ground.layout().grid()) / 2;
  }

  private double heightErrorMm(OneSite.Seen seen) {
    return seen.height().relief().isPresent()
        ? ground.relief().orElseThrow().errorMm()
        : HEIGHT * seen.heightMm();
  }

  private double offFootMm(int site) {
    PointMm place = ground.layout().grid().centre(ground.sites().get(site));
    PointMm foot = ground.pose().foot();
    return Math.hypot(place.xMm() - foot.xMm(), place.yMm() - foot.yMm());
  }
}
