// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.pixels.RgbImage;

/** Three boards side by side under a 640 x 480 camera whose height is known to a hundredth. */
class ProposeSlotsTest {
  private static final Lens LENS = new Lens(640, 640, 322, 237, -0.1, 0.02, 0, 0, 0);
  private static final Board BOARD = new Board(600, 1200);
  private static final Layout STRAIGHT = layout("straight", 0);
  private static final Layout STAGGERED = layout("staggered", 100);

  private static Layout layout(String name, double staggerMm) {
    return new Layout(
        name,
        Optional.empty(),
        BOARD,
        new SiteGrid(6, 3, 100, 150, 200, 180, staggerMm),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Station station(double heightMm) {
    return new Station(
        "pond", Station.Kind.PASSING, 1, 640, 480, LENS, heightMm, List.of(), Duration.ZERO);
  }

  /** Draws the boards; plants of a size are laid beside their holes as plants lie. */
  private static RgbImage pond(Layout layout, CameraPose[] poses, double plantMm) {
    Scene scene = Scene.of(640, 480, 5).noise(3);
    Random random = new Random(4);
    for (CameraPose pose : poses) {
      PaintedBoard board = scene.board(layout, pose).light(0.7);
      for (SiteId site : layout.grid().sites()) {
        PointMm hole = layout.grid().centre(site);
        if (plantMm > 0) {
          board.disc(
              hole.xMm() + 6 * random.nextGaussian(),
              hole.yMm() + 6 * random.nextGaussian(),
              plantMm);
        }
      }
    }
    return scene.draw();
  }

  private static CameraPose[] poses(double turnDeg) {
    CameraPose middle = TestPoses.over(LENS, BOARD, 2200, turnDeg, 1.5, -1);
    CameraPose[] poses = new CameraPose[3];
    for (int i = 0; i < 3; i++) {
      poses[i] = TestPoses.shifted(middle, (i - 1) * 620, 0);
    }
    return poses;
  }

  @Test
  void boardsSideBySideAreProposedInOrderToTwoPixels() {
    CameraPose[] poses = poses(2);
    // The station file's height is 1 % off, as after a fall of the water.
    List<SlotProposal> slots =
        ProposeSlots.in(pond(STRAIGHT, poses, 30), station(2222), List.of(STRAIGHT));
    assertEquals(3, slots.size());
    for (int i = 0; i < 3; i++) {
      double worst = Double.MAX_VALUE;
      for (CameraPose truth : List.of(poses[i], HalfTurn.turned(poses[i], BOARD))) {
        worst = Math.min(worst, worstPx(truth, slots.get(i)));
      }
      // A pixel covers 3.4 mm.
      assertTrue(worst < 2, "slot " + i + ": " + worst);
      assertTrue(slots.get(i).edgeShare() > 0.9);
      assertFalse(slots.get(i).originKnown());
      // By the boards' size the height is found again, between the truth and the station file.
      assertEquals(2200, slots.get(i).pose().heightMm(), 15);
    }
  }

  private static double worstPx(CameraPose truth, SlotProposal slot) {
    double worst = 0;
    for (int c = 0; c < 4; c++) {
      PointMm corner = BoardPlaces.corners(BOARD).get(c);
      worst = Math.max(worst, truth.toPhoto(corner).distancePx(slot.cornersPx().get(c)));
    }
    return worst;
  }

  @Test
  void holeGridTellsAStaggeredLayoutFromAStraightOne() {
    for (Layout truth : List.of(STRAIGHT, STAGGERED)) {
      List<SlotProposal> slots =
          ProposeSlots.in(pond(truth, poses(0), 0), station(2200), List.of(STRAIGHT, STAGGERED));
      assertEquals(3, slots.size());
      slots.forEach(s -> assertEquals(truth.name(), s.layout().name()));
    }
  }

  @Test
  void openWaterAndPhotosOfAnotherShapeGiveNoSlots() {
    RgbImage water = Scene.of(640, 480, 5).draw();
    assertEquals(List.of(), ProposeSlots.in(water, station(2200), List.of(STRAIGHT)));
    RgbImage square = Scene.of(480, 480, 5).draw();
    assertEquals(List.of(), ProposeSlots.in(square, station(2200), List.of(STRAIGHT)));
  }

  @Test
  void bareHolesTellScaleAndPlaceToAHalfMillimetre() {
    CameraPose truth = TestPoses.over(LENS, BOARD, 2200, 1, 1, -1);
    RgbImage photo = pond(STRAIGHT, new CameraPose[] {truth}, 0);
    HoleGrid exact = HoleGrid.fit(photo, truth, STRAIGHT).orElseThrow();
    assertEquals(18, exact.sites());
    assertEquals(0, exact.shiftXMm(), 0.5);
    assertEquals(0, exact.shiftYMm(), 0.5);
    assertEquals(0, exact.turnDeg(), 0.1);
    assertEquals(1, exact.scale(), 0.002);

    HoleGrid moved = HoleGrid.fit(photo, TestPoses.shifted(truth, -12, 7), STRAIGHT).orElseThrow();
    // The pose puts the board 12 mm to the left and 7 mm below: the grid lies 12 right, 7 above.
    assertEquals(12, moved.shiftXMm(), 0.7);
    assertEquals(-7, moved.shiftYMm(), 0.7);
  }

  @Test
  void wrongHeightShowsAsScale() {
    CameraPose truth = TestPoses.over(LENS, BOARD, 2200, 0, 0, 0);
    RgbImage photo = pond(STRAIGHT, new CameraPose[] {truth}, 0);
    double[] t = truth.translationMm();
    PointMm m = BoardPlaces.centre(BOARD);
    // Moved along the ray to its middle: the same board 2 % farther away looks 2 % smaller than it
    // is seen.
    CameraPose far =
        CameraPose.of(
            LENS,
            truth.rotation(),
            new double[] {
              1.02 * (m.xMm() + t[0]) - m.xMm(), 1.02 * (m.yMm() + t[1]) - m.yMm(), 1.02 * t[2]
            });
    assertEquals(1.02, HoleGrid.fit(photo, far, STRAIGHT).orElseThrow().scale(), 0.003);
  }

  @Test
  void closedCanopyHasNoHoleGrid() {
    CameraPose truth = TestPoses.over(LENS, BOARD, 2200, 0, 0, 0);
    RgbImage photo = pond(STRAIGHT, new CameraPose[] {truth}, 110);
    assertEquals(Optional.empty(), HoleGrid.fit(photo, truth, STRAIGHT));
  }
}
