// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;

class BoardSharesTest {
  private static final SiteGrid GRID = new SiteGrid(6, 4, 100, 100, 180, 180, 0);

  private static BoardShares shares(long seed, double sd, ToDoubleFunction<SiteId> ln) {
    Random random = new Random(seed);
    List<SiteId> sites = GRID.sites();
    double[] values =
        sites.stream().mapToDouble(s -> ln.applyAsDouble(s) + sd * random.nextGaussian()).toArray();
    return new BoardShares(GRID, sites, values);
  }

  private static boolean rim(SiteId s) {
    return s.row() == 0 || s.row() == 5 || s.column() == 0 || s.column() == 3;
  }

  @Test
  void smallerRimIsAnEdgeOfItsSize() {
    BoardShares.Test edge = shares(1, 0.05, s -> rim(s) ? Math.log(0.8) : 0).edge().orElseThrow();
    assertEquals(Pattern.EDGE, edge.pattern());
    assertTrue(edge.p() < 1e-6, "p " + edge.p());
    String percent = edge.words().replaceAll("\\D+", "");
    assertEquals(80, Integer.parseInt(percent), 3, edge.words());
  }

  @Test
  void slopeAlongTheRowsIsAGradientNamedByItsEnds() {
    // -0.06 a row over five steps: exp(-0.3) - 1 = -26 %.
    BoardShares.Test gradient = shares(2, 0.03, s -> -0.06 * s.row()).gradient().orElseThrow();
    assertTrue(gradient.p() < 1e-6, "p " + gradient.p());
    assertTrue(
        gradient.words().matches("plants change by -2[4-8] % along the board from A1 to F1"),
        gradient.words());
  }

  @Test
  void slopeAcrossIsNamedByTheOtherEnd() {
    BoardShares.Test gradient = shares(3, 0.03, s -> 0.1 * s.column()).gradient().orElseThrow();
    // 0.1 a column over three steps: exp(0.3) - 1 = +35 %.
    assertTrue(
        gradient.words().matches("plants change by \\+3[1-9] % along the board from A1 to A4"),
        gradient.words());
  }

  @Test
  void deadPlantMakesNoPattern() {
    BoardShares shares = shares(4, 0.1, s -> s.equals(new SiteId(0, 0)) ? -4 : 0);
    assertTrue(shares.edge().orElseThrow().p() > 0.01);
    assertTrue(shares.gradient().orElseThrow().p() > 0.01);
  }

  @Test
  void patternTooSmallToActOnHasNoWords() {
    assertEquals("", shares(5, 0.01, s -> rim(s) ? -0.08 : 0).edge().orElseThrow().words());
    assertEquals("", shares(5, 0.01, s -> -0.02 * s.row()).gradient().orElseThrow().words());
  }

  @Test
  void pValuesOfHealthyRaftsAreSpreadEvenly() {
    int edges = 0;
    int gradients = 0;
    int n = 2000;
    for (int seed = 0; seed < n; seed++) {
      BoardShares shares = shares(1000 + seed, 0.17, s -> 0);
      edges += shares.edge().orElseThrow().p() < 0.05 ? 1 : 0;
      gradients += shares.gradient().orElseThrow().p() < 0.05 ? 1 : 0;
    }
    // 5 % of 2000 is 100 with a standard deviation of 9.7; drawn-in values are a little shy.
    assertEquals(100, edges, 40);
    assertEquals(100, gradients, 40);
  }

  @Test
  void boardWithoutAMiddleHasNoEdge() {
    SiteGrid strip = new SiteGrid(2, 8, 100, 100, 180, 180, 0);
    assertEquals(Optional.empty(), new BoardShares(strip, strip.sites(), new double[16]).edge());
  }
}
