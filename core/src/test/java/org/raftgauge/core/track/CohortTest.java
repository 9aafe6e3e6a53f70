// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CohortTest {
  private static final String BENCH = "bench";

  private final Cohort cohort = Levels.cohort();
  private final List<Patch> patches = new ArrayList<>();

  /** Puts rafts R0, R1, ... of ponds P0 and P1 in turn at a level on day 3. */
  private void rafts(double... lnAreas) {
    for (int i = 0; i < lnAreas.length; i++) {
      Patch patch = Levels.patch("R" + i, "P" + i % 2, cohort);
      patch.add(Levels.level(3, lnAreas[i], BENCH));
      patches.add(patch);
    }
  }

  @Test
  void expectedIsTheMiddleOfTheOtherRafts() {
    rafts(9, 2.0, 2.1, 2.2, 2.3);
    Expected expected = cohort.expected("R0", 3.75).orElseThrow();
    // The middle half of four equal values is the inner two.
    assertEquals(2.15, expected.lnArea(), 1e-9);
    assertEquals(Basis.COHORT, expected.basis());
    assertTrue(expected.shift().isEmpty());
  }

  @Test
  void raftItselfDoesNotCount() {
    rafts(2, 2, 2, 2);
    double before = cohort.expected("R0", 3.75).orElseThrow().lnArea();
    patches.get(0).add(Levels.level(3, 7, BENCH));
    assertEquals(before, cohort.expected("R0", 3.75).orElseThrow().lnArea(), 1e-12);
  }

  @Test
  void levelsAreCarriedToTheAgeAskedFor() {
    rafts(2, 2, 2, 2);
    // Before anything is learnt the rate is 0.15 a day.
    assertEquals(2 + 2 * 0.15, cohort.expected("R0", 5.75).orElseThrow().lnArea(), 1e-9);
    double sure = cohort.expected("R0", 3.75).orElseThrow().standardError();
    double carried = cohort.expected("R0", 5.75).orElseThrow().standardError();
    assertTrue(carried > sure, carried + " should be over " + sure);
  }

  @Test
  void levelsFarOffInAgeSayNothing() {
    rafts(2, 2, 2);
    assertEquals(Optional.empty(), cohort.expected("R0", 3.75 + 4.1));
  }

  @Test
  void rateIsLearntFromAllRafts() {
    rafts(2, 2, 2, 2, 2, 2);
    double[] rates = {0.1, 0.1, 0.1, 0.1, 0.1, -1};
    for (int day = 4; day < 12; day++) {
      List<Cohort.Level> tonight = new ArrayList<>();
      for (int i = 0; i < rates.length; i++) {
        tonight.add(Levels.tonight(patches.get(i), day, 2 + rates[i] * (day - 3), BENCH));
      }
      cohort.learnRate(tonight);
      tonight.forEach(l -> l.patch().add(l.level()));
    }
    // Five rafts grow by 0.1 a day, one shrinks: the wild one does not pull.
    assertEquals(0.1, cohort.rate(), 0.01);
    assertTrue(cohort.rateSdAhead(0) < 0.03, "sd " + cohort.rateSdAhead(0));
  }

  @Test
  void raftsFoundToLagAreNoYardstickWhileEnoughSoundOnesAreLeft() {
    rafts(2, 2, 2, 2, 1.4, 1.4, 1.4);
    for (Patch patch : patches.subList(4, 7)) {
      patch.faulty(true);
    }
    assertEquals(2, cohort.expected("R0", 3.75).orElseThrow().lnArea(), 1e-9);
  }

  @Test
  void pondIsHeldAgainstOtherPondsAlone() {
    rafts(1, 2, 1, 2, 1, 2);
    assertEquals(2, cohort.expectedElsewhere("P0", 3.75).orElseThrow().lnArea(), 1e-9);
    assertEquals(1, cohort.expectedElsewhere("P1", 3.75).orElseThrow().lnArea(), 1e-9);
  }

  @Test
  void raftAloneIsHeldAgainstItselfAndAsAWholeAgainstNothing() {
    rafts(2);
    assertEquals(2, cohort.expected("R0", 3.75).orElseThrow().lnArea(), 1e-9);
    assertEquals(Optional.empty(), cohort.expectedOfRaft("R0", 3.75));
    assertEquals(Optional.empty(), cohort.expectedElsewhere("P0", 3.75));
  }

  @Test
  void doubtedLevelsDoNotCount() {
    rafts(2, 2, 2, 2);
    patches.get(1).add(Levels.level(4, 0.5, BENCH).doubted());
    assertEquals(2, cohort.expected("R0", 3.75).orElseThrow().lnArea(), 1e-9);
    assertEquals(4, cohort.goodLevels().size());
    assertEquals(Optional.of(Levels.FIRST.plusDays(4)), cohort.lastSeen());
  }
}
