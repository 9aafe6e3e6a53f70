// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.OffsetDateTime;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.table.CsvRow;

/** A sound row of measures made elsewhere. */
record SiteCells(
    CsvRow row,
    String raft,
    SiteId site,
    OffsetDateTime takenAt,
    SiteNumbers numbers,
    String layout) {

  /** Returns the photo's name: its cell, else raft and time. */
  String photo() {
    String cell = row.text("photo");
    return cell.isEmpty() ? raft + " " + takenAt : cell;
  }

  String station() {
    return row.text("station");
  }

  /** Returns what tells it from other rows: its filled cells by column, wherever they stand. */
  String identity() {
    Map<String, String> cells = new TreeMap<>(row.cells());
    cells.values().removeIf(String::isEmpty);
    return cells.toString();
  }
}
