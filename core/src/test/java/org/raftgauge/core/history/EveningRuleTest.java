// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;

class EveningRuleTest {
  private static final Instant SIX = Instant.parse("2026-04-16T17:00:00Z");

  @Test
  void betterPhotoCountsThoughItIsEarlier() {
    Shot good = new Shot("b.jpg", SIX, 0.9);
    Shot later = new Shot("a.jpg", SIX.plusSeconds(600), 0.8);
    assertEquals(good, EveningRule.best(List.of(good, later)));
  }

  @Test
  void ofEqualPhotosTheLaterCounts() {
    Shot first = new Shot("b.jpg", SIX, 0.9);
    Shot later = new Shot("a.jpg", SIX.plusSeconds(1), 0.9);
    assertEquals(later, EveningRule.best(List.of(later, first)));
  }

  @Test
  void ofPhotosOfOneSecondTheFirstByNameCounts() {
    Shot a = new Shot("a.jpg", SIX, 0.9);
    Shot b = new Shot("b.jpg", SIX, 0.9);
    assertEquals(a, EveningRule.best(List.of(b, a)));
  }

  @Test
  void choiceDoesNotDependOnTheOrder() {
    Random random = new Random(3);
    List<Shot> shots = new java.util.ArrayList<>();
    for (int i = 0; i < 12; i++) {
      shots.add(new Shot(i + ".jpg", SIX.plusSeconds(random.nextInt(3)), random.nextInt(3) / 2.0));
    }
    Shot best = EveningRule.best(shots);
    for (int n = 0; n < 50; n++) {
      Collections.shuffle(shots, random);
      assertEquals(best, EveningRule.best(shots));
    }
  }

  @Test
  void noPhotoIsAWrongCall() {
    assertEquals(
        "shots must be one or more, got none",
        assertThrows(IllegalArgumentException.class, () -> EveningRule.best(List.of()))
            .getMessage());
    assertEquals(
        "quality must be 0 to 1, got 1.5",
        assertThrows(IllegalArgumentException.class, () -> new Shot("a", SIX, 1.5)).getMessage());
  }

  @Test
  void repeatabilityIsTheErrorOfOnePhoto() {
    // d = ln(1.1) and ln(0.9): sqrt((0.0953102^2 + 0.1053605^2) / 4), by hand.
    Map<SiteId, Double> first = Map.of(SiteId.parse("A1"), 11.0, SiteId.parse("A2"), 9.0);
    Map<SiteId, Double> second = Map.of(SiteId.parse("A1"), 10.0, SiteId.parse("A2"), 10.0);
    double expected = Math.sqrt((0.0953101798 * 0.0953101798 + 0.1053605157 * 0.1053605157) / 4);
    assertEquals(expected, EveningRule.repeatabilityLn(first, second).orElseThrow(), 1e-9);
    assertEquals(expected, EveningRule.repeatabilityLn(second, first).orElseThrow(), 1e-9);
  }

  @Test
  void emptySitesAndSitesOfOnePhotoDoNotCount() {
    Map<SiteId, Double> first =
        Map.of(SiteId.parse("A1"), 10.0, SiteId.parse("A2"), 0.0, SiteId.parse("A3"), 5.0);
    Map<SiteId, Double> second = Map.of(SiteId.parse("A1"), 10.0, SiteId.parse("A2"), 3.0);
    assertEquals(OptionalDouble.of(0), EveningRule.repeatabilityLn(first, second));
    assertEquals(OptionalDouble.empty(), EveningRule.repeatabilityLn(first, Map.of()));
  }

  @Test
  void repeatabilityFindsTheErrorThatWasPutIn() {
    Random random = new Random(11);
    Map<SiteId, Double> first = new HashMap<>();
    Map<SiteId, Double> second = new HashMap<>();
    for (int i = 0; i < 4000; i++) {
      double area = Math.exp(random.nextGaussian());
      first.put(new SiteId(i / 100, i % 100), area * Math.exp(0.03 * random.nextGaussian()));
      second.put(new SiteId(i / 100, i % 100), area * Math.exp(0.03 * random.nextGaussian()));
    }
    // Standard error of an estimate from n pairs: 0.03 / sqrt(2 n) = 0.00034; four of them.
    assertEquals(0.03, EveningRule.repeatabilityLn(first, second).orElseThrow(), 0.0014);
  }

  @Test
  void photosContradictEachOtherWhereTheirPlantsDifferTenTimesTheUsual() {
    Map<SiteId, Double> first = areas(10, 20, 40);
    // Half as large throughout: ln 2 = 0.693, over 0.3 x sqrt(2) = 0.424.
    assertEquals(2, EveningRule.contradiction(first, areas(5, 10, 20)).orElseThrow(), 1e-12);
    // 1.5 times: 0.405, just within.
    assertTrue(EveningRule.contradiction(first, areas(15, 30, 60)).isEmpty());
    // Other plants that come to as much leaf: the middle one of ln 2, ln 3 and ln 4 (1 / 4) is ln
    // 3.
    assertEquals(3, EveningRule.contradiction(first, areas(20, 60, 10)).orElseThrow(), 1e-12);
  }

  @Test
  void aPlantTakenOutBetweenTwoPhotosIsNoContradiction() {
    assertTrue(EveningRule.contradiction(areas(10, 20, 40), areas(10, 20, 1)).isEmpty());
  }

  @Test
  void twoPlantsAreTooFewToContradict() {
    assertTrue(EveningRule.contradiction(areas(10, 20, 0), areas(100, 200, 40)).isEmpty());
  }

  private static Map<SiteId, Double> areas(double a, double b, double c) {
    return Map.of(new SiteId(0, 0), a, new SiteId(0, 1), b, new SiteId(0, 2), c);
  }
}
