// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.raftgauge.proving.scene.Sown;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.truth.MeasureTruth;

/** Rafts that are photographed while they grow. */
class GrowingTest {

  @Test
  void aRaftIsPhotographedOnTwelveEveningsOnTheSameBoard() {
    List<PhotoPlan> plans = SetName.GROWING.plan(new SetName.Order(3, 30, 1));
    Map<String, List<PhotoPlan>> rafts =
        plans.stream()
            .collect(Collectors.groupingBy(p -> p.raft(0), TreeMap::new, Collectors.toList()));

    // 30 photos are two whole rafts.
    assertEquals(List.of("GRO-BUT-0", "GRO-OAK-1"), List.copyOf(rafts.keySet()));
    for (List<PhotoPlan> evenings : rafts.values()) {
      LocalDate transplanted = LocalDate.of(2026, 3, 10);
      assertEquals(
          Growing.EVENINGS.stream().map(transplanted::plusDays).toList(),
          evenings.stream().map(PhotoPlan::date).toList());
      assertEquals(1, evenings.stream().map(PhotoPlan::layout).distinct().count());
      assertEquals(12, evenings.stream().map(PhotoPlan::path).distinct().count());
    }
  }

  @Test
  void everyPlantKeepsItsKindAndItsShareOfTheUsualSize() {
    List<Sown> young = fill(10);
    List<Sown> late = fill(24);
    double usual = new Growing(0, 24, 5).areaOverPitch() / new Growing(0, 10, 5).areaOverPitch();

    assertEquals(young.stream().map(Sown::kind).toList(), late.stream().map(Sown::kind).toList());
    int sound = 0;
    for (int i = 0; i < young.size(); i++) {
      if (young.get(i).kind().equals("ok")) {
        double grown = areaCm2(late.get(i)) / areaCm2(young.get(i));
        // 14 days of 1 % each spread by 3.7 %; four of those, and leaves that unfold unevenly.
        assertEquals(usual, grown, 0.2 * usual, "" + young.get(i).site());
        sound++;
      }
    }
    assertTrue(sound >= 9, "sound plants: " + sound);
  }

  private static List<Sown> fill(int dat) {
    Growing growing = new Growing(0, dat, 5);
    FillRaft.Crop crop =
        new FillRaft.Crop(
            Boards.DECK_18.grid(), CropKind.BUTTERHEAD, Stage.MIDDLE, true, Optional.of(growing));
    return FillRaft.fill(crop, new Random(growing.seed()));
  }

  private static double areaCm2(Sown sown) {
    Mesh owned = new Mesh();
    owned.append(sown.plant().orElseThrow(), new Placement(0, 0, 0), 1);
    return MeasureTruth.measure(owned).get(1).projectedAreaCm2();
  }
}
