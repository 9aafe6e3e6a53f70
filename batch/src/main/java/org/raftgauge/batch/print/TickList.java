// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.util.List;
import org.raftgauge.core.evening.Task;

/** Rafts to tick, in columns, each with its berth. */
final class TickList {
  private static final double BOX_MM = 3.6;
  private static final double ROW_MM = 6;
  private static final double COLUMN_MM = 42;
  private static final double TEXT_MM = 3.2;

  private final List<String> rafts;
  private final int columns;

  TickList(List<Task> tasks, double widthMm) {
    this.rafts = tasks.stream().map(TickList::words).toList();
    this.columns = Math.max(1, (int) (widthMm / COLUMN_MM));
  }

  private static String words(Task task) {
    String berth = task.where().berth();
    return task.where().raft() + (berth.isEmpty() ? "" : ", berth " + berth);
  }

  private int rows() {
    return (rafts.size() + columns - 1) / columns;
  }

  double heightMm() {
    return rows() * ROW_MM + 1;
  }

  /** Draws it below and right of a place, down the columns. */
  void draw(PdfPage page, double leftMm, double topMm) throws IOException {
    for (int i = 0; i < rafts.size(); i++) {
      double x = leftMm + (i / rows()) * COLUMN_MM;
      double y = topMm + (i % rows()) * ROW_MM + 1;
      page.outline(new PdfPage.Box(x, y, BOX_MM, BOX_MM), 0.3, 0);
      page.text(rafts.get(i), x + BOX_MM + 1.6, y + 3, TEXT_MM);
    }
  }
}
