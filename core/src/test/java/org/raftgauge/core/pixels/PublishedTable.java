// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads tables of published numbers from the test resources; lines that begin with # cite. */
public final class PublishedTable {

  private PublishedTable() {}

  /** Returns the rows of a table, cells by column name. */
  public static List<Map<String, String>> rows(String file) {
    List<String> lines =
        text(file).lines().filter(l -> !l.startsWith("#") && !l.isBlank()).toList();
    String[] names = lines.get(0).split(",", -1);
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
  }

  private static String text(String file) {
    try (InputStream in = PublishedTable.class.getResourceAsStream("/published/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
