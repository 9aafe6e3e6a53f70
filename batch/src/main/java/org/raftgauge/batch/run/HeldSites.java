// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.report.RaftRows;
import org.raftgauge.core.report.SiteRow;

/** Words which sites of a raft have no answer although the raft was measured. */
final class HeldSites {

  private HeldSites() {}

  /**
   * Returns a line for each reason; none where the raft as a whole is held or no planting explains
   * it, which its photo says.
   */
  static List<String> lines(RaftRows raft) {
    if (!raft.doubt().isEmpty()) {
      return List.of();
    }
    Map<String, Integer> reasons = new TreeMap<>();
    for (SiteRow row : raft.sites()) {
      if (!row.site().held().isEmpty()) {
        reasons.merge(row.site().held(), 1, Integer::sum);
      }
    }
    List<String> lines = new ArrayList<>();
    String where = raft.photo().photo() + ": raft " + raft.raft().raft().orElse("?") + ", ";
    reasons.forEach(
        (why, count) -> lines.add(where + count + of(raft.sites().size()) + " held: " + why));
    return lines;
  }

  private static String of(int sites) {
    return " of " + sites + (sites == 1 ? " site" : " sites");
  }
}
