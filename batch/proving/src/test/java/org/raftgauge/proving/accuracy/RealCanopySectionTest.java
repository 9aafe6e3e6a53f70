// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.proving.accuracy.RealPhotoScore.Agreement;

class RealCanopySectionTest {
  @Test
  void masksAreComparedPixelByPixel() {
    boolean[] found = {true, true, true, false};
    boolean[] truth = {true, false, false, true};
    // 1 in both, 3 and 2: 2 / 5; area 3 / 2; 2 of 4 pixels are wrongly plant.
    assertEquals(new Agreement(0.4, 1.5, 0.5), Agreement.of(found, truth));
    assertEquals(1, Agreement.of(new boolean[2], new boolean[2]).dice());
  }

  @Test
  void eachSetGetsARowOfOursAndOneOfExcessGreen() {
    List<String> lines =
        RealCanopySection.lines(
            List.of(score("a", 0.9, 0.5), score("b", 0.7, 0.1), score("c", 0.8, 0.3)));
    // Means by hand; 5 % of three: a tenth of the way from the least to the middle one.
    assertTrue(
        lines.contains("| wheat | 3 | Raftgauge | 0.800 | 0.710 | 0.700 | 1.00 |  |"),
        lines.toString());
    // The second of three by name is b.
    assertTrue(
        lines.contains(
            "| wheat | 1 | Raftgauge, the other half | 0.700 | 0.700 | 0.700 | 1.00 |  |"),
        lines.toString());
    assertTrue(
        lines.contains("| wheat | 3 | Raftgauge, rim given | 1.000 | 1.000 | 1.000 | 1.00 |  |"),
        lines.toString());
    assertTrue(
        lines.contains(
            "| wheat | 3 | excess green | 0.300 | 0.120 | 0.100 | 2.00 | 0.710, 0.245, 0.057 |"),
        lines.toString());
    assertTrue(
        lines.contains(
            "Nearly bare photos (under 2 % plant): 3; of their area wrongly called plant at most"
                + " 1.00 % (excess green: 4.00 %)."));
  }

  @Test
  void aTaughtRowHoldsDiceAndTheUsualAreaError() {
    // Errors of area 10, 20 and 60 %; 5 % of the Dice a tenth of the way from 0.7 to 0.8.
    assertEquals(
        "| wheat | 4 | 3 | 0.800 | 0.710 | 0.700 | 20.0 % |",
        TeachRealCanopy.row(
            RealSet.WHEAT,
            "4",
            List.of(
                new Agreement(0.9, 1.1, 0),
                new Agreement(0.7, 0.8, 0),
                new Agreement(0.8, 1.6, 0))));
  }

  @Test
  void withoutPhotosItSaysSo() {
    List<String> lines = RealCanopySection.lines(List.of());
    assertEquals("Not run: the photos are not beside the project.", lines.get(2));
  }

  private static RealPhotoScore score(String photo, double ours, double plain) {
    return new RealPhotoScore(
        RealSet.WHEAT,
        photo,
        0.01,
        new Agreement(ours, 1, 0.01),
        new Agreement(1, 1, 0),
        new Agreement(plain, 2, 0.04));
  }
}
