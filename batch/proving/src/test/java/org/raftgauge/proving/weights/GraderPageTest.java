// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.weights;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GraderPageTest {
  @TempDir private Path folder;

  @Test
  void intervalsCoverInventedPlantsAsTheySay() throws IOException {
    List<Lettuce> plants = Lettuce.read(table());
    Resampling known = Resampling.of(plants, 16, 40, Resampling.Varieties.KNOWN);
    // Normal scatter, as the interval assumes: 90 %, and 40 draws of 68 plants tell it to 1 or 2 %.
    assertEquals(0.9, known.coverage(), 0.035);
    // At least 2 * 1.645 * 0.1; the calibration and the draw of plants add at most a third.
    assertTrue(
        known.widthShare() > 0.33 && known.widthShare() < 0.44, "width " + known.widthShare());
  }

  @Test
  void poolingVarietiesShowsAsBiasOfEach() throws IOException {
    List<Lettuce> plants = Lettuce.read(table());
    Resampling pooled = Resampling.of(plants, 16, 20, Resampling.Varieties.POOLED);
    // Halm is made lighter by a fifth, Marle heavier by a fifth: pooled reads Halm too heavy.
    assertEquals(0.2, pooled.byVariety().get("Halm").biasLn(), 0.05);
    assertEquals(-0.2, pooled.byVariety().get("Marle").biasLn(), 0.05);
    assertTrue(
        pooled.widthShare()
            > 1.5 * Resampling.of(plants, 16, 20, Resampling.Varieties.KNOWN).widthShare());
  }

  @Test
  void sameTableGivesTheSameResult() throws IOException {
    List<Lettuce> plants = Lettuce.read(table());
    assertEquals(
        Resampling.of(plants, 8, 3, Resampling.Varieties.KNOWN),
        Resampling.of(plants, 8, 3, Resampling.Varieties.KNOWN));
  }

  @Test
  void pageNamesTheSlippedRowAndHasItsTables() throws IOException {
    String page = GraderPage.of(table(), 2);
    assertTrue(page.contains("| leaf area, variety | "), page);
    assertTrue(page.contains("| 32 | known | "), page);
    assertTrue(page.contains("| Halm | "), page);
    assertTrue(page.contains("- plant 7, dry_weight_g: "), page);
    assertTrue(page.contains("a slipped decimal point?"), page);
  }

  /** Writes 100 invented plants of two varieties, dry weight of plant 7 ten times too small. */
  private Path table() throws IOException {
    Random random = new Random(5);
    StringBuilder text =
        new StringBuilder(
            "plant_id,variety,fresh_weight_g,dry_weight_g,height_cm,diameter_cm,leaf_area_cm2\n");
    for (int i = 1; i <= 100; i++) {
      double area = 100 * Math.pow(20, random.nextDouble());
      double variety = i % 2 == 0 ? -0.2 : 0.2;
      double fresh = 0.04 * area * Math.exp(variety + 0.1 * random.nextGaussian());
      double dry = 0.05 * fresh * Math.exp(0.05 * random.nextGaussian()) / (i == 7 ? 10 : 1);
      text.append(
          String.format(
              Locale.ROOT,
              "%d,%s,%.3f,%.4f,%.2f,%.2f,%.2f\n",
              i,
              i % 2 == 0 ? "Halm" : "Marle",
              fresh,
              dry,
              2 * Math.pow(area, 0.25) * Math.exp(0.05 * random.nextGaussian()),
              1.1 * Math.sqrt(area) * Math.exp(0.05 * random.nextGaussian()),
              area));
    }
    return Files.writeString(folder.resolve("traits.csv"), text.toString());
  }
}
