// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.core.calibrate.CalibrationTarget;
import org.raftgauge.core.calibrate.FindTarget;
import org.raftgauge.core.calibrate.TargetPoint;
import org.raftgauge.core.calibrate.TargetSighting;

class PrintTargetTest {
  private static final int DPI = 100;

  @TempDir private Path folder;

  private static CalibrationTarget target(String text) {
    return CalibrationTarget.parse(text).orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    "chessboard:9x6:27, 40",
    "squares:5x4:25:45, 80",
    "circles:8x6:16:26, 192",
    "staggered-circles:14x9:15:22, 63"
  })
  void printedTargetIsFoundAndHasItsSize(String text, int points) throws IOException {
    CalibrationTarget target = target(text);
    assertEquals(Optional.empty(), PrintTarget.tooLarge(target, Paper.A4));
    Path file = folder.resolve("target.pdf");
    PrintTarget.print(target, Paper.A4, file);
    try (Printed printed = new Printed(file, DPI)) {
      assertEquals(1, printed.pages());
      TargetSighting seen = FindTarget.in(target, "p", Printed.rgb(printed.picture(0)));
      assertEquals(points, seen.points().size());
      TargetPoint a = seen.points().get(0);
      TargetPoint b = seen.points().get(points - 1);
      double mm = a.seen().distancePx(b.seen()) / DPI * Printed.MM_PER_INCH;
      // A dot at 100 dpi is 0.25 mm; two ends of a line found to a quarter of it each.
      assertEquals(Math.hypot(b.xMm() - a.xMm(), b.yMm() - a.yMm()), mm, 0.15);
      assertEquals(150, Printed.checkLineMm(printed.picture(0), DPI), 0.3);
    }
  }

  @Test
  void targetThatDoesNotFitTheSheetIsRefusedWithTheRoomThereIs() {
    assertEquals(
        Optional.of("is 300 x 210 mm, the sheet has room for 281 x 176 mm"),
        PrintTarget.tooLarge(target("chessboard:10x7:30"), Paper.A4));
    assertTrue(PrintTarget.tooLarge(target("chessboard:10x7:30"), Paper.A3).isEmpty());
  }
}
