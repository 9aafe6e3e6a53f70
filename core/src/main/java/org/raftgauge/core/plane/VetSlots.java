// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * Looks at what the orientation marks of all slots say together: a camera that was turned by half a
 * turn, or a picture that was mirrored, shows other boards in the slots.
 */
final class VetSlots {
  static final String CAMERA_TURNED =
      "the orientation marks lie at the far ends: has the camera been turned by half a turn? Turn it"
          + " back, or set up its slots again";
  static final String MIRRORED =
      "the orientation marks lie as in a mirror: is the camera, or the program that copied the"
          + " photo, set to mirror pictures? Switch that off";

  private VetSlots() {}

  /**
   * Holds every board where the marks that could be told lie mostly at the far end, or mostly as in
   * a mirror. A single slot shows the same board either way, and the mark says which way round.
   *
   * @param boards a board a slot
   * @param turns what was found of the marks, by slot
   * @return the boards, all held or none more than before
   */
  static List<FoundBoard> vetted(List<FoundBoard> boards, Map<String, HalfTurn> turns) {
    List<HalfTurn> told =
        boards.stream()
            .filter(b -> b.held().isEmpty() && b.layout().orientationMark().isPresent())
            .map(b -> turns.get(b.slot().orElseThrow()))
            .filter(turn -> turn.known() || turn.mirrored())
            .toList();
    if (boards.size() > 1 && most(told, HalfTurn::mirrored)) {
      return held(boards, MIRRORED);
    }
    return boards.size() > 1 && most(told, HalfTurn::turned) ? held(boards, CAMERA_TURNED) : boards;
  }

  private static boolean most(List<HalfTurn> told, Predicate<HalfTurn> what) {
    long such = told.stream().filter(what).count();
    return such > 0 && 2 * such >= told.size();
  }

  private static List<FoundBoard> held(List<FoundBoard> boards, String why) {
    return boards.stream().map(b -> b.held().isEmpty() ? b.withHeld(why) : b).toList();
  }
}
