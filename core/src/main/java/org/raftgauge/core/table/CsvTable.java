// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.nio.file.Path;
import java.util.List;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.Problem;

/**
 * A CSV file as read: the rows that can be used and everything that is wrong with it.
 *
 * @param name its name as shown to the user
 * @param rows its sound rows in order; none where the header is unusable
 * @param problems what is wrong with it, in the order of its lines
 * @param stray the text of each row that could not be told into cells: what a name in another file
 *     refers to may stand there
 * @param whole whether all rows are among these two; where not, it may stand anywhere
 */
public record CsvTable(
    String name, List<CsvRow> rows, List<Problem> problems, List<String> stray, boolean whole) {

  /** Copies the lists. */
  public CsvTable {
    rows = List.copyOf(rows);
    problems = List.copyOf(problems);
    stray = List.copyOf(stray);
  }

  /**
   * Reads a file.
   *
   * @param file the file
   * @param name its name as shown to the user
   * @param columns the columns that it must and may have
   * @return the table; a file that cannot be read gives no rows and a problem
   */
  public static CsvTable read(Path file, String name, Columns columns) {
    Findings findings = new Findings();
    return PlainText.read(file, name, findings)
        .map(text -> parse(text, name, columns))
        .orElseGet(() -> new CsvTable(name, List.of(), findings.list(), List.of(), false));
  }

  /**
   * Reads text.
   *
   * @param text the text of a file
   * @param name the file's name as shown to the user
   * @param columns the columns that it must and may have
   * @return the table
   */
  public static CsvTable parse(String text, String name, Columns columns) {
    Findings findings = new Findings();
    CsvReader reader = new CsvReader(name, columns, findings);
    List<CsvRow> rows = reader.rows(text);
    return new CsvTable(name, rows, findings.list(), reader.stray(), reader.isWhole());
  }
}
