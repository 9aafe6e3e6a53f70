// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Tasks that a person takes for one: the rafts of a pond that nobody photographed. Alone they would
 * fill the list and hide the rest.
 *
 * @param tasks one or more, in the order of the worklist
 */
public record TaskGroup(List<Task> tasks) {
  /** So many rafts of a pond are still said one by one; a working value. */
  private static final int FEW = 2;

  /** Copies the list. */
  public TaskGroup {
    tasks = List.copyOf(tasks);
    if (tasks.isEmpty()) {
      throw new IllegalArgumentException("tasks must be one or more, got none");
    }
  }

  /**
   * Groups a worklist.
   *
   * @param worklist most urgent first
   * @return the same tasks, each group where its first stood
   */
  public static List<TaskGroup> of(List<Task> worklist) {
    Map<String, List<Task>> unseen = new LinkedHashMap<>();
    for (Task task : worklist) {
      if (task.action() == Task.Action.PHOTOGRAPH_AT_ALL) {
        unseen.computeIfAbsent(task.where().pond(), p -> new ArrayList<>()).add(task);
      }
    }
    unseen.values().removeIf(tasks -> tasks.size() <= FEW);
    List<TaskGroup> groups = new ArrayList<>();
    for (Task task : worklist) {
      List<Task> together =
          task.action() == Task.Action.PHOTOGRAPH_AT_ALL
              ? unseen.getOrDefault(task.where().pond(), List.of(task))
              : List.of(task);
      if (together.get(0).equals(task)) {
        groups.add(new TaskGroup(together));
      }
    }
    return groups;
  }

  /** Returns the first of the tasks. */
  public Task first() {
    return tasks.get(0);
  }

  /** Says whether it is several tasks. */
  public boolean isSeveral() {
    return tasks.size() > 1;
  }

  /** Returns of each task what was amiss on its raft when it was last seen, where there is any. */
  public List<String> notes() {
    return tasks.stream()
        .filter(task -> task.why().contains(Task.AMISS))
        .map(
            task ->
                task.where().raft()
                    + ": "
                    + task.why().substring(task.why().indexOf(Task.AMISS) + Task.AMISS.length()))
        .toList();
  }
}
