// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;

/** Tables of the optional folder of shared reference values; tests without it are skipped. */
public final class SharedTables {
  private SharedTables() {}

  /** Returns the rows of a table of {@code reference/data}, cells by column name. */
  public static List<Map<String, String>> rows(String file) {
    Path table = folder().resolve(file);
    Assumptions.assumeTrue(Files.exists(table), "no shared reference data: " + file);
    try {
      List<String> lines = Files.readAllLines(table);
      String[] names = lines.get(0).replace("\"", "").split(",", -1);
      List<Map<String, String>> rows = new ArrayList<>();
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(",", -1);
        Map<String, String> row = new HashMap<>();
        for (int i = 0; i < names.length; i++) {
          row.put(names[i], cells[i]);
        }
        rows.add(row);
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path folder() {
    String given = System.getProperty("raftgauge.shared");
    if (given != null) {
      return Path.of(given, "reference", "data");
    }
    for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
      Path folder = at.resolve("shared").resolve("reference").resolve("data");
      if (Files.isDirectory(folder)) {
        return folder;
      }
    }
    return Path.of("no-shared-folder");
  }
}
