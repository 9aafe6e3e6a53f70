// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.PublishedTable;
import org.raftgauge.core.pixels.Srgb;

class LeafRuleTest {

  @Test
  void theGreenScoreIsTheSumOfTheLogsOfBothRatios() {
    // ln(0.5 / 0.1) + ln(0.5 / 0.2), each channel with the floor of 0.012 added.
    double expected = Math.log(0.512 / 0.112) + Math.log(0.512 / 0.212);
    assertEquals(expected, LeafRule.green(0.1, 0.5, 0.2), 1e-12);
  }

  @Test
  void theGreenScoreDoesNotChangeWithTheLightWhereTheFloorIsNegligible() {
    Random random = new Random(1);
    for (int i = 0; i < 1000; i++) {
      double r = 100 + 900 * random.nextDouble();
      double g = 100 + 900 * random.nextDouble();
      double b = 100 + 900 * random.nextDouble();
      double times = 1 + 50 * random.nextDouble();
      // Each of four logs shifts by less than floor / channel = 0.012 / 100.
      double same = LeafRule.green(times * r, times * g, times * b);
      assertEquals(same, LeafRule.green(r, g, b), 4 * 1.2e-4);
    }
  }

  @Test
  void greysScoreNothingAtAnyLight() {
    for (double v = 0; v <= 1; v += 0.01) {
      assertEquals(0, LeafRule.green(v, v, v), 1e-12);
      assertEquals(0, LeafRule.redOrGreen(v, v, v), 1e-12);
    }
  }

  @Test
  void darknessPullsTheScoreToNothing() {
    // Whatever its colour, what sends hardly any light is not called leaf.
    double lit = LeafRule.green(0.1, 0.3, 0.04);
    double last = lit;
    for (double dim = 0.5; dim > 1e-4; dim /= 2) {
      double score = LeafRule.green(0.1 * dim, 0.3 * dim, 0.04 * dim);
      assertTrue(score < last, "dim " + dim);
      last = score;
    }
    assertEquals(0, last, 0.02);
  }

  @Test
  void moreGreenNeverLowersAndMoreRedOrBlueNeverRaisesTheGreenScore() {
    Random random = new Random(2);
    for (int i = 0; i < 1000; i++) {
      double r = random.nextDouble();
      double g = random.nextDouble();
      double b = random.nextDouble();
      double score = LeafRule.green(r, g, b);
      assertTrue(LeafRule.green(r, g + 0.01, b) > score);
      assertTrue(LeafRule.green(r + 0.01, g, b) < score);
      assertTrue(LeafRule.green(r, g, b + 0.01) < score);
    }
  }

  @Test
  void redLeafScoresAsLeafWithTheRedRuleOnly() {
    // "red lettuce" 92, 40, 48 of the collected colours, on a white board.
    double r = Srgb.linear(92 / 255.0);
    double g = Srgb.linear(40 / 255.0);
    double b = Srgb.linear(48 / 255.0);
    double least = CanopyRule.defaults().leastScore();
    assertTrue(LeafRule.green(r, g, b) < 0);
    assertTrue(LeafRule.redOrGreen(r, g, b) > least);
  }

  @Test
  void theRedRuleNeverScoresAGreenLeafLowerThanTheGreenRule() {
    Random random = new Random(3);
    for (int i = 0; i < 1000; i++) {
      double r = random.nextDouble();
      double g = random.nextDouble();
      double b = random.nextDouble();
      assertTrue(LeafRule.redOrGreen(r, g, b) >= LeafRule.green(r, g, b) - 1e-12);
    }
  }

  /**
   * The score is ours, not a published index; both must agree on what is leaf for the colours whose
   * excess green is printed.
   */
  @Test
  @Tag("published")
  void theGreenScoreAgreesWithExcessGreenOnWhichColoursAreLeaf() {
    List<Map<String, String>> rows = PublishedTable.rows("woebbecke-1995-exg.csv");
    assertEquals(7, rows.size());
    for (Map<String, String> row : rows) {
      double r = Integer.parseInt(row.get("R"));
      double g = Integer.parseInt(row.get("G"));
      double b = Integer.parseInt(row.get("B"));
      double exg = Double.parseDouble(row.get("exg"));
      assertEquals(exg, (2 * g - r - b) / (r + g + b), 5.1e-9, row.toString());
      double score =
          LeafRule.green(Srgb.linear(r / 255), Srgb.linear(g / 255), Srgb.linear(b / 255));
      boolean leaf = score > CanopyRule.defaults().leastScore();
      assertEquals(exg > 0.3, leaf, row + " scores " + score);
    }
  }
}
