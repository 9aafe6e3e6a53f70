// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;

/**
 * All boards found in a photo.
 *
 * @param boards the boards, best supported first, or in the order of the slots
 * @param leftovers markers and tags that belong to no board, each with the reason
 * @param refused why no board can be looked for in this photo; empty where it could
 */
public record FoundBoards(List<FoundBoard> boards, List<String> leftovers, String refused) {

  /** Copies the lists. */
  public FoundBoards {
    boards = List.copyOf(boards);
    leftovers = List.copyOf(leftovers);
  }

  /** Returns a refusal. */
  static FoundBoards refused(String why) {
    return new FoundBoards(List.of(), List.of(), why);
  }
}
