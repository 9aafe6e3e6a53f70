// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What of a worklist is due on a day, for a person who reads it day by day. What was due before is
 * due tomorrow.
 *
 * @param day the day; absent for what has none
 * @param groups its tasks, in the order of the worklist, but a raft's weighing before its harvest
 */
public record DueDay(Optional<LocalDate> day, List<TaskGroup> groups) {

  /** Copies the list. */
  public DueDay {
    groups = List.copyOf(groups);
  }

  /**
   * Parts a worklist by days.
   *
   * @param worklist most urgent first
   * @param tomorrow the first day on which something can be done
   * @return the days in order; what has no day comes last
   */
  public static List<DueDay> of(List<Task> worklist, LocalDate tomorrow) {
    Map<LocalDate, List<TaskGroup>> days = new TreeMap<>();
    for (TaskGroup group : TaskGroup.of(worklist)) {
      LocalDate by = group.first().by().orElse(LocalDate.MAX);
      add(
          group,
          days.computeIfAbsent(by.isBefore(tomorrow) ? tomorrow : by, d -> new ArrayList<>()));
    }
    List<DueDay> due = new ArrayList<>();
    days.forEach(
        (day, groups) ->
            due.add(new DueDay(Optional.of(day).filter(d -> !d.equals(LocalDate.MAX)), groups)));
    return due;
  }

  /** Adds at the end; a weighing goes before the harvest that would take its plants away. */
  private static void add(TaskGroup group, List<TaskGroup> groups) {
    int at = groups.size();
    for (int i = 0; i < groups.size() && group.first().action() == Task.Action.WEIGH; i++) {
      Task other = groups.get(i).first();
      boolean takes = other.action() == Task.Action.HARVEST;
      if (takes && other.where().raft().equals(group.first().where().raft())) {
        at = Math.min(at, i);
      }
    }
    groups.add(at, group);
  }
}
