// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SettleTurns.Look;
import org.raftgauge.core.history.SettleTurns.Turn;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;

class SettleTurnsTest {
  private static final SiteGrid GRID = new SiteGrid(6, 3, 120, 150, 180, 180, 0);
  private static final Turn STRAIGHT = new Turn(false, "");
  private static final Turn TURNED = new Turn(true, "");

  /** A raft of plants that differ by 17 % and grow by a fifth a day, give or take 3 %. */
  private final Random random = new Random(4);

  private Map<SiteId, Double> areas = even(0.17);

  @Test
  void aBoardTurnedInItsSlotIsNamedFromTheOtherEndUntilItIsTurnedBack() {
    List<Look> looks = new ArrayList<>();
    for (int day = 0; day < 6; day++) {
      boolean lies = day == 2 || day == 3;
      looks.add(slot("S1", lies ? turned(areas) : areas));
      grow(1.2);
    }
    assertEquals(
        List.of(STRAIGHT, STRAIGHT, TURNED, TURNED, STRAIGHT, STRAIGHT), SettleTurns.settle(looks));
  }

  @Test
  void theFirstLookInASlotLiesAsTheStationFileSays() {
    assertEquals(List.of(STRAIGHT), SettleTurns.settle(List.of(slot("S1", areas))));
  }

  @Test
  void aBoardLeftInItsSlotStaysStraightThoughItsPlantsAreAllAlike() {
    areas = even(0);
    List<Look> looks = new ArrayList<>();
    for (int day = 0; day < 5; day++) {
      looks.add(slot("S1", areas));
      grow(1.2);
    }
    assertEquals(
        List.of(STRAIGHT, STRAIGHT, STRAIGHT, STRAIGHT, STRAIGHT), SettleTurns.settle(looks));
  }

  @Test
  void anOutlineIsSettledByTheLookBeforeAndHeldWithoutOne() {
    Look first = look(PoseSource.OUTLINE, false, areas);
    Look marked = look(PoseSource.MARKERS, true, areas);
    grow(1.2);
    Look straight = look(PoseSource.OUTLINE, false, areas);
    Look far = look(PoseSource.OUTLINE, false, turned(areas));
    assertEquals(
        List.of(new Turn(false, SettleTurns.NO_EVENING_BEFORE), STRAIGHT, TURNED, STRAIGHT),
        SettleTurns.settle(List.of(first, marked, far, straight)));
  }

  @Test
  void anOutlineOfPlantsThatAreAllAlikeIsHeld() {
    areas = even(0);
    Look marked = look(PoseSource.MARKERS, true, areas);
    grow(1.2);
    assertEquals(
        new Turn(false, SettleTurns.EITHER_WAY),
        SettleTurns.settle(List.of(marked, look(PoseSource.OUTLINE, false, areas))).get(1));
  }

  @Test
  void inAnotherSlotThanBeforeThePatternAloneDecides() {
    Look before = slot("S1", areas);
    grow(1.2);
    Map<SiteId, Double> alike = even(0);
    assertEquals(
        List.of(STRAIGHT, TURNED), SettleTurns.settle(List.of(before, slot("S2", turned(areas)))));
    assertEquals(
        SettleTurns.EITHER_WAY,
        SettleTurns.settle(List.of(slot("S1", alike), slot("S2", alike))).get(1).held());
  }

  @Test
  void otherPlantsThanBeforeTellNothing() {
    Look before = look(PoseSource.MARKERS, true, areas);
    Look fresh = look(PoseSource.OUTLINE, false, turned(areas));
    Look replanted = new Look(fresh.raft(), "bench", plants("new"), 1);
    assertEquals(
        SettleTurns.NO_EVENING_BEFORE,
        SettleTurns.settle(List.of(before, replanted)).get(1).held());
  }

  @Test
  void aTurnedBoardOfTwoCropsIsHeldAsItWasMeasuredWithTheWrongOnes() {
    Look before = look(PoseSource.MARKERS, true, areas);
    Look far = look(PoseSource.OUTLINE, false, turned(areas));
    Look two = new Look(far.raft(), far.station(), far.plants(), 2);
    assertEquals(SettleTurns.SEVERAL_CROPS, SettleTurns.settle(List.of(before, two)).get(1).held());
  }

  @Test
  void aHeldLookDecidesNothing() {
    Look held = look(PoseSource.MARKERS, true, turned(areas));
    Look notUsed = new Look(held.raft().withHeld("blurred"), "bench", plants("p"), 1);
    Look before = look(PoseSource.MARKERS, true, areas);
    assertEquals(
        STRAIGHT,
        SettleTurns.settle(List.of(before, notUsed, look(PoseSource.OUTLINE, false, areas)))
            .get(2));
  }

  private Map<SiteId, Double> even(double spread) {
    Map<SiteId, Double> even = new HashMap<>();
    GRID.sites().forEach(s -> even.put(s, 40 * Math.exp(spread * random.nextGaussian())));
    return even;
  }

  private void grow(double times) {
    Map<SiteId, Double> grown = new HashMap<>();
    areas.forEach((s, a) -> grown.put(s, a * times * Math.exp(0.03 * random.nextGaussian())));
    areas = grown;
  }

  private static Map<SiteId, Double> turned(Map<SiteId, Double> areas) {
    Map<SiteId, Double> turned = new HashMap<>();
    areas.forEach((site, area) -> turned.put(HalfTurn.opposite(GRID, site), area));
    return turned;
  }

  private static Map<SiteId, String> plants(String name) {
    Map<SiteId, String> plants = new HashMap<>();
    GRID.sites().forEach(s -> plants.put(s, name + "/" + s));
    return plants;
  }

  private static Look slot(String slot, Map<SiteId, Double> areas) {
    return new Look(raft(slot, PoseSource.SLOT, false, areas), "pond", plants("p"), 1);
  }

  private static Look look(PoseSource source, boolean known, Map<SiteId, Double> areas) {
    return new Look(raft("", source, known, areas), "bench", plants("p"), 1);
  }

  private static RaftMeasure raft(
      String slot, PoseSource source, boolean known, Map<SiteId, Double> areas) {
    return new RaftMeasure(
        Optional.of("R1"),
        slot,
        "deck-18",
        source,
        0.5,
        1,
        1600,
        known,
        OptionalDouble.of(0.2),
        OptionalDouble.of(0),
        GRID.sites().stream().map(s -> site(s, areas.get(s))).toList(),
        0.9,
        "");
  }

  private static SiteMeasure site(SiteId site, double areaCm2) {
    return new SiteMeasure(
        site,
        OptionalDouble.of(areaCm2),
        OptionalDouble.of(0.5),
        OptionalDouble.of(areaCm2),
        false,
        0,
        20,
        0.95,
        List.of(),
        List.of(),
        0.9,
        "");
  }
}
