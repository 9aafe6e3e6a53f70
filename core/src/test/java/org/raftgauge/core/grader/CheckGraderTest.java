// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.grader.GraderCheck.Advice;

class CheckGraderTest {
  private static final RegimeFit FIT =
      Plants.fitted(Plants.open(60, 0.1, 3)).fit(Regime.OPEN).orElseThrow();

  @Test
  void plantsOfTheSameRelationKeepTheGraderMostOfTheTime() {
    int kept = 0;
    for (long seed = 100; seed < 140; seed++) {
      GraderCheck check = CheckGrader.check(FIT, Plants.open(15, 0.1, seed));
      kept += check.advice() == Advice.KEEP ? 1 : 0;
    }
    // Bias interval at 95 % and a bound of 5 %, outliers at 1 %: few false alarms.
    assertTrue(kept >= 36, kept + " of 40 kept");
  }

  @Test
  void plantsThatAllWeighMoreAskForARefit() {
    GraderCheck check = CheckGrader.check(FIT, heavier(Plants.open(20, 0.1, 7), 1.15));
    assertEquals(Advice.REFIT, check.advice());
    assertTrue(check.why().startsWith("the grader reads "), check.why());
    assertTrue(check.why().contains("% too light"), check.why());
    // Predicted over weighed is 1 / 1.15.
    assertEquals(1 / 1.15 - 1, check.biasShare(), 0.06);
    assertTrue(check.biasLo95() < check.biasShare() && check.biasShare() < check.biasHi95());
  }

  @Test
  void biasBeyondWhatPlantsDoIsInvestigated() {
    GraderCheck check = CheckGrader.check(FIT, heavier(Plants.open(20, 0.1, 7), 0.5));
    assertEquals(Advice.INVESTIGATE, check.advice());
    assertTrue(check.why().contains("check scale, state (whole or trimmed)"), check.why());
  }

  @Test
  void slowDriftShowsInTheCusum() {
    List<Weighed> drifting = new ArrayList<>();
    List<Weighed> plants = Plants.open(40, 0.1, 8);
    for (int i = 0; i < plants.size(); i++) {
      drifting.add(heavier(plants.subList(i, i + 1), 1 + 0.006 * i).get(0));
    }
    GraderCheck check = CheckGrader.check(FIT, drifting);
    assertTrue(check.drift().firstSignal().isPresent());
    assertTrue(check.drift().firstSignal().getAsInt() > 5, "not at once");
    assertEquals(Advice.REFIT, check.advice(), check.why());
  }

  @Test
  void wildWeighingsAreInvestigatedAndNamed() {
    List<Weighed> wild = new ArrayList<>(Plants.open(20, 0.1, 9));
    for (int i : new int[] {3, 8, 12, 15}) {
      wild = Plants.withWeight(wild, i, wild.get(i).freshWeightG() * (i % 2 == 0 ? 2 : 0.5));
    }
    GraderCheck check = CheckGrader.check(FIT, wild);
    assertEquals(Advice.INVESTIGATE, check.advice(), check.why());
    assertTrue(check.outside() >= 4);
    assertTrue(check.suspects().size() >= 3, check.suspects().toString());
  }

  @Test
  void fewOrNoNewWeighingsSayHowManyAreNeeded() {
    GraderCheck few = CheckGrader.check(FIT, Plants.open(3, 0.1, 1));
    assertEquals("3 new weighings are too few to tell; weigh at least 5 plants", few.why());
    assertEquals(Advice.WEIGH, few.advice(), "nothing speaks against it");
    GraderCheck none = CheckGrader.check(FIT, List.of());
    assertEquals("nothing to check yet: no weighing is newer than the fit", none.why());
    assertEquals(Advice.WEIGH, none.advice());
  }

  @Test
  void weighingsBeyondTheGradersRangeAreSaid() {
    List<Weighed> plants = new ArrayList<>(Plants.open(6, 0.1, 1));
    plants.add(Plants.plant(99, Traits.ofArea("", 3000), Regime.OPEN, 1300));
    GraderCheck check = CheckGrader.check(FIT, plants);
    assertEquals(7, check.weighings());
    assertTrue(
        check.notTold().get(0).contains("told, but area_cm2 3000 is beyond the weighings"),
        check.notTold().toString());
  }

  private static List<Weighed> heavier(List<Weighed> plants, double factor) {
    List<Weighed> changed = plants;
    for (int i = 0; i < plants.size(); i++) {
      changed = Plants.withWeight(changed, i, plants.get(i).freshWeightG() * factor);
    }
    return changed;
  }
}
