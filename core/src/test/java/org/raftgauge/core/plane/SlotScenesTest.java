// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.OrientationMark;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Three boards side by side under a fixed 640 x 480 camera that is knocked. */
class SlotScenesTest {
  private static final Lens LENS = new Lens(640, 640, 322, 237, -0.1, 0.02, 0, 0, 0);
  private static final Board BOARD = new Board(600, 1200);
  private static final Layout PLAIN = layout(Optional.empty());

  @Test
  void aStillOrKnockedCameraIsPlacedToAMillimetre() {
    // About 3.4 mm a pixel; 0.2 to 0.6 mm measured. The boards nearly touch: gaps of 6 mm, 2 px.
    double[][] knocks = {{0, 0}, {3, -2}, {-8, 7}, {30, 26}};
    for (double[] knock : knocks) {
      Pond pond = new Pond(6, knock, 0.8);
      FoundBoards found = pond.find(Slot.Refine.EDGES);
      for (int i = 0; i < 3; i++) {
        FoundBoard board = found.boards().get(i);
        assertEquals(PoseSource.SLOT, board.source());
        assertEquals("", board.held());
        double worst = TestPoses.worstMm(pond.now[i], board.pose(), BOARD);
        assertTrue(worst < 1, "knock " + knock[0] + ", slot " + i + ": " + worst);
        assertFalse(board.halfTurnKnown());
        boolean said = board.notes().stream().anyMatch(n -> n.startsWith("the camera has moved"));
        assertEquals(knock[0] != 0, said, board.notes().toString());
      }
    }
  }

  @Test
  void aKnockIsToldInPixelsAndAsATurn() {
    double[][] knocks = {{0, 0}, {-8, 7}, {30, 26}};
    for (double[] knock : knocks) {
      CameraShift shift = new Pond(6, knock, 0.8).find(Slot.Refine.EDGES).shift().orElseThrow();
      // The knock that was drawn; half a pixel is 1.7 mm of board.
      assertEquals(knock[0], shift.xPx(), 0.6);
      assertEquals(knock[1], shift.yPx(), 0.6);
      // The pond is drawn turned by the length of the knock over 4000, radians.
      double turnDeg = Math.toDegrees(Math.hypot(knock[0], knock[1]) / 4000);
      // A tenth of a degree is half a pixel at the corners of the boards.
      assertEquals(turnDeg, Math.abs(shift.turnDeg()), 0.1);
    }
    assertTrue(new Pond(6, knocks[0], 0.8).find(Slot.Refine.NONE).shift().isEmpty());
  }

