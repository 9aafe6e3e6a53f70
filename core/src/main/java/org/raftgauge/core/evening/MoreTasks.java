// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.core.book.CropBook;

/** Adds to an evening's worklist what is found after it was closed. */
public final class MoreTasks {

  private MoreTasks() {}

  /**
   * Adds. A task of a name that the worklist has joins that one: the earlier day, both reasons.
   *
   * @param evening with its worklist
   * @param more further tasks
   * @param book tells what was seen already; such tasks are left out
   * @return the evening with the longer worklist, in its order
   */
  public static EveningResult with(EveningResult evening, List<Task> more, CropBook book) {
    SeenItems seen = new SeenItems(book.diary().seen(), evening.evening().plusDays(1));
    Map<String, Task> tasks = new LinkedHashMap<>();
    evening.worklist().forEach(t -> tasks.put(t.item(), t));
    Map<String, HiddenRow> hidden = new LinkedHashMap<>();
    evening.hidden().forEach(row -> hidden.put(row.item(), row));
    for (Task task : more) {
      if (seen.hides(task.item())) {
        hidden.put(task.item(), new HiddenRow(task.item(), seen.until(task.item())));
      } else {
        tasks.merge(task.item(), task, MoreTasks::both);
      }
    }
    List<Task> sorted = tasks.values().stream().sorted(Task.ORDER).toList();
    return new EveningResult(
        evening.evening(),
        evening.verdicts(),
        evening.curves(),
        sorted,
        List.copyOf(hidden.values()),
        evening.growth(),
        evening.stations());
  }

  private static Task both(Task a, Task b) {
    boolean earlier = b.by().filter(day -> a.by().map(day::isBefore).orElse(true)).isPresent();
    return new Task(
        a.action(),
        Math.min(a.priority(), b.priority()),
        a.where(),
        a.why() + " " + b.why(),
        earlier ? b.by() : a.by(),
        a.item());
  }
}
