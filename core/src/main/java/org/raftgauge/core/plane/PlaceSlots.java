// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Places the boards in a fixed station's slots.
 *
 * <p>First the shift of the whole picture is found ({@link FindKnock}), then each board on its
 * edges; what the boards' corners have in common gives the camera's knock with its turn, and each
 * board is placed again, near where that foretells it.
 */
final class PlaceSlots {
  /** Reach of the first edge search about the expected place once the shift is known, mm. */
  private static final double FIRST_REACH_MM = 30;

  /** Reach of the second one, mm. */
  private static final double SECOND_REACH_MM = 12;

  /** A picture shifted by less than this share of its width is said to be in place. */
  private static final double STILL_SHARE = 0.005;

  /** A board that lies further from its expected place than this is said, mm. */
  private static final double MOVED_MM = 10;

  /** By how much plainer the first search's edges must be to outweigh the other boards. */
  private static final double PLAINER = 0.1;

  /** Error of a board that is placed only by what the others say, mm: it may float that far. */
  private static final double BY_OTHERS_MM = 8;

  static final String CAMERA_TURNED =
      "the orientation marks lie at the far ends: has the camera been turned by half a turn? Turn it"
          + " back, or set up its slots again";

  private final Map<String, HalfTurn> turns = new HashMap<>();
  private final RgbImage photo;
  private final LinearLight light;
  private final FitPose.Prior prior;
  private final SlotCorners corners;
  private final Map<String, Layout> layouts;

  PlaceSlots(RgbImage photo, Station station, FitPose.Prior prior, Map<String, Layout> layouts) {
    this.photo = photo;
    this.light = LinearLight.of(photo);
    this.prior = prior;
    this.corners = new SlotCorners((double) photo.width() / station.imageWidthPx(), photo, prior);
    this.layouts = layouts;
  }

  /** Returns a board a slot, in the slots' order; slots whose layout is unknown are left out. */
  List<FoundBoard> place(List<Slot> slots) {
    List<Slot> known = slots.stream().filter(s -> layouts.containsKey(s.layout())).toList();
    List<Slot> toRefine = known.stream().filter(s -> s.refine() == Slot.Refine.EDGES).toList();
    Map<Slot, FoundBoard> boards = new LinkedHashMap<>();
    if (!toRefine.isEmpty()) {
      refine(toRefine, boards);
    }
    for (Slot slot : known) {
      boards.computeIfAbsent(slot, s -> board(s, still(s), List.of(), ""));
    }
    return vetted(known.stream().map(boards::get).toList());
  }

  /**
   * Holds every board of a camera whose slots' orientation marks lie mostly at the far end: turned
   * by half a turn it shows other boards in the slots. A single slot shows the same board either
   * way, and the mark says which way round.
   */
  private List<FoundBoard> vetted(List<FoundBoard> boards) {
    List<HalfTurn> told =
        boards.stream()
            .filter(b -> b.held().isEmpty() && b.layout().orientationMark().isPresent())
            .map(b -> turns.get(b.slot().orElseThrow()))
            .filter(HalfTurn::known)
            .toList();
    long turned = told.stream().filter(HalfTurn::turned).count();
    boolean doubted = boards.size() > 1 && turned > 0 && 2 * turned >= told.size();
    return doubted
        ? boards.stream().map(b -> b.held().isEmpty() ? b.withHeld(CAMERA_TURNED) : b).toList()
        : boards;
  }

  private Board board(Slot slot) {
    return layout(slot).board();
  }

  private Layout layout(Slot slot) {
    return layouts.get(slot.layout());
  }

  /** Returns the pose from a slot's corners as they are in the station file. */
  private PoseFit still(Slot slot) {
    return corners.fit(slot, board(slot));
  }

  private void refine(List<Slot> slots, Map<Slot, FoundBoard> boards) {
    List<CameraPose> poses = slots.stream().map(s -> still(s).pose()).toList();
    Optional<FindKnock.Knock> knock =
        new FindKnock(light, photo.width(), poses, slots.stream().map(this::board).toList()).find();
    String held = knock.map(this::doubt).orElse("no board edges show near the slots' places");
    boolean doubted = !held.isEmpty();
    if (doubted && !StillHoles.tell(photo, poses, slots.stream().map(this::layout).toList())) {
      String why = held + "; check camera, light and slots";
      slots.forEach(s -> boards.put(s, board(s, still(s), List.of(), why)));
      return;
    }
    double dxPx = doubted ? 0 : knock.get().dxPx();
    CameraMove rough = CameraMove.ofShift(prior.lens(), dxPx, doubted ? 0 : knock.get().dyPx());
    Map<Slot, BoardEdges.Placed> first = new LinkedHashMap<>();
    for (Slot slot : slots) {
      edges(slot, rough, FIRST_REACH_MM).ifPresent(p -> first.put(slot, p));
    }
    CameraMove common = first.isEmpty() ? rough : common(rough, first);
    List<String> notes = notes(common);
    for (Slot slot : slots) {
      boards.put(slot, new Second(common, notes, first).place(slot));
    }
  }

