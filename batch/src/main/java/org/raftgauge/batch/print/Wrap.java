// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Breaks texts into lines at spaces; a word wider than the line is broken anywhere. */
record Wrap(Font font) {

  /** Measures texts. */
  interface Font {
    /** Returns the width of a text of a size, mm. */
    double widthMm(String text, double sizeMm) throws IOException;
  }

  List<String> lines(String text, double sizeMm, double roomMm) throws IOException {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+", -1)) {
      String rest = word;
      String longer = line.isEmpty() ? rest : line + " " + rest;
      if (font.widthMm(longer, sizeMm) <= roomMm) {
        line = new StringBuilder(longer);
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
      }
      while (font.widthMm(rest, sizeMm) > roomMm && rest.length() > 1) {
        int fits = fitting(rest, sizeMm, roomMm);
        lines.add(rest.substring(0, fits));
        rest = rest.substring(fits);
      }
      line = new StringBuilder(rest);
    }
    lines.add(line.toString());
    return lines;
  }

  private int fitting(String word, double sizeMm, double roomMm) throws IOException {
    int fits = 1;
    while (fits < word.length() && font.widthMm(word.substring(0, fits + 1), sizeMm) <= roomMm) {
      fits++;
    }
    return fits;
  }
}
