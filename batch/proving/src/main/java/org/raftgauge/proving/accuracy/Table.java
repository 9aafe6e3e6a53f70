// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads the rows of a CSV file with a header. */
final class Table {

  private Table() {}

  /** Reads all rows. */
  static List<CSVRecord> read(Path file) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (BufferedReader reader = Files.newBufferedReader(file);
        CSVParser parser = CSVParser.parse(reader, format)) {
      return parser.getRecords();
    }
  }

  /** Returns the cell of the first of some columns that the file has. */
  static String cell(CSVRecord row, String... columns) {
    for (String column : columns) {
      if (row.isMapped(column)) {
        return row.get(column);
      }
    }
    throw new IllegalArgumentException("no column " + String.join(" or ", columns));
  }

  /** Returns a cell's number. */
  static double number(CSVRecord row, String... columns) {
    return Double.parseDouble(cell(row, columns));
  }

  /** Returns a photo's file name without its folders. */
  static String fileName(String photo) {
    return photo.substring(photo.replace('\\', '/').lastIndexOf('/') + 1);
  }
}
