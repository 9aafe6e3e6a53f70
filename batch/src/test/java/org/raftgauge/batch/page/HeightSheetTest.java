// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.core.measure.HeightPicture;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoResult;

/**
 * The hand-made photo of 300 x 300 px shows two discs of leaf, 25 px around 100, 100 and 200, 100,
 * on a white board; it is drawn four times as large.
 */
class HeightSheetTest {
  private static final int SIDE = 300;
  private static final int TIMES = 4;

  private static BufferedImage sheet(IntToDoubleFunction heightMm) {
    PhotoResult flat =
        new HandMadeMeasurer("s")
            .measure("rafts=R1 area=20".getBytes(StandardCharsets.UTF_8), PhotoFacts.of("a.jpg"));
    float[] mm = new float[SIDE * SIDE];
    for (int i = 0; i < mm.length; i++) {
      mm[i] = (float) heightMm.applyAsDouble(i);
    }
    return HeightSheet.of(
        new PhotoResult(
            flat.measure(),
            flat.picture(),
            flat.canopy(),
            flat.drawings(),
            Optional.of(new HeightPicture(SIDE, SIDE, mm))));
  }

  /** Returns the colour at a place of the photo. */
  private static Color at(BufferedImage sheet, int x, int y) {
    return new Color(sheet.getRGB(TIMES * x + 2, TIMES * y + 2));
  }

  private static boolean grey(Color colour) {
    return colour.getRed() == colour.getGreen() && colour.getGreen() == colour.getBlue();
  }

  @Test
  void lowLeafIsDarkBlueAndTallLeafYellowTheBoardGrey() {
    BufferedImage sheet = sheet(i -> i % SIDE < 150 ? 2 : 98);
    // 98 mm is the tallest: the colours end at the next 25 mm, 100.
    Color low = at(sheet, 100, 85);
    Color tall = at(sheet, 200, 85);
    assertTrue(low.getBlue() > low.getRed() && low.getBlue() > low.getGreen(), low.toString());
    assertTrue(tall.getRed() > 2 * tall.getBlue() && tall.getGreen() > 2 * tall.getBlue());
    assertTrue(grey(at(sheet, 150, 40)), "the board");
  }

  @Test
  void leafWhoseHeightNobodySawIsHatchedNotFilledByGuess() {
    BufferedImage sheet = sheet(i -> i % SIDE < 150 ? Double.NaN : 40);
    int[] hole = new int[40];
    for (int i = 0; i < hole.length; i++) {
      hole[i] = sheet.getRGB(TIMES * 92 + i, TIMES * 82 + 2);
    }
    // A hatching changes along a row; a colour of the scale would not.
    assertTrue(Arrays.stream(hole).distinct().count() > 1, "one colour only");
    Color seen = at(sheet, 200, 85);
    assertTrue(Arrays.stream(hole).noneMatch(c -> c == seen.getRGB()));
  }

  @Test
  void theLegendStandsBelowThePictureFromBlueToYellow() {
    BufferedImage sheet = sheet(i -> 60);
    assertEquals(TIMES * SIDE, sheet.getWidth());
    assertTrue(sheet.getHeight() > TIMES * SIDE + 40, "height " + sheet.getHeight());
    int y = TIMES * SIDE + 30;
    Color left = new Color(sheet.getRGB(40, y));
    Color right = new Color(sheet.getRGB(sheet.getWidth() - 40, y));
    assertTrue(left.getBlue() > left.getGreen(), left.toString());
    assertTrue(right.getGreen() > right.getBlue(), right.toString());
    assertNotEquals(left, right);
  }
}
