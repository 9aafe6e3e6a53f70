// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.time.LocalDate;
import java.util.List;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.Task;

/** Writes {@code worklist.csv}: tomorrow's work, most urgent first. */
public final class WorklistTable {
  private static final List<String> HEADER =
      List.of(
          "priority", "action", "station", "pond", "berth", "raft", "site", "why", "by", "item");

  private WorklistTable() {}

  /**
   * Writes the table.
   *
   * @param tasks most urgent first
   * @return the text of the file
   */
  public static String csv(List<Task> tasks) {
    CsvText csv = new CsvText(HEADER);
    for (Task task : tasks) {
      Task.Where where = task.where();
      csv.number(task.priority())
          .text(task.action().words())
          .text(where.station())
          .text(where.pond())
          .text(where.berth())
          .text(where.raft())
          .list(where.sites().stream().map(SiteId::toString).toList())
          .text(task.why())
          .text(task.by().map(LocalDate::toString).orElse(""))
          .text(task.item())
          .endRow();
    }
    return csv.toString();
  }
}
