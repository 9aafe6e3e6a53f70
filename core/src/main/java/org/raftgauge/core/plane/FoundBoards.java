// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;

/**
 * All boards found in a photo.
 *
 * @param boards the boards, best supported first, or in the order of the slots
 * @param leftovers markers and tags that belong to no board, each with the reason
 * @param refused why no board can be looked for in this photo; empty where it could
 * @param remedy what to do where it is refused; empty where it is not
 */
public record FoundBoards(
    List<FoundBoard> boards, List<String> leftovers, String refused, String remedy) {

  /** Copies the lists. */
  public FoundBoards {
    boards = List.copyOf(boards);
    leftovers = List.copyOf(leftovers);
  }

  /** Returns a refusal. */
  static FoundBoards refused(String why, String remedy) {
    return new FoundBoards(List.of(), List.of(), why, remedy);
  }

  /** Returns what was found. */
  static FoundBoards found(List<FoundBoard> boards, List<String> leftovers) {
    return new FoundBoards(boards, leftovers, "", "");
  }
}
