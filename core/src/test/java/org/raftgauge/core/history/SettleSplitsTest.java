// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.BorderTakes;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Borders between plants, moved by what the look before knew; every number is worked out by hand.
 */
class SettleSplitsTest {
  private static final Instant FIRST = Instant.parse("2026-04-10T18:00:00Z");
  private static final Instant THEN = Instant.parse("2026-04-12T18:00:00Z");

  /** What moves at each step, cm2. */
  private static final BorderTakes TABLE = BorderTakes.ofCm2(10.0, 20.0, 30.0, 40.0, 50.0);

  @Test
  void aBorderMovesByWhatTheLookBeforeKnowsBetterThanThePhoto() {
    // Equal once; two days later the photo gives 180 and 220 cm2: ln of the radii's ratio
    // ln(180 / 220) / 2 = -0.1003. Nine tenths of the outlines shared: the photo's spread of that
    // is
    // 0.06 + 0.2 x 0.81 = 0.222; of the sizes before, each 0.03^2 + 2 x 0.01^2 = 0.0011, together
    // 0.0022. Weight of the look before 0.049284 / 0.051484 = 0.95727: the ratio rises by
    // 0.95727 x 0.10034 = 0.09605, at 10 cm2 for 0.1: 9.605 cm2.
    RaftMeasure settled = settle(apart(FIRST, 100, 100), meeting(THEN, 0.9, 180, 220));

    assertEquals(189.605, area(settled, 0), 0.002);
    assertEquals(210.395, area(settled, 1), 0.002);
    assertEquals(9.605, settled.sites().get(0).movedCm2(), 0.002);
    assertEquals(-9.605, settled.sites().get(1).movedCm2(), 0.002);
  }

  @Test
  void ofPlantsThatHardlyTouchThePhotoIsBelieved() {
    // 0.06 + 0.2 x 0.01 = 0.062, its square 0.003844: weight 0.003844 / 0.006044 = 0.6360.
    RaftMeasure settled = settle(apart(FIRST, 100, 100), meeting(THEN, 0.1, 180, 220));

    assertEquals(6.382, settled.sites().get(0).movedCm2(), 0.002);
  }

  @Test
  void theStandardErrorFallsByWhatTheBordersLeaveLessOpen() {
    // 10 cm2 for 0.1 is 100 cm2 for 1: the border's part of the variance is 1e4 x 0.049284 = 492.84
    // by the photo and 1e4 x 0.049284 x 0.0022 / 0.051484 = 21.06 now. 30^2 - 471.78 = 428.2.
    RaftMeasure settled = settle(apart(FIRST, 100, 100), meeting(THEN, 0.9, 180, 220));

    assertEquals(Math.sqrt(428.2), se(settled, 0), 0.01);
  }

  @Test
  void theStandardErrorKeepsHalfOfWhatThePhotoGave() {
    SettleSplits.Look tight = meeting(THEN, 0.9, 180, 220);
    List<SiteMeasure> sites = tight.raft().sites().stream().map(s -> s.moved(0, 10)).toList();
    RaftMeasure settled =
        settle(
            apart(FIRST, 100, 100),
            new SettleSplits.Look(tight.raft().withSites(sites), THEN, tight.plants()));

    assertEquals(5, se(settled, 0), 1e-9);
  }

  @Test
  void whatACropHasGrownIsNoReasonToMoveItsBorders() {
    // Two crops, two plants each; one has grown fourfold, the other not at all. The photo judges
    // both borders as the sizes stand, so there is nothing to settle.
    RaftMeasure settled =
        settle(
            twoCrops(apart(FIRST, 50, 80, 60, 90)), twoCrops(meeting(THEN, 0.9, 200, 320, 60, 90)));

    for (int i = 0; i < 4; i++) {
      assertEquals(0, settled.sites().get(i).movedCm2(), 1e-9);
    }
  }

  @Test
  void aPlantAloneOfItsCropKeepsWhatThePhotoGaveIt() {
    // What it has grown would be told by its own area, which is what is in doubt.
    Map<SiteId, SettleSplits.Standing> plants = new HashMap<>(apart(FIRST, 1, 1, 1).plants());
    plants.put(site(2), new SettleSplits.Standing("plant 2", "basil"));
    SettleSplits.Look now = meeting(THEN, 0.9, 200, 200, 150);
    Border judged = new Border(site(1), site(2), -0.2, TABLE, TABLE);

    RaftMeasure settled =
        settle(
            new SettleSplits.Look(apart(FIRST, 100, 100, 100).raft(), FIRST, plants),
            new SettleSplits.Look(withBorders(now.raft(), List.of(judged)), THEN, plants));

    assertEquals(150, area(settled, 2), 1e-9);
  }

