// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/** Says what an evening came to: the count of verdicts and the most urgent tasks. */
final class EveningText {
  private static final int TOP_TASKS = 5;
  private static final int TOP_PONDS = 3;

  private EveningText() {}

  static List<String> lines(EveningResult evening) {
    List<String> lines = new ArrayList<>();
    lines.add("Verdicts " + verdicts(evening.siteCounts()));
    List<Judged> slow =
        evening.verdicts().stream()
            .filter(row -> row.scope() == Judged.Scope.POND && row.verdict() == Verdict.LAGGING)
            .toList();
    slow.stream()
        .limit(TOP_PONDS)
        .forEach(
            row -> lines.add("         pond " + row.place().pond() + " lags: " + row.evidence()));
    if (slow.size() > TOP_PONDS) {
      lines.add("         ... and " + (slow.size() - TOP_PONDS) + " more ponds lag");
    }
    if (evening.worklist().isEmpty()) {
      lines.add("To do    nothing for tomorrow");
      return lines;
    }
    lines.add("To do:");
    evening.worklist().stream()
        .limit(TOP_TASKS)
        .map(Task::sentence)
        .forEach(sentence -> lines.add("  " + sentence));
    int more = evening.worklist().size() - TOP_TASKS;
    if (more > 0) {
      lines.add("  ... and " + more + " more in worklist.csv");
    }
    return lines;
  }

  private static String verdicts(Map<Verdict, Integer> counts) {
    return counts.isEmpty()
        ? "none: no planted site was seen"
        : counts.entrySet().stream()
            .map(e -> e.getValue() + " " + e.getKey().word())
            .collect(Collectors.joining(", ", "", " (sites)"));
  }
}
