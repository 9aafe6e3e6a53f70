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
 * @param groups its tasks, in the order of the worklist
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
      days.computeIfAbsent(by.isBefore(tomorrow) ? tomorrow : by, d -> new ArrayList<>())
          .add(group);
    }
    List<DueDay> due = new ArrayList<>();
    days.forEach(
        (day, groups) ->
            due.add(new DueDay(Optional.of(day).filter(d -> !d.equals(LocalDate.MAX)), groups)));
    return due;
  }
}
