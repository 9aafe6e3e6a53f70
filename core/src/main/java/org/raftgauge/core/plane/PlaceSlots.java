// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Places the boards in a fixed station's slots.
 *
 * <p>First the shift of the whole picture is found ({@link TrustKnock}), then each board on its
 * edges; what the boards' corners have in common gives the camera's knock with its turn, and each
 * board is placed again, near where that foretells it.
 */
final class PlaceSlots {
  /** Reach of the first edge search about the expected place once the shift is known, mm. */
  private static final double FIRST_REACH_MM = 30;

  /** Reach of the second one, mm. */
  private static final double SECOND_REACH_MM = 12;

  /** A board that lies further from its expected place than this is said, mm. */
  private static final double MOVED_MM = 10;

  /** By how much plainer the first search's edges must be to outweigh the other boards. */
  private static final double PLAINER = 0.1;

  /** Error of a board that is placed only by what the others say, mm: it may float that far. */
  private static final double BY_OTHERS_MM = 8;

  /** Leaves hide a board's edges where they lie along more of them than this (working value). */
  private static final double OVERGROWN = 0.3;

  private final Map<String, HalfTurn> turns = new HashMap<>();
  private final RgbImage photo;
  private final LinearLight light;

  /** The light in which the boards' edges are looked for. */
  private LinearLight edgeLight;

  private final FitPose.Prior prior;
  private final SlotCorners corners;
  private final Map<String, Layout> layouts;
  private final double stationPxPerPx;
  private Optional<CameraShift> shift = Optional.empty();

  PlaceSlots(RgbImage photo, Station station, FitPose.Prior prior, Map<String, Layout> layouts) {
    this.photo = photo;
    this.light = LinearLight.of(photo);
    this.edgeLight = light;
    this.prior = prior;
    this.corners = new SlotCorners((double) photo.width() / station.imageWidthPx(), photo, prior);
    this.layouts = layouts;
    this.stationPxPerPx = (double) station.imageWidthPx() / photo.width();
  }

  /** Returns what the boards placed so far say of the camera; nothing where no edges showed. */
  Optional<CameraShift> shift() {
    return shift;
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
    return VetSlots.vetted(known.stream().map(boards::get).toList(), turns);
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
    TrustKnock knock = TrustKnock.of(photo, poses, slots.stream().map(this::layout).toList());
    if (!knock.held().isEmpty()) {
      slots.forEach(s -> boards.put(s, board(s, still(s), List.of(), knock.held())));
      return;
    }
    edgeLight = knock.light();
    CameraMove rough = CameraMove.ofShift(prior.lens(), knock.dxPx(), knock.dyPx());
    Map<Slot, BoardEdges.Placed> first = new LinkedHashMap<>();
    for (Slot slot : slots) {
      edges(slot, rough, FIRST_REACH_MM).ifPresent(p -> first.put(slot, p));
    }
    OptionalDouble usual = usualSize(first);
    first.entrySet().removeIf(e -> SameWater.isOdd(sizeLn(e.getKey(), e.getValue()), usual));
    CameraMove common = first.isEmpty() ? rough : common(rough, first);
    CameraShift found = CameraShift.of(common, photo, prior.heightMm(), stationPxPerPx);
    if (!first.isEmpty()) {
      shift = Optional.of(found);
    }
    List<String> notes = found.notes(photo.width(), stationPxPerPx);
    for (Slot slot : slots) {
      boards.put(slot, new Second(common, notes, first, usual).place(slot));
    }
  }

  private OptionalDouble usualSize(Map<Slot, BoardEdges.Placed> placed) {
    return SameWater.usual(
        placed.entrySet().stream().mapToDouble(e -> sizeLn(e.getKey(), e.getValue())).toArray());
  }

  /** Returns ln of how large a board looks against the station file. */
  private double sizeLn(Slot slot, BoardEdges.Placed found) {
    PointMm centre = BoardPlaces.centre(board(slot));
    return Math.log(still(slot).pose().mmPerPxAt(centre) / found.fit().pose().mmPerPxAt(centre));
  }

  private Optional<BoardEdges.Placed> edges(Slot slot, CameraMove move, double leastMm) {
    CameraPose expected = move.applied(still(slot).pose());
    double mmPerPx = expected.mmPerPxAt(BoardPlaces.centre(board(slot)));
    double reachMm = Math.max(leastMm, 5 * mmPerPx);
    return new BoardEdges(edgeLight, prior).place(expected, board(slot), reachMm, List.of());
  }

  /** Returns what the boards' corners have in common. */
  private CameraMove common(CameraMove rough, Map<Slot, BoardEdges.Placed> placed) {
    List<CameraMove.Pair> pairs = new ArrayList<>();
    placed.forEach(
        (slot, p) ->
            pairs.add(new CameraMove.Pair(still(slot).pose(), p.fit().pose(), board(slot))));
    return CameraMove.common(rough, pairs);
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
    private final OptionalDouble usual;

    Second(
        CameraMove common,
        List<String> cameraNotes,
        Map<Slot, BoardEdges.Placed> placed,
        OptionalDouble usual) {
      this.common = common;
      this.cameraNotes = cameraNotes;
      this.placed = placed;
      this.usual = usual;
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
      if (best.isEmpty() || SameWater.isOdd(sizeLn(slot, best.get()), usual)) {
        return unseen(slot, expected);
      }
      List<String> notes = new ArrayList<>(cameraNotes);
      double moved = SlotCorners.farthestMm(expected.pose(), best.get().fit().pose(), board(slot));
      if (moved > MOVED_MM) {
        notes.add(
            String.format(
                Locale.ROOT, "the board lies %.0f mm from slot %s's place", moved, slot.name()));
      }
      return board(slot, best.get().fit(), notes, besideHoles(slot, best.get().fit(), notes));
    }

    /** Says whether leaves hide a board's edges, or its holes and plants lie where they should. */
    private boolean isThere(Slot slot, CameraPose pose) {
      return EdgeCuts.leafShare(light, pose, board(slot)) > OVERGROWN
          || StillHoles.tell(photo, List.of(pose), List.of(layout(slot)));
    }

    /** Says why a board that lies elsewhere than usual is held: its holes do not lie there. */
    private String besideHoles(Slot slot, PoseFit fit, List<String> notes) {
      OptionalDouble off =
          notes.isEmpty()
              ? OptionalDouble.empty()
              : StillHoles.farOffMm(photo, fit.pose(), layout(slot));
      return off.isEmpty()
          ? ""
          : String.format(
              Locale.ROOT,
              "holes and plants lie %.0f mm beside where the board was placed; check camera, light"
                  + " and slots",
              off.getAsDouble());
    }

    /** Returns a board whose own edges do not show: placed by the others, or held. */
    private FoundBoard unseen(Slot slot, PoseFit expected) {
      String held = "fewer than three edges of the board show; check camera and slots";
      List<String> notes = new ArrayList<>(cameraNotes);
      if (placed.size() > 1) {
        notes.add("the board's edges do not show: placed by the other slots");
        held =
            isThere(slot, expected.pose())
                ? besideHoles(slot, expected, notes)
                : "no board shows in slot "
                    + slot.name()
                    + ", neither edges nor plants; end its placement in placements.csv if the slot"
                    + " is empty, else check light and slots";
      }
      FoundBoard board = board(slot, expected, notes, held);
      return board.withErrorMm(Math.max(BY_OTHERS_MM, board.poseErrorMm()));
    }
  }
}
