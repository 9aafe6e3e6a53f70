// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;

/**
 * All boards found in a photo.
 *
 * @param boards the boards, best supported first, or in the order of the slots
 * @param leftovers markers and tags that belong to no board, each with the reason
 * @param refused why no board can be looked for in this photo; empty where it could
 * @param remedy what to do where it is refused; empty where it is not
 * @param shift how a fixed camera's picture lies against its reference photo, where that was found
 */
public record FoundBoards(
    List<FoundBoard> boards,
    List<String> leftovers,
    String refused,
    String remedy,
    Optional<CameraShift> shift) {

  /** Copies the lists. */
  public FoundBoards {
    boards = List.copyOf(boards);
    leftovers = List.copyOf(leftovers);
  }

  /** Returns a refusal. */
  static FoundBoards refused(String why, String remedy) {
    return new FoundBoards(List.of(), List.of(), why, remedy, Optional.empty());
  }

  /** Returns what was found. */
  static FoundBoards found(List<FoundBoard> boards, List<String> leftovers) {
    return new FoundBoards(boards, leftovers, "", "", Optional.empty());
  }

  /** Returns the same with a fixed camera's shift. */
  FoundBoards withShift(Optional<CameraShift> found) {
    return new FoundBoards(boards, leftovers, refused, remedy, found);
  }
}
