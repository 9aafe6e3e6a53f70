// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.List;

/** Writes tomorrow's work, most urgent first. */
final class MakeWorklist {
  private final Tonight tonight;
  private final SeenItems seen;

  MakeWorklist(Tonight tonight) {
    this.tonight = tonight;
    this.seen = new SeenItems(tonight.book().diary().seen(), tonight.tomorrow());
  }

  List<Task> tasks() {
    return tasks(seen);
  }

  /**
   * Returns the rows that someone has seen, done or put off.
   *
   * @param shown the tasks that {@link #tasks()} gives
   */
  List<HiddenRow> hidden(List<Task> shown) {
    return seen.isEmpty() ? List.of() : HiddenRow.of(tasks(SeenItems.NONE), shown, seen);
  }

  private List<Task> tasks(SeenItems hiding) {
    List<Task> tasks = new ArrayList<>();
    PhotoTasks photos = new PhotoTasks(tonight, hiding);
    tasks.addAll(photos.stations());
    tasks.addAll(new BookTasks(tonight, hiding).tasks());
    tasks.addAll(photos.notSeen());
    tasks.addAll(photos.again());
    tasks.addAll(photos.tags());
    tasks.addAll(new InspectTasks(tonight, hiding).tasks());
    CropTasks crops = new CropTasks(tonight, hiding);
    tasks.addAll(crops.harvests());
    tasks.addAll(crops.crowded());
    tasks.addAll(crops.weighings());
    tasks.sort(Task.ORDER);
    return tasks;
  }
}
