// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.List;
import org.raftgauge.core.evening.TaskGroup;

/**
 * A line of the worklist: a task, or several that a person takes for one.
 *
 * @param tasks one or more
 */
public record Work(List<Task> tasks) {

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
    return new Work(List.of(task));
  }

  /** Makes a line of a group. */
  static Work of(TaskGroup group) {
    return new Work(group.tasks().stream().map(Task::of).toList());
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
