// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.util.Map;

/**
 * One row of a CSV file.
 *
 * @param file the file's name as shown to the user
 * @param line the line on which the row begins, from 1
 * @param cells text by column, without spaces around it; a column that the file lacks is not there
 */
public record CsvRow(String file, int line, Map<String, String> cells) {

  /** Copies the cells. */
  public CsvRow {
    cells = Map.copyOf(cells);
  }

  /**
   * Returns the text of a cell.
   *
   * @param column the column's name
   * @return its text, empty where the cell is blank or the file has no such column
   */
  public String text(String column) {
    return cells.getOrDefault(column, "");
  }

  /**
   * Says where a cell is.
   *
   * @param column the column's name
   * @return such as {@code plantings.csv:14: column crop}
   */
  public String place(String column) {
    return file + ":" + line + ": column " + column;
  }
}
