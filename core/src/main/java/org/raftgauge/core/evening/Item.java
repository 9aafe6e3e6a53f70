// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;

/**
 * Names worklist rows, so that {@code seen.csv} can say that one was seen. A name is made of what
 * the row is about and never of numbers that move: {@code
 * inspect-lagging/DR-0401/2026-04-06/A1+B2}.
 */
final class Item {

  private Item() {}

  /** Names a row about a raft's crop. */
  static String ofRaft(String what, String raft, String cycle) {
    return what + "/" + raft + "/" + cycle;
  }

  /** Names a row about sites of a raft's crop. */
  static String ofSites(String what, String raft, String cycle, List<SiteId> sites) {
    return ofRaft(what, raft, cycle)
        + "/"
        + sites.stream().map(SiteId::toString).collect(Collectors.joining("+"));
  }

  /** Names a row that is anew each evening. */
  static String ofEvening(String what, String name, LocalDate evening) {
    return what + "/" + name + "/" + evening;
  }
}
