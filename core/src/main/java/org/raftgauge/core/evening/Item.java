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
    return ofSites(ofRaft(what, raft, cycle), sites);
  }

  /** Names a row about sites by the name of their raft's row. */
  static String ofSites(String raftItem, List<SiteId> sites) {
    return raftItem + "/" + sites.stream().map(SiteId::toString).collect(Collectors.joining("+"));
  }

  /** Returns a name without its last part: sites, the evening, or where there are none the day. */
  static String stem(String item) {
    int slash = item.lastIndexOf('/');
    return slash < 0 ? item : item.substring(0, slash);
  }

  /** Returns the last part of a name. */
  static String last(String item) {
    return item.substring(item.lastIndexOf('/') + 1);
  }

  /** Says whether a row is about sites of a raft, by its name. */
  static boolean isOfSites(String item) {
    return !last(item).equals("none") && !last(item).matches("\\d{4}-\\d{2}-\\d{2}");
  }

  /** Names a row that is anew each evening. */
  static String ofEvening(String what, String name, LocalDate evening) {
    return what + "/" + name + "/" + evening;
  }
}
