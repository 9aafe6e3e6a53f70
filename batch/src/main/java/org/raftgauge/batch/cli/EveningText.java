// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.evening.HiddenRow;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/** Says what an evening came to: the count of verdicts and the most urgent tasks. */
final class EveningText {
  private static final int TOP_TASKS = 5;
  private static final int TOP_PONDS = 3;
  private static final int FEW_UNSEEN = 2;
  private static final int TOP_UNSEEN = 6;

  private EveningText() {}

  static List<String> lines(EveningResult evening) {
    List<String> lines = new ArrayList<>();
    lines.add("Verdicts " + verdicts(evening.siteCounts()));
    List<Judged> slow =
        evening.verdicts().stream()
            .filter(row -> row.scope() == Judged.Scope.POND && !row.verdict().isCalm())
            .toList();
    slow.stream().limit(TOP_PONDS).forEach(row -> lines.add(pond(row)));
    if (slow.size() > TOP_PONDS) {
      lines.add(
          "         ... and " + (slow.size() - TOP_PONDS) + " more ponds lag or have stalled");
    }
    String hidden = HiddenRow.words(evening.hidden(), LocalDate::toString);
    if (evening.worklist().isEmpty()) {
      lines.add("To do    nothing " + (hidden.isEmpty() ? "for tomorrow" : "else; " + hidden));
      return lines;
    }
    lines.add("To do:");
    List<String> tasks = sentences(evening.worklist());
    tasks.stream().limit(TOP_TASKS).forEach(sentence -> lines.add("  " + sentence));
    int more = tasks.size() - TOP_TASKS;
    if (more > 0) {
      lines.add("  ... and " + more + " more in worklist.csv");
    }
    if (!hidden.isEmpty()) {
      lines.add("Seen     " + hidden);
    }
    return lines;
  }

  private static String pond(Judged row) {
    String pond = row.place().pond();
    return "         "
        + (pond.isEmpty() ? "the farm" : "pond " + pond)
        + (row.verdict() == Verdict.STALLED ? " has stalled: " : " lags: ")
        + row.evidence();
  }

  /** Says the tasks; rafts that nobody photographed come as one, or they would hide the rest. */
  private static List<String> sentences(List<Task> tasks) {
    List<Task> unseen =
        tasks.stream().filter(task -> task.action() == Task.Action.PHOTOGRAPH_AT_ALL).toList();
    if (unseen.size() <= FEW_UNSEEN) {
      return tasks.stream().map(Task::sentence).toList();
    }
    String one =
        "Photograph "
            + unseen.size()
            + " rafts that were expected and not seen: "
            + unseen.stream()
                .limit(TOP_UNSEEN)
                .map(task -> task.where().raft())
                .collect(Collectors.joining(", "))
            + (unseen.size() > TOP_UNSEEN ? ", ..." : ".");
    return tasks.stream()
        .filter(
            task -> task.action() != Task.Action.PHOTOGRAPH_AT_ALL || task.equals(unseen.get(0)))
        .map(task -> task.equals(unseen.get(0)) ? one : task.sentence())
        .toList();
  }

  private static String verdicts(Map<Verdict, Integer> counts) {
    return counts.isEmpty()
        ? "none: no planted site was seen"
        : counts.entrySet().stream()
            .map(e -> e.getValue() + " " + words(e.getKey()))
            .collect(Collectors.joining(", ", "", " (sites)"));
  }

  private static String words(Verdict verdict) {
    return verdict == Verdict.NOT_TOLD ? "cannot be told yet" : verdict.word();
  }
}
