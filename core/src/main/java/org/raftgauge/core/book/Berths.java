// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.raftgauge.core.problem.Findings;

/**
 * Checks that no berth is given to two rafts that still stand: a worklist would send people to the
 * wrong one. Trays of seedlings may share a bench.
 */
final class Berths {
  /** So many are named, the rest are counted. */
  private static final int MOST_NAMED = 3;

  private Berths() {}

  /** Warns once of all berths with several rafts whose plants have not left. */
  static void check(List<Tenure> tenures, Findings findings) {
    Map<String, TreeSet<String>> rafts = new TreeMap<>();
    for (Tenure tenure : tenures) {
      Planting planting = tenure.planting();
      boolean transplanted = planting.transplantedOn().isPresent();
      if (transplanted && tenure.to().isEmpty() && !planting.berth().isEmpty()) {
        String pond = planting.pond().isEmpty() ? "" : "pond " + planting.pond() + ", ";
        rafts
            .computeIfAbsent(pond + "berth " + planting.berth(), b -> new TreeSet<>())
            .add(tenure.raft());
      }
    }
    List<String> shared = new ArrayList<>();
    rafts.forEach(
        (berth, names) -> {
          if (names.size() > 1) {
            String first = names.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
            int others = names.size() - MOST_NAMED;
            shared.add(berth + " (" + first + (others > 0 ? ", " + others + " more" : "") + ")");
          }
        });
    if (!shared.isEmpty()) {
      int more = shared.size() - MOST_NAMED;
      findings.warning(
          "plantings.csv: column berth",
          "several rafts stand at one berth: "
              + String.join("; ", shared.subList(0, Math.min(MOST_NAMED, shared.size())))
              + (more > 0 ? "; and at " + more + " more" : ""),
          "write each raft's own place, or ended_on of those that are gone");
    }
  }
}
