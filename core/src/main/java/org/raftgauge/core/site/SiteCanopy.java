// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.List;
import org.raftgauge.core.book.PointMm;

/** All sites of a board, measured, and whose each deck pixel is. Owns its array; read only. */
public final class SiteCanopy {
  private final List<SiteMeasure> sites;
  private final List<Border> borders;
  private final short[] owner;
  private final double canopyCover;
  private final double leftoverCm2;
  private final List<PointMm> plantCentres;

  SiteCanopy(
      List<SiteMeasure> sites,
      List<Border> borders,
      short[] owner,
      double[] coverAndLeftover,
      List<PointMm> plantCentres) {
    this.sites = List.copyOf(sites);
    this.borders = List.copyOf(borders);
    this.owner = owner;
    this.canopyCover = coverAndLeftover[0];
    this.leftoverCm2 = coverAndLeftover[1];
    this.plantCentres = List.copyOf(plantCentres);
  }

  /** Returns the sites' measures, in the order of the grid. */
  public List<SiteMeasure> sites() {
    return sites;
  }

  /** Returns where plants meet, in a stable order. */
  public List<Border> borders() {
    return borders;
  }

  /**
   * Returns the place in that order of each deck pixel's site, or -1 where nobody owns it; read
   * only.
   */
  public short[] owner() {
    return owner;
  }

  /** Returns visible canopy inside the board's edge over board area, 0..1. */
  public double canopyCover() {
    return canopyCover;
  }

  /** Returns canopy that no site can own, cm2 of deck plane. */
  public double leftoverCm2() {
    return leftoverCm2;
  }

  /**
   * Returns where each plant's foot is seen once its height is allowed for, mm, in the same order.
   */
  public List<PointMm> plantCentres() {
    return plantCentres;
  }
}
