// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.track.Judged;

/**
 * The growth curve of a plant, or of a raft's median plant, as it stands on an evening.
 *
 * @param scope site or raft
 * @param place where
 * @param curve the curve, where there is one
 * @param reason how the curve came about, its doubts, or why there is none
 * @param target when a size is reached
 * @param points what it rests on
 */
public record CurveRow(
    Judged.Scope scope,
    Place place,
    Optional<Curve> curve,
    String reason,
    Target target,
    Basis points) {

  /**
   * Where.
   *
   * @param pond the pond; may be empty
   * @param raft the raft
   * @param site the site; absent for rafts
   * @param plant the plant; empty for rafts
   * @param crop the crop
   */
  public record Place(String pond, String raft, Optional<SiteId> site, String plant, String crop) {}

  /**
   * A curve.
   *
   * @param curve model and parameters
   * @param standardErrors of the parameters, in their order
   * @param asymptoteCm2 largest size, where the points tell it
   * @param aicc of the fit; absent where the curve is the cohort's, shrunk
   * @param r2LnArea share of the variance of ln(area) that it explains; absent with too few points
   * @param rate growth rate on the day of the last photo
   */
  public record Curve(
      GrowthCurve curve,
      List<Double> standardErrors,
      OptionalDouble asymptoteCm2,
      OptionalDouble aicc,
      OptionalDouble r2LnArea,
      Optional<Rate> rate) {

    /** Copies the list. */
    public Curve {
      standardErrors = List.copyOf(standardErrors);
    }
  }

  /**
   * A relative growth rate with its 95 % interval, 1/day.
   *
   * @param perDay the rate
   * @param lo95 lower end
   * @param hi95 upper end
   */
  public record Rate(double perDay, double lo95, double hi95) {}

  /**
   * When the plant is ready: for harvest or, in a tray, for transplanting.
   *
   * @param days from the last photo, where it can be said
   * @param areaCm2 the area at which it is ready, where it is known
   * @param reason why the days cannot be said, or that they are over; else empty
   */
  public record Target(Optional<Days> days, OptionalDouble areaCm2, String reason) {
    static Target none(OptionalDouble areaCm2, String reason) {
      return new Target(Optional.empty(), areaCm2, reason);
    }
  }

  /**
   * Days from the last photo with their 95 % interval; 0 where they are over.
   *
   * @param days by the curve
   * @param lo95 lower end
   * @param hi95 upper end, absent where nothing bounds it
   */
  public record Days(double days, OptionalDouble lo95, OptionalDouble hi95) {}

  /**
   * What a curve rests on.
   *
   * @param photos number of photos with an area
   * @param closed how many of them are lower bounds
   * @param lastDat age on the last of them, days; absent where there is none
   * @param discountedDat ages of photos that were left out as too far off, days
   */
  public record Basis(int photos, int closed, OptionalDouble lastDat, List<Double> discountedDat) {

    /** Copies the list. */
    public Basis {
      discountedDat = List.copyOf(discountedDat);
    }
  }
}
