// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads a file that {@link CsvWriter} wrote, row by row and of any length, every cell as it was
 * given: nothing is stripped, and a row need not differ from another.
 */
public final class CsvScan {

  private CsvScan() {}

  /**
   * Reads.
   *
   * @param file the file
   * @param columns its header
   * @param sink takes each row, a cell for each column
   * @throws IOException if it cannot be read, its header is another, or a row is no row, with the
   *     line
   */
  public static void read(Path file, List<String> columns, Sink sink) throws IOException {
    try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8);
        CSVParser parser = CSVFormat.RFC4180.parse(reader)) {
      Iterator<CSVRecord> records = parser.iterator();
      List<String> header = records.hasNext() ? records.next().toList() : List.of();
      if (!header.equals(columns)) {
        throw new IOException(file + ":1: the header is not " + String.join(",", columns));
      }
      while (records.hasNext()) {
        CSVRecord row = records.next();
        if (row.size() != columns.size()) {
          throw new IOException(
              file
                  + ":"
                  + parser.getCurrentLineNumber()
                  + ": the row has "
                  + row.size()
                  + " cells, the header "
                  + columns.size());
        }
        sink.take(row.stream().map(Cell::unguarded).toList());
      }
    } catch (UncheckedIOException e) {
      String what =
          e.getCause() instanceof CharacterCodingException
              ? "a letter is not UTF-8"
              : "a double quote is out of place";
      throw new IOException(file + ": " + what, e);
    }
  }

  /** Takes rows. */
  public interface Sink {

    /**
     * Takes a row.
     *
     * @param cells in the order of the header
     * @throws IOException if the row cannot be used
     */
    void take(List<String> cells) throws IOException;
  }
}
