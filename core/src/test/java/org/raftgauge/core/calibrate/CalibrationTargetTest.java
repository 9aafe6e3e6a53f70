// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationTargetTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "chessboard:10x7:25",
        "chessboard:8x6:22.5",
        "squares:3x4:30:60",
        "circles:10x8:15:25",
        "staggered-circles:28x24:10:12"
      })
  void textFormReadsBackAsItself(String text) {
    assertEquals(text, CalibrationTarget.parse(text).orElseThrow().toString());
  }

  @Test
  void chessboardIsCountedInSquares() {
    assertEquals(
        new CalibrationTarget(CalibrationTarget.Shape.CHESSBOARD, 10, 7, 25, 25),
        CalibrationTarget.parse("chessboard:10x7:25").orElseThrow());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "chessboard",
        "chessboard:10x7",
        "chessboard:10:25",
        "chessboard:10x7:0",
        "chessboard:1x7:25",
        "chessboard:10x7:25:30",
        "circles:10x8:15",
        "circles:10x8:15:10",
        "rings:10x8:15:25",
        "chessboard:10x7:-25"
      })
  void whatIsNoTargetIsRefused(String text) {
    assertEquals(Optional.empty(), CalibrationTarget.parse(text));
  }

  @Test
  void impossibleSizesAreNamed() {
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () -> new CalibrationTarget(CalibrationTarget.Shape.CIRCLES, 4, 4, 10, 5));
    assertEquals(
        "a target's size must be > 0 mm and its pitch no less, got 10.0, 5.0", e.getMessage());
  }
}
