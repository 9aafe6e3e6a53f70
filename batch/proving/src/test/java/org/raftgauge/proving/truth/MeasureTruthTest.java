// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.truth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Patch;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.solid.Shapes;

final class MeasureTruthTest {

  @Test
  void aFlatRoundLeafHasTheAreaOfItsDisc() {
    PlantTruth truth = MeasureTruth.measure(Shapes.disc(50, 30)).get(1);
    // pi * 5 cm * 5 cm = 78.540 cm2; 0.25 mm cells over a 314 mm outline are off by well under 0.1
    // %
    assertEquals(78.540, truth.projectedAreaCm2(), 0.05);
    assertEquals(30, truth.meanHeightMm(), 1e-4);
    assertEquals(30, truth.topHeightMm(), 1e-4);
  }

  @Test
  void aTiltedPlateCoversItsAreaTimesTheCosine() {
    PlantTruth truth = MeasureTruth.measure(Shapes.plate(80, 60, Math.toRadians(40))).get(1);
    // 8 cm * 8 cm * cos 40 deg = 49.027 cm2; two 80 mm edges may be off by half a cell: 0.2 cm2
    assertEquals(49.027, truth.projectedAreaCm2(), 0.2);
    // symmetric about its middle at 60 mm; the cells may sit up to half a cell to one side
    assertEquals(60, truth.meanHeightMm(), 0.15);
    // 60 + 40 sin 40 deg = 85.71 mm, less at most one cell's rise
    assertEquals(85.71, truth.topHeightMm(), 0.25);
  }

  @Test
  void aHigherLeafHidesWhatLiesUnderIt() {
    Mesh scene = new Mesh();
    scene.append(Shapes.plate(100, 20, 0), Placement.NONE, 1);
    scene.append(Shapes.plate(40, 50, 0), new Placement(30, 0, 0), 2);
    // 100 cm2, of which the 40 mm plate's whole 16 cm2 are hidden; edges may be off by half a cell
    assertEquals(100, MeasureTruth.measure(scene).get(1).projectedAreaCm2(), 0.5);
    assertEquals(84, MeasureTruth.measure(scene).get(1).visibleAreaCm2(), 0.5);
    assertEquals(16, MeasureTruth.measure(scene).get(2).visibleAreaCm2(), 0.2);
  }

  @Test
  void aPlantOfNoMeasuredSiteCoversButIsNotMeasured() {
    Mesh scene = new Mesh();
    scene.append(Shapes.plate(100, 20, 0), Placement.NONE, 1);
    scene.append(Shapes.plate(40, 50, 0), Placement.NONE, Patch.FOREIGN);
    assertFalse(MeasureTruth.measure(scene).containsKey(Patch.FOREIGN));
    assertEquals(84, MeasureTruth.measure(scene).get(1).visibleAreaCm2(), 0.5);
  }

  @Test
  void turningAndMovingAPlantKeepsItsArea() {
    Mesh scene = new Mesh();
    scene.append(Shapes.plate(80, 40, 0.3), new Placement(123.4, 56.7, 0.7), 1);
    // 64 cm2 * cos 0.3 = 61.142 cm2
    assertEquals(61.142, MeasureTruth.measure(scene).get(1).projectedAreaCm2(), 0.15);
  }
}
