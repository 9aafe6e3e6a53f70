// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.List;
import org.raftgauge.core.marker.SharedData;

/** A CSV of the shared reference values: a header, then numbers. */
final class ReferenceTable {
  private final List<String> header;
  private final List<double[]> rows;

  private ReferenceTable(List<String> header, List<double[]> rows) {
    this.header = header;
    this.rows = rows;
  }

  /** Reads a table; skips the test where the folder is absent. */
  static ReferenceTable read(String name) throws IOException {
    List<String> lines =
        Files.readAllLines(SharedData.folder("reference/data").resolve(name)).stream()
            .map(line -> line.replace("\"", ""))
            .toList();
    return new ReferenceTable(
        List.of(lines.get(0).split(",")),
        lines.stream()
            .skip(1)
            .map(l -> Arrays.stream(l.split(",")).mapToDouble(Double::parseDouble).toArray())
            .toList());
  }

  double[] column(String name) {
    int at = header.indexOf(name);
    return rows.stream().mapToDouble(row -> row[at]).toArray();
  }

  /** Returns a column of ones followed by the named columns. */
  double[][] design(String... names) {
    double[][] design = new double[rows.size()][names.length + 1];
    for (int i = 0; i < design.length; i++) {
      design[i][0] = 1;
      for (int j = 0; j < names.length; j++) {
        design[i][j + 1] = rows.get(i)[header.indexOf(names[j])];
      }
    }
    return design;
  }

  List<String> header() {
    return header;
  }
}