  @Test
  void aPlantThatOneLookDoesNotShowGrowsOnUnseen() {
    // All grow fourfold from look to look; the third plant does not show in the second one.
    Instant third = Instant.parse("2026-04-14T18:00:00Z");
    SettleSplits.Look missed = apart(THEN, 40, 40, 0);
    List<RaftMeasure> settled =
        SettleSplits.settle(
            List.of(apart(FIRST, 10, 10, 10), missed, meeting(third, 0.9, 160, 160, 160)));

    assertEquals(160, area(settled.get(2), 2), 1e-9);
  }

  @Test
  void aPlantThatWasNotSeenBeforeMovesNothing() {
    SettleSplits.Look now = meeting(THEN, 0.9, 180, 220);
    Map<SiteId, SettleSplits.Standing> plants = new HashMap<>(now.plants());
    plants.put(site(1), new SettleSplits.Standing("another", "lettuce"));

    RaftMeasure settled =
        settle(apart(FIRST, 100, 100), new SettleSplits.Look(now.raft(), THEN, plants));

    assertEquals(180, area(settled, 0), 1e-9);
    assertEquals(30, se(settled, 0), 1e-9);
  }

  @Test
  void heldLooksSayNothingAndStayAsTheyAre() {
    SettleSplits.Look now = meeting(THEN, 0.9, 180, 220);
    SettleSplits.Look held =
        new SettleSplits.Look(apart(FIRST, 100, 100).raft().withHeld("haze"), FIRST, now.plants());

    assertEquals(180, area(settle(held, now), 0), 1e-9);

    SettleSplits.Look heldNow = new SettleSplits.Look(now.raft().withHeld("haze"), THEN, Map.of());
    assertSame(heldNow.raft(), settle(apart(FIRST, 100, 100), heldNow));
  }

  @Test
  void noPlantGivesMoreThanMostOfItsLeafAway() {
    // Equal in the photo, 60 to 74 before: the ratio falls by 0.95727 x 0.10486 = 0.10038, at 60
    // cm2 for the first 0.1 and 4 for the next, 60 of 60: 42 may go, and no more arrives.
    BorderTakes steep = BorderTakes.ofCm2(60.0, 64.0, 68.0, 72.0, 76.0);
    SettleSplits.Look now = meeting(THEN, 0.9, 60, 60);
    Border border = new Border(site(0), site(1), 0, steep, steep);

    RaftMeasure settled =
        settle(
            apart(FIRST, 60, 74),
            new SettleSplits.Look(withBorders(now.raft(), List.of(border)), THEN, now.plants()));

    assertEquals(18, area(settled, 0), 1e-9);
    assertEquals(102, area(settled, 1), 1e-9);
  }

  @Test
  void aPlantThatWasEatenTakesNoLeafFromItsNeighbours() {
    // Equal before; one is left with a tenth, half of its outline shared. Its ln radius is
    // ln(20 / 200) / 2 = -1.151 off what was expected, whose variance 0.0011 and that of the look,
    // 0.0009 + (0.2 x 0.25)^2 = 0.0034, allow 9 x 0.0045 = 0.0405 of its square 1.3255: what was
    // expected now varies by 0.0011 + 1.2850, the pair's ratio by 1.2872 beside 0.0121 by the
    // photo: weight 0.00931. 0.00931 x 1.151 at 10 cm2 for 0.1 is 1.07 cm2, not 50.
    RaftMeasure settled = settle(apart(FIRST, 100, 100, 100), meeting(THEN, 0.5, 200, 200, 20));

    assertEquals(1.07, settled.sites().get(2).movedCm2(), 0.01);
  }

  @Test
  void aPlantMistakenInOneLookIsNotMistakenInTheNext() {
    // Taken for twice its area, ln radius 0.3466 off: 0.1201 less 9 x (0.0011 + 0.0009) is 0.1021
    // of doubt, so that the look counts (gain 0.991) and the next finds it 0.3436 off again. By
    // then
    // 0.0011 + 0.1181 - 9 x (0.0011 + 0.0034) = 0.0787 and 0.0007 for its neighbour stand beside
    // the photo's 0.0121: weight 0.1322, 0.0454, 4.5 cm2 at 10 for 0.1.
    Instant third = Instant.parse("2026-04-14T18:00:00Z");
    List<RaftMeasure> settled =
        SettleSplits.settle(
            List.of(
                apart(FIRST, 100, 100, 100),
                apart(THEN, 120, 120, 240),
                meeting(third, 0.5, 150, 150, 150)));

    assertEquals(4.54, settled.get(2).sites().get(2).movedCm2(), 0.05);
  }

