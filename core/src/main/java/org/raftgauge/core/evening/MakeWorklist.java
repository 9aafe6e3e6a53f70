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
    List<Task> tasks = new ArrayList<>();
    PhotoTasks photos = new PhotoTasks(tonight, seen);
    tasks.addAll(photos.stations());
    tasks.addAll(photos.notSeen());
    tasks.addAll(photos.again());
    tasks.addAll(photos.tags());
    tasks.addAll(new InspectTasks(tonight, seen).tasks());
    CropTasks crops = new CropTasks(tonight, seen);
    tasks.addAll(crops.harvests());
    tasks.addAll(crops.crowded());
    tasks.addAll(crops.weighings());
    tasks.sort(Task.ORDER);
    return tasks;
  }
}
