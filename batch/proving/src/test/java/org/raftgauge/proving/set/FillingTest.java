// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.raftgauge.proving.scene.Medium;

class FillingTest {
  private static final SetName.Order ALL = new SetName.Order(1, Integer.MAX_VALUE, 1);

  @Test
  void everyFillingIsSownWithEveryCrop() {
    Map<String, List<PhotoPlan>> byLook =
        SetName.FILLINGS.plan(ALL).stream().collect(Collectors.groupingBy(PhotoPlan::look));
    assertEquals(10, byLook.size());
    Set<String> codes = new HashSet<>();
    byLook.forEach(
        (look, plans) -> {
          assertEquals(7, plans.stream().map(PhotoPlan::crop).distinct().count(), look);
          plans.forEach(p -> assertTrue(codes.add(p.path()), "twice: " + p.path()));
        });
  }

  @Test
  void drawnFillingsDifferAndAThirdOfThePlugsAreUsualOnes() {
    List<PhotoPlan> plans = SetName.DRAWN_FILLINGS.plan(new SetName.Order(1, 30, 1));
    assertEquals(30, plans.size());
    Set<Medium> media =
        plans.stream()
            .flatMap(p -> p.filling().stream())
            .map(Filling::medium)
            .collect(Collectors.toSet());
    assertEquals(20, media.size());
    assertTrue(plans.stream().map(PhotoPlan::crop).distinct().count() > 5);
  }

  @Test
  void theSameSeedDrawsTheSameFilling() {
    assertEquals(Filling.any(new Random(3)), Filling.any(new Random(3)));
    assertNotEquals(Filling.any(new Random(3)), Filling.any(new Random(4)));
  }
}