  private String doubt(FindKnock.Knock knock) {
    return knock.lengthPx() > STILL_SHARE * photo.width() && !knock.safe()
        ? String.format(
            Locale.ROOT,
            "the camera may have moved (the best shift is %.0f, %.0f px, but another fits nearly"
                + " as well)",
            knock.dxPx(),
            knock.dyPx())
        : "";
  }

  private Optional<BoardEdges.Placed> edges(Slot slot, CameraMove move, double leastMm) {
    CameraPose expected = move.applied(still(slot).pose());
    double mmPerPx = expected.mmPerPxAt(BoardPlaces.centre(board(slot)));
    double reachMm = Math.max(leastMm, 5 * mmPerPx);
    return new BoardEdges(light, prior).place(expected, board(slot), reachMm, List.of());
  }

  /** Returns what the boards' corners have in common. */
  private CameraMove common(CameraMove rough, Map<Slot, BoardEdges.Placed> placed) {
    List<CameraMove.Pair> pairs = new ArrayList<>();
    placed.forEach(
        (slot, p) ->
            pairs.add(new CameraMove.Pair(still(slot).pose(), p.fit().pose(), board(slot))));
    return CameraMove.common(rough, pairs);
  }

  private List<String> notes(CameraMove common) {
    PointPx middle = new PointPx((photo.width() - 1) / 2.0, (photo.height() - 1) / 2.0);
    PointPx now = common.applied(middle, prior.heightMm());
    double turnDeg = common.turnDeg();
    if (now.distancePx(middle) < STILL_SHARE * photo.width() && Math.abs(turnDeg) < 0.5) {
      return List.of();
    }
    return List.of(
        String.format(
            Locale.ROOT,
            "the camera has moved: its picture is shifted by (%.0f, %.0f) px and turned by %.1f"
                + " degrees; corrected",
            now.xPx() - middle.xPx(),
            now.yPx() - middle.yPx(),
            turnDeg));
  }

  private FoundBoard board(Slot slot, PoseFit fit, List<String> notes, String held) {
    Layout layout = layout(slot);
    HalfTurn turn = HalfTurn.of(light, fit.pose(), layout);
    turns.put(slot.name(), turn);
    List<String> all = new ArrayList<>(notes);
    turn.note().ifPresent(all::add);
    return new FoundBoard(
        Optional.empty(),
        Optional.of(slot.name()),
        layout,
        turn.pose(),
        PoseSource.SLOT,
        fit.errorMm(layout.board()),
        turn.known(),
        all,
        held);
  }

  /** The second placing, near where the boards together foretell each. */
  private final class Second {
    private final CameraMove common;
    private final List<String> cameraNotes;
    private final Map<Slot, BoardEdges.Placed> placed;

    Second(CameraMove common, List<String> cameraNotes, Map<Slot, BoardEdges.Placed> placed) {
      this.common = common;
      this.cameraNotes = cameraNotes;
      this.placed = placed;
    }

    FoundBoard place(Slot slot) {
      Optional<BoardEdges.Placed> first = Optional.ofNullable(placed.get(slot));
      Optional<BoardEdges.Placed> again = edges(slot, common, SECOND_REACH_MM);
      Optional<BoardEdges.Placed> best =
          again.isPresent()
                  && first.map(f -> f.share() < again.get().share() + PLAINER).orElse(true)
              ? again
              : first;
      PoseFit still = still(slot);
      PoseFit expected =
          new PoseFit(common.applied(still.pose()), still.covariance(), still.varianceFactor());
      if (best.isEmpty()) {
        return unseen(slot, expected);
      }
      List<String> notes = new ArrayList<>(cameraNotes);
      double moved = SlotCorners.farthestMm(expected.pose(), best.get().fit().pose(), board(slot));
      if (moved > MOVED_MM) {
        notes.add(
            String.format(
                Locale.ROOT, "the board lies %.0f mm from slot %s's place", moved, slot.name()));
      }
      return board(slot, best.get().fit(), notes, "");
    }

    /** Returns a board whose own edges do not show: placed by the others, or held. */
    private FoundBoard unseen(Slot slot, PoseFit expected) {
      boolean byOthers = placed.size() > 1;
      List<String> notes = new ArrayList<>(cameraNotes);
      if (byOthers) {
        notes.add("the board's edges do not show: placed by the other slots");
      }
      FoundBoard board =
          board(
              slot,
              expected,
              notes,
              byOthers ? "" : "fewer than three edges of the board show; check camera and slots");
      return board.withErrorMm(Math.max(BY_OTHERS_MM, board.poseErrorMm()));
    }
  }
}