  @Test
  void sizesGoOnFromLookToLookWhilePlantsStayClosed() {
    // The second closed look is settled by the first one's settled areas, not by its photo's.
    Instant third = Instant.parse("2026-04-14T18:00:00Z");
    List<RaftMeasure> settled =
        SettleSplits.settle(
            List.of(
                apart(FIRST, 100, 100),
                meeting(THEN, 0.9, 180, 220),
                meeting(third, 0.9, 180, 220)));

    // Sizes after the second look: expected as they stand (variance 0.0011), seen with variance
    // 0.0009 + 21.06 / area^2 / 4 + (0.2 x 0.81)^2 = 0.0273: a gain of 0.039, so that the pair's ln
    // ratio is 0.039 x -0.052 = -0.002 and of the 9.605 cm2 all but some 0.3 move again.
    assertEquals(9.3, settled.get(2).sites().get(0).movedCm2(), 0.1);
  }

  @Test
  void looksOfPlantsThatDoNotMeetAreHandedBackAsTheyAre() {
    SettleSplits.Look a = apart(FIRST, 100, 100);
    SettleSplits.Look b = apart(THEN, 120, 110);

    List<RaftMeasure> settled = SettleSplits.settle(List.of(a, b));

    assertSame(a.raft(), settled.get(0));
    assertSame(b.raft(), settled.get(1));
  }

  private static RaftMeasure settle(SettleSplits.Look before, SettleSplits.Look now) {
    return SettleSplits.settle(List.of(before, now)).get(1);
  }

  private static SiteId site(int i) {
    return new SiteId(0, i);
  }

  /** Plants of so many square centimetres that do not meet, of one crop. */
  private static SettleSplits.Look apart(Instant at, double... areas) {
    return look(at, 0, areas);
  }

  /** The same in a row where each meets the next; the photo judges them as their areas stand. */
  private static SettleSplits.Look meeting(Instant at, double shared, double... areas) {
    SettleSplits.Look look = look(at, shared, areas);
    List<Border> borders = new ArrayList<>();
    for (int i = 0; i + 1 < areas.length; i++) {
      double lnRatio = Math.log(areas[i] / areas[i + 1]) / 2;
      borders.add(new Border(site(i), site(i + 1), lnRatio, TABLE, TABLE));
    }
    return new SettleSplits.Look(withBorders(look.raft(), borders), at, look.plants());
  }

  /** The last two of four plants are of another crop and do not meet the first two. */
  private static SettleSplits.Look twoCrops(SettleSplits.Look look) {
    Map<SiteId, SettleSplits.Standing> plants = new HashMap<>(look.plants());
    plants.put(site(2), new SettleSplits.Standing("plant 2", "basil"));
    plants.put(site(3), new SettleSplits.Standing("plant 3", "basil"));
    List<Border> borders =
        look.raft().borders().stream().filter(b -> !b.site().equals(site(1))).toList();
    return new SettleSplits.Look(withBorders(look.raft(), borders), look.at(), plants);
  }

  private static SettleSplits.Look look(Instant at, double shared, double... areas) {
    List<SiteMeasure> sites = new ArrayList<>();
    Map<SiteId, SettleSplits.Standing> plants = new HashMap<>();
    for (int i = 0; i < areas.length; i++) {
      OptionalDouble area = OptionalDouble.of(areas[i]);
      sites.add(
          new SiteMeasure(
              site(i),
              area,
              OptionalDouble.of(30),
              area,
              false,
              shared,
              0,
              1,
              List.of(),
              List.of(),
              1,
              ""));
      plants.put(site(i), new SettleSplits.Standing("plant " + i, "lettuce"));
    }
    OptionalDouble none = OptionalDouble.empty();
    RaftMeasure raft =
        new RaftMeasure(
            Optional.of("R1"),
            "",
            "deck",
            PoseSource.MARKERS,
            0.3,
            1,
            1600,
            true,
            none,
            none,
            sites,
            1,
            "");
    return new SettleSplits.Look(raft, at, plants);
  }

  private static RaftMeasure withBorders(RaftMeasure r, List<Border> borders) {
    return new RaftMeasure(
        r.raft(),
        r.slot(),
        r.layout(),
        r.poseSource(),
        r.poseErrorMm(),
        r.mmPerPx(),
        r.cameraHeightMm(),
        r.halfTurnKnown(),
        r.canopyCover(),
        r.leftoverCanopyCm2(),
        r.sites(),
        r.quality(),
        r.held(),
        r.rulerSites(),
        r.notes(),
        borders);
  }

  private static double area(RaftMeasure raft, int site) {
    return raft.sites().get(site).projectedAreaCm2().orElseThrow();
  }

  private static double se(RaftMeasure raft, int site) {
    return raft.sites().get(site).projectedAreaSeCm2().orElseThrow();
  }
}
