// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.util.List;

/**
 * A row of a report on its way to its file.
 *
 * @param report its name, such as {@code sites}
 * @param cycle the crop cycle that it belongs to
 * @param day the evening that it belongs to, ISO 8601, or {@code undated}
 * @param place its place among the rows of its raft and photo, or of its evening, from 0
 * @param cells as in the CSV file
 */
public record ReportRow(String report, String cycle, String day, int place, List<String> cells) {
  /** The day of photos without a time. */
  public static final String UNDATED = "undated";

  /** Copies the list. */
  public ReportRow {
    cells = List.copyOf(cells);
  }
}
