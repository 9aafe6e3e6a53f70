// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;

class PickSitesTest {

  @Test
  void wholeRangeIsSampledThoughMostPlantsAreHeavy() {
    List<PickSites.Pick> picks = PickSites.pick(candidates(200, 0), 16, 1);
    assertEquals(16, picks.size());
    // 8 parts, 16 picks, and sites in every part: two from each.
    for (int part = 1; part <= 8; part++) {
      int p = part;
      assertEquals(2, picks.stream().filter(k -> k.part() == p).count(), "part " + part);
    }
  }

  @Test
  void noSiteIsPickedTwice() {
    List<PickSites.Pick> picks = PickSites.pick(candidates(30, 10), 40, 5);
    assertEquals(40, picks.size());
    assertEquals(40, new HashSet<>(picks.stream().map(PickSites.Pick::candidate).toList()).size());
  }

  @Test
  void closedSitesGetAThirdWhereThereAreEnough() {
    List<PickSites.Pick> picks = PickSites.pick(candidates(180, 20), 24, 2);
    assertEquals(8, picks.stream().filter(p -> p.candidate().regime() == Regime.CLOSED).count());
  }

  @Test
  void closedSitesFillUpWhereOpenOnesRunOut() {
    List<PickSites.Pick> picks = PickSites.pick(candidates(4, 60), 24, 2);
    assertEquals(24, picks.size());
    assertTrue(picks.stream().filter(p -> p.candidate().regime() == Regime.CLOSED).count() >= 20);
  }

  @Test
  void sameSeedPicksTheSameInAnyOrderOfCandidates() {
    List<PickSites.Candidate> candidates = candidates(100, 20);
    List<PickSites.Candidate> shuffled = new ArrayList<>(candidates);
    java.util.Collections.shuffle(shuffled, new Random(9));
    assertEquals(PickSites.pick(candidates, 20, 4), PickSites.pick(shuffled, 20, 4));
    assertNotEquals(PickSites.pick(candidates, 20, 4), PickSites.pick(candidates, 20, 5));
  }

  @Test
  void everySiteOfAPartHasTheSameChance() {
    List<PickSites.Candidate> alike = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      alike.add(new PickSites.Candidate("KV-1", new SiteId(0, i), Regime.OPEN, 100));
    }
    int[] times = new int[10];
    for (long seed = 0; seed < 4000; seed++) {
      PickSites.pick(alike, 1, seed).forEach(p -> times[p.candidate().site().column()]++);
    }
    for (int n : times) {
      // Binomial: 400 expected, sd 19; five of them for ten sites.
      assertEquals(400, n, 95);
    }
  }

  @Test
  void fewerSitesThanAskedForAreAllPickedInOrder() {
    List<PickSites.Pick> picks = PickSites.pick(candidates(3, 2), 50, 1);
    assertEquals(5, picks.size());
    List<String> names =
        picks.stream()
            .map(p -> p.candidate().raft() + p.candidate().site())
            .collect(Collectors.toList());
    assertEquals(names.stream().sorted().toList(), names);
    assertEquals(List.of(), PickSites.pick(List.of(), 5, 1));
  }

  @Test
  void countBelowOneIsAWrongCall() {
    String message =
        assertThrows(IllegalArgumentException.class, () -> PickSites.pick(candidates(3, 0), 0, 1))
            .getMessage();
    assertEquals("count must be >= 1, got 0", message);
  }

  /** Sizes from 20 to 200, nine of ten in the upper half. */
  private static List<PickSites.Candidate> candidates(int open, int closed) {
    Random random = new Random(17);
    List<PickSites.Candidate> all = new ArrayList<>();
    for (int i = 0; i < open + closed; i++) {
      double at = i % 10 == 0 ? (i / 10 % 20) / 20.0 : 0.5 + random.nextDouble() / 2;
      Regime regime = i < open ? Regime.OPEN : Regime.CLOSED;
      all.add(
          new PickSites.Candidate(
              "KV-" + i / 18, new SiteId(i % 18 / 3, i % 3), regime, 20 * Math.pow(10, at)));
    }
    return all;
  }
}
