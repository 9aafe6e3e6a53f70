// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.stat.inference.TTest;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.statistics.MoransI;
import org.raftgauge.core.statistics.Neighbours;
import org.raftgauge.core.statistics.PlaneTrend;

/**
 * The ln(share of expected) of a raft's plants over its board, wild ones drawn in, so that a dead
 * plant makes no pattern.
 */
final class BoardShares {
  /** Least differences that are named, ln: what a grower would act on; our own choice. */
  private static final double LEAST_EDGE = 0.12;

  private static final double LEAST_GRADIENT = 0.15;

  /** One-sided 5 % point. */
  private static final double NEIGHBOURS_Z = 1.6448536269514722;

  private static final double NEAR = 1.1;
  private static final int FEWEST = 10;
  private static final int FEWEST_INSIDE = 4;
  private static final double DRAWN_IN = 2.5;

  private final SiteGrid grid;
  private final List<SiteId> sites;
  private final double[] values;

  /**
   * A test of a pattern.
   *
   * @param pattern edge or gradient
   * @param p its p-value
   * @param words what it is; empty where it is too small to matter
   */
  record Test(Pattern pattern, double p, String words) {}

  /**
   * @param grid the board's grid
   * @param sites sites with a plant
   * @param lnShares ln(share of expected) of each
   */
  BoardShares(SiteGrid grid, List<SiteId> sites, double[] lnShares) {
    this.grid = grid;
    this.sites = sites;
    RobustCentre centre = RobustCentre.of(lnShares);
    double most = DRAWN_IN * Math.max(centre.spread(), 1e-9);
    this.values = new double[lnShares.length];
    for (int i = 0; i < values.length; i++) {
      double off = lnShares[i] - centre.centre();
      values[i] = centre.centre() + Math.max(-most, Math.min(most, off));
    }
  }

  /** Tests the rim against the middle by Welch's t. */
  Optional<Test> edge() {
    double[] rim = at(true);
    double[] middle = at(false);
    if (values.length < FEWEST || rim.length < FEWEST_INSIDE || middle.length < FEWEST_INSIDE) {
      return Optional.empty();
    }
    double difference = mean(rim) - mean(middle);
    String words =
        Math.abs(difference) < LEAST_EDGE
            ? ""
            : String.format(
                Locale.ROOT,
                "plants of the rim stand at %.0f %% of those of the middle",
                100 * Math.exp(difference));
    return Optional.of(new Test(Pattern.EDGE, new TTest().tTest(rim, middle), words))
        .filter(test -> Double.isFinite(test.p()));
  }

  private double[] at(boolean rim) {
    return IntStream.range(0, values.length)
        .filter(i -> rim(sites.get(i)) == rim)
        .mapToDouble(i -> values[i])
        .toArray();
  }

  private boolean rim(SiteId site) {
    return site.row() == 0
        || site.column() == 0
        || site.row() == grid.rows() - 1
        || site.column() == grid.columns() - 1;
  }

  private static double mean(double[] of) {
    return IntStream.range(0, of.length).mapToDouble(i -> of[i]).average().orElse(0);
  }

  /** Tests for a slope by the F test of a plane; like plants must lie side by side as well. */
  Optional<Test> gradient() {
    double[] x = sites.stream().mapToDouble(s -> grid.centre(s).xMm()).toArray();
    double[] y = sites.stream().mapToDouble(s -> grid.centre(s).yMm()).toArray();
    double distance = NEAR * Math.max(grid.pitchXMm(), grid.pitchYMm());
    boolean alike =
        MoransI.of(values, Neighbours.within(x, y, distance, Neighbours.Weighting.BINARY))
            .filter(i -> i.z() > NEIGHBOURS_Z)
            .isPresent();
    return values.length < FEWEST
        ? Optional.empty()
        : PlaneTrend.of(x, y, values)
            .map(plane -> new Test(Pattern.GRADIENT, plane.p(), alike ? words(plane) : ""));
  }

  private String words(PlaneTrend plane) {
    PointMm first = grid.centre(new SiteId(0, 0));
    PointMm last = grid.centre(new SiteId(grid.rows() - 1, grid.columns() - 1));
    double alongRows = plane.ySlope() * (last.yMm() - first.yMm());
    double alongColumns = plane.xSlope() * (last.xMm() - first.xMm());
    boolean rows = Math.abs(alongRows) >= Math.abs(alongColumns);
    double change = rows ? alongRows : alongColumns;
    SiteId end = rows ? new SiteId(grid.rows() - 1, 0) : new SiteId(0, grid.columns() - 1);
    return Math.abs(change) < LEAST_GRADIENT
        ? ""
        : String.format(
            Locale.ROOT,
            "plants change by %+.0f %% along the board from A1 to %s",
            100 * Math.expm1(change),
            end);
  }
}
