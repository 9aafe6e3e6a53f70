// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.canopy.KnownCanopy;

/** What a border says would move, against the same canopy split by paths at other speeds. */
class BorderTest {
  private static final SiteId LEFT = new SiteId(0, 0);
  private static final SiteId RIGHT = new SiteId(0, 1);

  @Test
  void whatMovesIsReadBetweenStepsAndEndsAtTheLast() {
    Border border =
        new Border(
            LEFT,
            RIGHT,
            0.1,
            BorderTakes.ofCm2(1.0, 3.0, 3.0, 4.0, 4.5),
            BorderTakes.ofCm2(2.0, 2.0, 2.0, 2.0, 2.5));

    assertEquals(0, border.takesCm2(0.1), 1e-12);
    assertEquals(0.5, border.takesCm2(0.15), 1e-12);
    assertEquals(2, border.takesCm2(0.25), 1e-12);
    assertEquals(4.5, border.takesCm2(0.6), 1e-12);
    assertEquals(4.5, border.takesCm2(9), 1e-12);
    assertEquals(-1, border.takesCm2(0.05), 1e-12);
    assertEquals(-2.5, border.takesCm2(-9), 1e-12);
  }

  @Test
  void aBorderTellsAllItsStepsOrIsRefused() {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> BorderTakes.ofCm2(1));
    assertEquals("cm2 must have 5 steps, got 1", e.getMessage());
  }

  @Test
  void betweenTwoEqualBlocksItMovesAsGeometrySays() {
    // A strip of 82 x 21 px over two feet 41 px apart, at 1 mm a pixel. Where one plant is e^0.1
    // times as fast, the border lies where d / e^0.1 = 41 - d: d = 41 e^0.1 / (1 + e^0.1) = 21.524,
    // 1.024 px past the middle; at e^0.5 25.52, 5.02 px past it. Each px is 21 mm2 = 0.21 cm2.
    Border border = strip(1, 1);

    assertEquals(0, border.lnRatio(), 1e-9);
    assertEquals(1.024 * 0.21, border.taken().cm2(1), 0.21);
    assertEquals(5.02 * 0.21, border.taken().cm2(5), 0.21);
    assertEquals(5.02 * 0.21, border.given().cm2(5), 0.21);
  }

  @Test
  void itTellsWhatPathsAtOtherSpeedsFind() {
    // The second way: the same paths run anew with the speeds that the table is asked for.
    double before = leftCm2(1, 1);
    for (int step = 1; step <= Border.STEPS; step++) {
      double faster = Math.exp(step * Border.STEP);
      double moved = strip(1, 1).takesCm2(step * Border.STEP);
      assertEquals(leftCm2(faster, 1) - before, moved, 0.22, "at step " + step);
    }
  }

  @Test
  void eitherSideTellsWhatItGivesWhereTheyAreNotAlike() {
    // A broad plant on the left, a narrow one on the right, each growing from a single pixel.
    boolean[] leaf = new boolean[82 * 41];
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] = i % 82 < 41 || Math.abs(i / 82 - 20) < 4;
    }
    CanopyPaths even = fromPoints(leaf, 1, 1);
    Border border =
        new FindBorders(List.of(LEFT, RIGHT), new double[] {1, 1}, 0.01)
            .of(even, even.owners())
            .get(0);
    double before = leftCm2(even);
    for (int step = 1; step <= Border.STEPS; step++) {
      double faster = Math.exp(step * Border.STEP);
      double taken = leftCm2(fromPoints(leaf, faster, 1)) - before;
      double given = before - leftCm2(fromPoints(leaf, 1, faster));
      assertEquals(taken, border.taken().cm2(step), 0.08, "at step " + step);
      assertEquals(given, border.given().cm2(step), 0.08, "at step " + step);
    }
    assertTrue(border.given().cm2(5) > 2 * border.taken().cm2(5), border.toString());
  }

  @Test
  void itStartsFromTheSpeedsItWasDrawnWith() {
    // 1.25 and 1.0: ln 0.2231, kept to four places.
    assertEquals(0.2231, strip(1.25, 1).lnRatio(), 1e-9);
    double wider = strip(1.25, 1).takesCm2(0.2231 + 0.2);
    assertEquals(leftCm2(1.25 * Math.exp(0.2), 1) - leftCm2(1.25, 1), wider, 0.22);
  }

  @Test
  void plantsThatDoNotMeetHaveNoBorder() {
    Ground ground = Grounds.row(164, 141, 41, 2);
    byte[] apart =
        KnownCanopy.discs(164, 141, new double[] {61, 70, 12}, new double[] {102, 70, 12});
    assertEquals(List.of(), MeasureSites.of(ground, KnownCanopy.of(164, 141, apart)).borders());
  }

  @Test
  void plantsThatMeetHaveOneInTheOrderOfTheGrid() {
    Ground ground = Grounds.row(164, 141, 41, 2);
    byte[] meeting =
        KnownCanopy.discs(164, 141, new double[] {61, 70, 24}, new double[] {102, 70, 24});
    List<Border> borders = MeasureSites.of(ground, KnownCanopy.of(164, 141, meeting)).borders();

    assertEquals(1, borders.size());
    assertEquals(new SiteId(0, 1), borders.get(0).site());
    assertEquals(new SiteId(0, 2), borders.get(0).neighbour());
  }

  private static CanopyPaths paths(double left, double right) {
    boolean[] leaf = new boolean[82 * 21];
    Arrays.fill(leaf, true);
    CanopyPaths paths = new CanopyPaths(leaf, 82, 21, new double[] {left, right});
    for (int y = 0; y < 21; y++) {
      paths.start(20, y, 0, (short) 0);
      paths.start(61, y, 0, (short) 1);
    }
    paths.run();
    return paths;
  }

  private static Border strip(double left, double right) {
    CanopyPaths paths = paths(left, right);
    FindBorders find = new FindBorders(List.of(LEFT, RIGHT), new double[] {left, right}, 0.01);
    return find.of(paths, paths.owners()).get(0);
  }

  private static CanopyPaths fromPoints(boolean[] leaf, double left, double right) {
    CanopyPaths paths = new CanopyPaths(leaf, 82, 41, new double[] {left, right});
    paths.start(20, 20, 0, (short) 0);
    paths.start(61, 20, 0, (short) 1);
    paths.run();
    return paths;
  }

  private static double leftCm2(double left, double right) {
    return leftCm2(paths(left, right));
  }

  private static double leftCm2(CanopyPaths paths) {
    double sum = 0;
    for (short owner : paths.owners()) {
      sum += owner == 0 ? 0.01 : 0;
    }
    return sum;
  }
}