  @Test
  void waterThatIsLowerIsReadOffTheBoardsOwnSize() {
    double lowerMm = 40;
    CameraPose middle = TestPoses.over(LENS, BOARD, 2200 + lowerMm, 1, 1.5, -1);
    CameraPose usual = TestPoses.over(LENS, BOARD, 2200, 1, 1.5, -1);
    Scene scene = Scene.of(640, 480, 5).noise(3);
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      scene.board(PLAIN, TestPoses.shifted(middle, (i - 1) * 660, 0));
      CameraPose old = TestPoses.shifted(usual, (i - 1) * 660, 0);
      List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(old::toPhoto).toList();
      slots.add(new Slot("S" + i, "pond-12", corners, Slot.Refine.EDGES));
    }
    FoundBoards found = FindBoards.inSlots(scene.draw(), station(slots), Map.of("pond-12", PLAIN));
    for (FoundBoard board : found.boards()) {
      // 2240 as drawn; a tenth of a pixel on a board of 350 px is 0.6 mm of height.
      assertEquals(2200 + lowerMm, board.pose().heightMm(), 8, board.slot().orElseThrow());
    }
  }

  @Test
  void aDimPondOfDarkBoardsIsPlacedToo() {
    Pond pond = new Pond(60, new double[] {-35, 18}, 0.1);
    List<FoundBoard> boards = pond.find(Slot.Refine.EDGES).boards();
    for (int i = 0; i < 3; i++) {
      double worst = TestPoses.worstMm(pond.now[i], boards.get(i).pose(), BOARD);
      assertTrue(worst < 1, "slot " + i + ": " + worst);
    }
  }

  @Test
  void cornersHoldAsTheyAreWhereNothingIsRefined() {
    Pond pond = new Pond(60, new double[] {0, 0}, 0.8);
    FoundBoard board = pond.find(Slot.Refine.NONE).boards().get(1);
    assertEquals("", board.held());
    // Exact corners against priors of 2 % and 3 degrees.
    assertTrue(TestPoses.worstMm(pond.now[1], board.pose(), BOARD) < 0.5);
    assertEquals(Optional.of("S1"), board.slot());
  }

  @Test
  void aPondThatDoesNotShowIsHeld() {
    Pond pond = new Pond(60, new double[] {0, 0}, 0.03);
    for (FoundBoard board : pond.find(Slot.Refine.EDGES).boards()) {
      assertTrue(
          board.held().startsWith("no board edges show near the slots' places"), board.held());
    }
  }

  @Test
  void aSlotOfUnknownLayoutIsLeftOver() {
    Pond pond = new Pond(60, new double[] {0, 0}, 0.8);
    FoundBoards found = FindBoards.inSlots(pond.photo, pond.station(Slot.Refine.EDGES), Map.of());
    assertEquals(List.of(), found.boards());
    assertEquals("slot S0: no layout named pond-12", found.leftovers().get(0));
  }

  @Test
  void theOrientationMarkTellsABoardThatLiesTurned() {
    Layout marked =
        layout(Optional.of(new OrientationMark(300, 60, 50, OrientationMark.Look.DARK)));
    CameraPose pose = TestPoses.over(LENS, BOARD, 2200, 1, 1, -1);
    for (boolean far : new boolean[] {false, true}) {
      Scene scene = Scene.of(640, 480, 3);
      scene.board(marked, pose).darkDisc(300, far ? 1140 : 60, 25);
      List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(pose::toPhoto).toList();
      Station station = station(List.of(new Slot("S", "pond-12", corners, Slot.Refine.EDGES)));
      FoundBoard board =
          FindBoards.inSlots(scene.draw(), station, Map.of("pond-12", marked)).boards().get(0);
      assertTrue(board.halfTurnKnown());
      CameraPose truth = far ? HalfTurn.turned(pose, BOARD) : pose;
      assertTrue(TestPoses.worstMm(truth, board.pose(), BOARD) < 1.5);
      assertEquals(far, board.notes().contains("the board lies turned by half a turn"));
    }
  }

  @Test
  void marksOfEveryLookAreToldOnWhiteAndOnBlackBoards() {
    // Light of the board, look, the mark's colour (linear light); a notch shows the water, 0.03.
    Object[][] marks = {
      {0.75, OrientationMark.Look.DARK, new double[] {0.02, 0.02, 0.02}},
      {0.2, OrientationMark.Look.DARK, new double[] {0.02, 0.02, 0.02}},
      {0.03, OrientationMark.Look.LIGHT, new double[] {0.7, 0.7, 0.7}},
      {0.2, OrientationMark.Look.LIGHT, new double[] {0.7, 0.7, 0.7}},
      {0.75, OrientationMark.Look.COLOURED, new double[] {0.5, 0.04, 0.04}},
      {0.03, OrientationMark.Look.COLOURED, new double[] {0.5, 0.04, 0.04}},
      {0.75, OrientationMark.Look.COLOURED, new double[] {0.05, 0.1, 0.5}},
      {0.03, OrientationMark.Look.COLOURED, new double[] {0.05, 0.1, 0.5}},
    };
    for (Object[] each : marks) {
      OrientationMark mark = new OrientationMark(300, 60, 50, (OrientationMark.Look) each[1]);
      for (boolean far : new boolean[] {false, true}) {
        String what = each[1] + " on " + each[0] + (far ? ", far" : "");
        FoundBoard board = marked(mark, (double) each[0], far, (double[]) each[2]);
        assertTrue(board.halfTurnKnown(), what);
        assertEquals(far, board.notes().contains(HalfTurn.TURNED), what);
      }
    }
  }

  @Test
  void aNotchInTheRimIsTold() {
    OrientationMark notch = new OrientationMark(300, 10, 60, OrientationMark.Look.DARK);
    for (boolean far : new boolean[] {false, true}) {
      FoundBoard board = marked(notch, 0.75, far, new double[] {0.03, 0.03, 0.03});
      assertTrue(board.halfTurnKnown());
      assertEquals(far, board.notes().contains(HalfTurn.TURNED));
    }
  }

  @Test
  void aLeafOverTheFarPlaceIsNoLightMark() {
    // A leaf is lighter than a black board, as white paint is, but green.
    OrientationMark mark = new OrientationMark(300, 60, 50, OrientationMark.Look.LIGHT);
    FoundBoard board = marked(mark, 0.03, true, new double[] {0.12, 0.3, 0.03});
    assertFalse(board.halfTurnKnown());
    assertTrue(
        board
            .notes()
            .contains(
                "the orientation mark could not be told from the same place at the other end of the board"));
  }

  @Test
  void aCameraTurnedByHalfATurnIsHeldAndSaidNotMeasuredInWrongSlots() {
    for (FoundBoard board : threeMarked(true, true, true)) {
      assertEquals(VetSlots.CAMERA_TURNED, board.held());
    }
    // Two of three: either the camera is turned and one board, or two boards; nobody can tell.
    for (FoundBoard board : threeMarked(true, false, true)) {
      assertEquals(VetSlots.CAMERA_TURNED, board.held());
    }
  }

  @Test
  void oneBoardOfThreeThatLiesTurnedIsTurned() {
    List<FoundBoard> boards = threeMarked(false, true, false);
    for (int i = 0; i < 3; i++) {
      assertEquals("", boards.get(i).held());
      assertTrue(boards.get(i).halfTurnKnown());
      assertEquals(i == 1, boards.get(i).notes().contains(HalfTurn.TURNED));
    }
  }

  @Test
  void aBoardWhoseEdgesDoNotShowIsPlacedByTheOthersWithALargerError() {
    // The middle board is all leaf and the gaps to its neighbours are filled: no edge of it shows.
    CameraPose middle = TestPoses.over(LENS, BOARD, 2200, 1, 1.5, -1);
    Scene scene = Scene.of(640, 480, 5);
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      CameraPose pose = TestPoses.shifted(middle, (i - 1) * 660.0, 0);
      PaintedBoard board = scene.board(PLAIN, pose);
      if (i == 1) {
        board.disc(300, 600, 900);
      }
      List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(pose::toPhoto).toList();
      slots.add(new Slot("S" + i, "pond-12", corners, Slot.Refine.EDGES));
    }
    List<FoundBoard> boards =
        FindBoards.inSlots(scene.draw(), station(slots), Map.of("pond-12", PLAIN)).boards();
    FoundBoard hidden = boards.get(1);
    assertEquals("", hidden.held());
    assertTrue(
        hidden.notes().contains("the board's edges do not show: placed by the other slots"),
        hidden.toString());
    assertTrue(hidden.poseErrorMm() >= 8, "" + hidden.poseErrorMm());
    assertTrue(boards.get(0).poseErrorMm() < 3, "" + boards.get(0).poseErrorMm());
  }

  /** Returns one board with a mark of that colour at its near or far place, in the only slot. */
  private static FoundBoard marked(
      OrientationMark mark, double light, boolean far, double[] colour) {
    Layout marked = layout(Optional.of(mark));
    CameraPose pose = TestPoses.over(LENS, BOARD, 2200, 1, 1, -1);
    Scene scene = Scene.of(640, 480, 3).water(light < 0.1 ? 0.2 : 0.03);
    double y = far ? 1200 - mark.yMm() : mark.yMm();
    scene
        .board(marked, pose)
        .light(light)
        .discs
        .add(new double[] {mark.xMm(), y, mark.diameterMm() / 2, colour[0], colour[1], colour[2]});
    List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(pose::toPhoto).toList();
    Station station = station(List.of(new Slot("S", "pond-12", corners, Slot.Refine.EDGES)));
    return FindBoards.inSlots(scene.draw(), station, Map.of("pond-12", marked)).boards().get(0);
  }

  /** Returns three boards side by side, the marks of some at the far end. */
  private static List<FoundBoard> threeMarked(boolean... far) {
    Layout marked =
        layout(Optional.of(new OrientationMark(300, 60, 50, OrientationMark.Look.DARK)));
    CameraPose middle = TestPoses.over(LENS, BOARD, 2200, 1, 1.5, -1);
    Scene scene = Scene.of(640, 480, 5);
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      CameraPose pose = TestPoses.shifted(middle, (i - 1) * 640.0, 0);
      scene.board(marked, pose).darkDisc(300, far[i] ? 1140 : 60, 25);
      List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(pose::toPhoto).toList();
      slots.add(new Slot("S" + i, "pond-12", corners, Slot.Refine.EDGES));
    }
    return FindBoards.inSlots(scene.draw(), station(slots), Map.of("pond-12", marked)).boards();
  }

  @Test
  void aGridThatDiffersAfterHalfATurnNeedsNoMark() {
    assertTrue(HalfTurn.sameAfterHalfTurn(PLAIN));
    Layout odd =
        new Layout(
            "odd",
            Optional.empty(),
            BOARD,
            new SiteGrid(5, 2, 150, 150, 300, 180, 60),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    assertFalse(HalfTurn.sameAfterHalfTurn(odd));
  }

  private static Layout layout(Optional<OrientationMark> mark) {
    return new Layout(
        "pond-12",
        Optional.empty(),
        BOARD,
        new SiteGrid(6, 2, 150, 150, 300, 180, 0),
        Optional.empty(),
        Optional.empty(),
        mark);
  }

  private static Station station(List<Slot> slots) {
    return new Station("pond", Station.Kind.FIXED, 1, 640, 480, LENS, 2200, slots, Duration.ZERO);
  }

  /** Three boards in reference place, and the photo after the camera was turned on its mount. */
  private static final class Pond {
    private final CameraPose[] old = new CameraPose[3];
    private final CameraPose[] now = new CameraPose[3];
    private final RgbImage photo;

    Pond(double gapMm, double[] knockPx, double light) {
      CameraPose middle = TestPoses.over(LENS, BOARD, 2200, 1, 1.5, -1);
      double[] turn =
          Rotations.about(
              -knockPx[1] / 640, knockPx[0] / 640, Math.hypot(knockPx[0], knockPx[1]) / 4000);
      CameraMove move = new CameraMove(CameraPose.of(LENS, turn, new double[3]));
      Scene scene = Scene.of(640, 480, 5).noise(3);
      for (int i = 0; i < 3; i++) {
        old[i] = TestPoses.shifted(middle, (i - 1) * (600 + gapMm), 0);
        now[i] = move.applied(old[i]);
        PaintedBoard board = scene.board(PLAIN, now[i]).light(light * (0.85 + 0.1 * i));
        Random random = new Random(i);
        for (SiteId site : PLAIN.grid().sites()) {
          PointMm hole = PLAIN.grid().centre(site);
          board.disc(
              hole.xMm() + 20 * random.nextGaussian(),
              hole.yMm() + 20 * random.nextGaussian(),
              60 + 90 * random.nextDouble() * (i == 1 ? 1.2 : 0.6));
        }
      }
      photo = scene.draw();
    }

    Station station(Slot.Refine refine) {
      List<Slot> slots = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        List<PointPx> corners = BoardPlaces.corners(BOARD).stream().map(old[i]::toPhoto).toList();
        slots.add(new Slot("S" + i, "pond-12", corners, refine));
      }
      return SlotScenesTest.station(slots);
    }

    FoundBoards find(Slot.Refine refine) {
      return FindBoards.inSlots(photo, station(refine), Map.of("pond-12", PLAIN));
    }
  }
}
