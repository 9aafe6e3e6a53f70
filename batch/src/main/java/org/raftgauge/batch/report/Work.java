// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.evening.DueDay;
import org.raftgauge.core.evening.TaskGroup;

/**
 * A line of the worklist: a task, or several that a person takes for one.
 *
 * @param tasks one or more
 * @param due the day that it stands under, a title, or empty
 */
public record Work(List<Task> tasks, String due) {

  /** Copies the list. */
  public Work {
    tasks = List.copyOf(tasks);
  }

  /**
   * Makes a line of one task.
   *
   * @param task the task
   */
  public static Work of(Task task) {
    return new Work(List.of(task), "");
  }

  /** Makes the lines of a worklist, day by day. */
  static List<Work> of(List<org.raftgauge.core.evening.Task> worklist, LocalDate tomorrow) {
    List<Work> lines = new ArrayList<>();
    for (DueDay due : DueDay.of(worklist, tomorrow)) {
      String day = due.day().map(d -> "By " + Texts.longDay(d)).orElse("No fixed day");
      String title = day + (due.day().filter(tomorrow::equals).isPresent() ? ", tomorrow" : "");
      for (TaskGroup group : due.groups()) {
        lines.add(new Work(group.tasks().stream().map(t -> Task.of(t, due.day())).toList(), title));
      }
    }
    return lines;
  }

  /** Returns the first of the tasks. */
  public Task first() {
    return tasks.get(0);
  }

  /** Says whether it is several tasks. */
  public boolean isSeveral() {
    return tasks.size() > 1;
  }
}
