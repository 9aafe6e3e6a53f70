// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.truth.MeasureTruth;
import org.raftgauge.proving.truth.PlantTruth;

final class GrowPlantTest {

  private static PlantTruth truth(Mesh plant) {
    Mesh scene = new Mesh();
    scene.append(plant, Placement.NONE, 1);
    return MeasureTruth.measure(scene).get(1);
  }

  @ParameterizedTest
  @EnumSource(Habit.class)
  void thePlantReachesTheAreaThatWasOrdered(Habit habit) {
    for (double area : new double[] {2, 30, 180}) {
      PlantTruth truth = truth(GrowPlant.grow(new PlantOrder(habit, Tone.GREEN, area, 11)));
      // PlantOrder promises "within a few percent"
      assertEquals(area, truth.projectedAreaCm2(), 0.06 * area);
    }
  }

  @ParameterizedTest
  @EnumSource(Habit.class)
  void noLeafGrowsThroughTheDeck(Habit habit) {
    Mesh plant = GrowPlant.grow(new PlantOrder(habit, Tone.GREEN, 120, 5));
    for (int i = 0; i < plant.vertices(); i++) {
      assertTrue(plant.z(i) >= 0, "vertex at " + plant.z(i) + " mm");
    }
  }

  @ParameterizedTest
  @EnumSource(Habit.class)
  void aLargerPlantStandsHigher(Habit habit) {
    double small = truth(GrowPlant.grow(new PlantOrder(habit, Tone.GREEN, 10, 8))).meanHeightMm();
    double large = truth(GrowPlant.grow(new PlantOrder(habit, Tone.GREEN, 150, 8))).meanHeightMm();
    assertTrue(large > 1.3 * small, small + " mm and " + large + " mm");
  }

  @Test
  void theSameSeedGrowsTheSamePlantAndAnotherSeedAnother() {
    PlantTruth one = truth(GrowPlant.grow(new PlantOrder(Habit.OAKLEAF, Tone.RED, 50, 1)));
    PlantTruth again = truth(GrowPlant.grow(new PlantOrder(Habit.OAKLEAF, Tone.RED, 50, 1)));
    PlantTruth other = truth(GrowPlant.grow(new PlantOrder(Habit.OAKLEAF, Tone.RED, 50, 2)));
    assertEquals(one, again);
    assertTrue(one.topHeightMm() != other.topHeightMm());
  }

  @Test
  void aPlantWithoutAreaIsRefused() {
    assertEquals(
        "areaCm2 must be > 0, got 0.0",
        assertThrows(
                IllegalArgumentException.class, () -> new PlantOrder(Habit.BASIL, Tone.GREEN, 0, 1))
            .getMessage());
  }
}
