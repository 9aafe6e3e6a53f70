// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.track.Verdict;

/**
 * How the plants of a raft have grown, to be drawn.
 *
 * @param pond the pond; may be empty
 * @param raft the raft
 * @param crop the crop
 * @param clock what the ages count from
 * @param sites its plants, in the order of their sites
 * @param reference what is expected of them by age, in order; empty where there is no curve
 */
public record RaftGrowth(
    String pond,
    String raft,
    String crop,
    PlantSeries.AgeClock clock,
    List<OfSite> sites,
    List<Reference> reference) {

  /** Copies the lists. */
  public RaftGrowth {
    sites = List.copyOf(sites);
    reference = List.copyOf(reference);
  }

  /**
   * A plant's areas.
   *
   * @param site where it stands
   * @param verdict tonight's, where it was seen tonight
   * @param points its areas in the order of time
   */
  public record OfSite(SiteId site, Optional<Verdict> verdict, List<Point> points) {

    /** Copies the list. */
    public OfSite {
      points = List.copyOf(points);
    }
  }

  /**
   * An area.
   *
   * @param dat age, days
   * @param areaCm2 area, cm2, above 0
   */
  public record Point(double dat, double areaCm2) {}

  /**
   * What is expected at an age: the cohort's curve, and the crop's limits about it.
   *
   * @param dat age, days
   * @param medianCm2 the cohort's typical plant
   * @param laggingCm2 under which a plant lags
   * @param aheadCm2 over which it is ahead
   */
  public record Reference(double dat, double medianCm2, double laggingCm2, double aheadCm2) {}
}
