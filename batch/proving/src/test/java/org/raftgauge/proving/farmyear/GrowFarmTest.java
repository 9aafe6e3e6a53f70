// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.farmyear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Event;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.proving.verdict.TrueSite;

class GrowFarmTest {
  private static final YearPlan PLAN = new YearPlan(40, false, false);

  @TempDir private Path folder;

  @Test
  void sameSeedGivesTheSameYearAndAnotherSeedAnother() {
    GrowFarm farm = new GrowFarm(PLAN, 3);
    GrowFarm again = new GrowFarm(PLAN, 3);
    List<TrueSite> sites = farm.grow();
    assertEquals(sites, again.grow());
    assertEquals(farm.events(), again.events());
    assertNotEquals(sites, new GrowFarm(PLAN, 4).grow());
  }

  @Test
  void onePhotoInTenIsMissing() {
    List<TrueSite> sites = new GrowFarm(PLAN, 3).grow();
    double missing = sites.stream().filter(s -> s.look().isEmpty()).count() / (double) sites.size();
    // 1200 raft evenings: 0.1 with a standard deviation of 0.009.
    assertEquals(0.1, missing, 0.03);
  }

  @Test
  void bookTellsTheMovesReplacementsAndCutsWithoutAProblem() throws IOException {
    GrowFarm farm = new GrowFarm(PLAN, 3);
    farm.grow();
    CropBook book = FarmBook.write(folder, farm);
    assertEquals(farm.events().size(), book.events().size());
    Set<Event.Kind> kinds = book.events().stream().map(Event::kind).collect(Collectors.toSet());
    assertEquals(Set.of(Event.Kind.MOVED, Event.Kind.REPLACED, Event.Kind.CUT), kinds);
  }

  @Test
  void healthyPlantsHaveTheMedianByTheirOwnMedian() {
    double[] shares =
        new GrowFarm(PLAN, 3)
            .grow().stream()
                .filter(s -> s.plight().kind().equals("healthy"))
                .mapToDouble(TrueSite::trueShare)
                .sorted()
                .toArray();
    assertEquals(1, shares[shares.length / 2], 0.03);
  }

  @Test
  void dimCameraSeesLessAndPlantsAreAsEver() {
    List<TrueSite> sound = new GrowFarm(PLAN, 3).grow();
    List<TrueSite> dim = new GrowFarm(new YearPlan(40, false, true), 3).grow();
    int seen = 0;
    for (int i = 0; i < sound.size(); i++) {
      TrueSite s = sound.get(i);
      assertEquals(s.trueShare(), dim.get(i).trueShare(), 1e-12);
      boolean fails = s.evening().isAfter(GrowFarm.FIRST.plusDays(YearPlan.FAILS));
      if (fails && s.look().filter(l -> l.station().equals("west")).isPresent()) {
        double was = area(s.look().orElseThrow());
        if (was > 10 && was < 300) {
          assertTrue(area(dim.get(i).look().orElseThrow()) < 0.9 * was);
          seen++;
        }
      }
    }
    assertTrue(seen > 100, "seen " + seen);
  }

  private static double area(SiteLook look) {
    return look.measure().projectedAreaCm2().orElseThrow();
  }

  @Test
  void slowPondLosesWhatItsFeedSays() {
    GrowFarm farm = new GrowFarm(new YearPlan(40, true, false), 3);
    List<TrueSite> slow = farm.grow();
    List<TrueSite> sound = new GrowFarm(PLAN, 3).grow();
    assertTrue(farm.tenPercentLostOn().isAfter(GrowFarm.FIRST.plusDays(YearPlan.FAILS)));
    double lost = 0;
    int n = 0;
    for (int i = 0; i < slow.size(); i++) {
      boolean pond = GrowFarm.pond(Integer.parseInt(slow.get(i).raft().substring(1))).equals("N2");
      if (pond
          && slow.get(i).evening().equals(GrowFarm.FIRST.plusDays(YearPlan.FAILS + 5))
          && sound.get(i).trueShare() > 0) {
        lost += slow.get(i).trueShare() / sound.get(i).trueShare();
        n++;
      }
    }
    // Five days at 60 % of a growth of 0.03 to 0.2 a day leave 67 to 94 % of the area.
    assertEquals(0.8, lost / n, 0.13);
  }
}
