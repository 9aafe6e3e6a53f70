// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleBiFunction;
import org.junit.jupiter.api.Test;

/** Ten rafts a station, from 6 to 150 cm2, that have grown by the cohort's 0.15 since yesterday. */
class FindStationStepsTest {
  private static final int RAFTS = 10;

  private final Random random = new Random(17);

  /** Returns tonight's levels; the departure is asked by the number of the raft and ln(area). */
  private List<Cohort.Level> station(
      String station, int ponds, ToDoubleBiFunction<Integer, Double> departs) {
    List<Cohort.Level> levels = new ArrayList<>();
    Cohort cohort = Levels.settled();
    for (int raft = 0; raft < RAFTS; raft++) {
      Patch patch = Levels.patch(station + raft, station + "-pond-" + raft % ponds, cohort);
      double before = Math.log(6) + 0.35 * raft;
      patch.add(Levels.level(5, before, station));
      double now = before + 0.15 + 0.015 * random.nextGaussian();
      levels.add(Levels.tonight(patch, 6, now + departs.applyAsDouble(raft, before), station));
    }
    return levels;
  }

  @SafeVarargs
  private static List<StationStep> find(List<Cohort.Level>... stations) {
    List<Cohort.Level> all = new ArrayList<>();
    for (List<Cohort.Level> levels : stations) {
      all.addAll(levels);
    }
    return new FindStationSteps(all).find();
  }

  @Test
  void quietEveningHasNoStep() {
    assertEquals(
        List.of(), find(station("a", 2, (raft, ln) -> 0), station("b", 2, (raft, ln) -> 0)));
  }

  @Test
  void stepOfAllSizesInAllPondsIsFoundWithItsSize() {
    List<StationStep> steps =
        find(station("a", 2, (raft, ln) -> Math.log(0.85)), station("b", 2, (raft, ln) -> 0));
    assertEquals(1, steps.size());
    StationStep step = steps.get(0);
    assertEquals("a", step.station());
    assertEquals(Math.log(0.85), step.ln(), 0.02);
    assertEquals(RAFTS, step.rafts());
    assertEquals(1, step.days(), 1e-9);
    assertTrue(step.inAllPonds());
  }

  @Test
  void jumpOfAllPlantsIsNoCamerasWhileTheirGrowthIsNotKnown() {
    // Plants that grow by 0.25 a day, seen for the second time: 0.1 over the first guess of 0.15.
    Cohort young = Levels.cohort();
    List<Cohort.Level> levels = new ArrayList<>();
    for (int raft = 0; raft < RAFTS; raft++) {
      Patch patch = Levels.patch("young" + raft, "pond-" + raft % 2, young);
      patch.add(Levels.level(5, 2 + 0.1 * raft, "a"));
      levels.add(Levels.tonight(patch, 6, 2.25 + 0.1 * raft, "a"));
    }
    assertEquals(List.of(), find(levels));
  }

  @Test
  void stepAtAStationOfOnePondCannotBeThePondsOrTheCameras() {
    StationStep step =
        find(station("a", 1, (raft, ln) -> -0.2), station("b", 2, (raft, ln) -> 0)).get(0);
    assertFalse(step.inAllPonds());
  }

  @Test
  void weatherThatAllStationsSeeIsNoStep() {
    assertEquals(
        List.of(),
        find(station("a", 2, (raft, ln) -> -0.06), station("b", 2, (raft, ln) -> -0.06)));
  }

  @Test
  void departureOfOnePondOfTwoIsNoStepOfItsStation() {
    assertEquals(
        List.of(),
        find(
            station("a", 2, (raft, ln) -> raft % 2 == 0 ? -0.2 : 0),
            station("b", 2, (raft, ln) -> 0)));
  }

  @Test
  void departureThatLeansWithSizeIsGrowthNotTheCamera() {
    // Small plants lose 4 %, large ones 30 %.
    assertEquals(
        List.of(),
        find(station("a", 2, (raft, ln) -> -0.04 - 0.03 * raft), station("b", 2, (raft, ln) -> 0)));
  }

  @Test
  void stepIsFoundThoughWeatherLeansWithSizeEverywhere() {
    // A dull day takes 11 % off the smallest plants and nothing off the largest, at both stations.
    List<StationStep> steps =
        find(
            station("a", 2, (raft, ln) -> Math.log(0.85) - 0.11 + 0.012 * raft),
            station("b", 2, (raft, ln) -> -0.11 + 0.012 * raft));
    assertEquals(List.of("a"), steps.stream().map(StationStep::station).toList());
    assertEquals(Math.log(0.85), steps.get(0).ln(), 0.02);
  }

  @Test
  void leanOfAnotherStationHidesNoStep() {
    List<StationStep> steps =
        find(
            station("a", 2, (raft, ln) -> Math.log(0.85)),
            station("b", 2, (raft, ln) -> 0.03 - 0.01 * raft));
    assertEquals(List.of("a"), steps.stream().map(StationStep::station).toList());
  }

  @Test
  void twoStationsThatStepTheSameEveningAreBothFoundTheLargerFirst() {
    List<StationStep> steps =
        find(
            station("a", 2, (raft, ln) -> -0.12),
            station("b", 2, (raft, ln) -> -0.3),
            station("c", 2, (raft, ln) -> 0));
    assertEquals(List.of("b", "a"), steps.stream().map(StationStep::station).toList());
  }

  @Test
  void soundStationIsNotBlamedForWhatTheOnlyOtherOneShows() {
    // Half of a departs, so its median does; b stands still and must not be said to step up.
    assertEquals(
        List.of(),
        find(
            station("a", 2, (raft, ln) -> raft % 2 == 0 ? -0.3 : -0.02),
            station("b", 2, (raft, ln) -> 0)));
  }

  @Test
  void twoRaftsAreTooFewToTell() {
    assertEquals(List.of(), find(station("a", 2, (raft, ln) -> -0.3).subList(0, 2)));
  }

  @Test
  void brightStationStepsUp() {
    StationStep step =
        find(station("a", 2, (raft, ln) -> 0.2), station("b", 2, (raft, ln) -> 0)).get(0);
    // exp(0.2) - 1 = 22 %, noise of 1.5 % over ten rafts.
    assertTrue(
        step.words()
            .matches(
                "all 10 rafts at station a stepped by \\+2[0-5] % off their own growth in one"
                    + " evening, whatever their size"),
        step.words());
  }
}
