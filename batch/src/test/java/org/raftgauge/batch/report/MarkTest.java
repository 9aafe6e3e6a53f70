// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.track.Verdict;

class MarkTest {

  @Test
  void noTwoMarksShareALetter() {
    Set<String> letters = new HashSet<>();
    for (Mark mark : Mark.values()) {
      assertTrue(letters.add(mark.letter()), mark + ": " + mark.letter());
    }
  }

  @Test
  void everyVerdictHasAMarkWithItsOwnWord() {
    for (Verdict verdict : Verdict.values()) {
      assertEquals(verdict.word(), Mark.of(verdict).key());
    }
  }

  @Test
  void everyVerdictButCalmOnesAndHeldIsToBeLookedAt() {
    for (Verdict verdict : Verdict.values()) {
      boolean calm = verdict.isCalm() || verdict == Verdict.HELD;
      assertEquals(!calm, Mark.of(verdict).toLookAt(), verdict.toString());
    }
    assertFalse(Mark.NONE.toLookAt());
  }

  @Test
  void aSquareIsDrawnAboutItsMiddle() {
    // Corners at 0.87 of the half size 10 about (50, 20).
    assertEquals("M41.3 11.3L58.7 11.3L58.7 28.7L41.3 28.7z", Mark.STALLED.path(50, 20, 10));
  }

  @Test
  void aCircleIsTwoHalfArcs() {
    // Radius 0.95 of 10.
    assertEquals(
        "M40.5 20a9.5 9.5 0 1 0 19 0a9.5 9.5 0 1 0 -19 0z", Mark.ON_TRACK.path(50, 20, 10));
  }

  @Test
  void shapesThatMeanDifferentThingsDiffer() {
    Set<String> paths = new HashSet<>();
    Arrays.stream(Mark.values()).forEach(mark -> paths.add(mark.path(0, 0, 10)));
    // Empty shares the circle of on track: dashed, hollow, with its own letter.
    assertEquals(Mark.values().length - 1, paths.size());
  }
}
