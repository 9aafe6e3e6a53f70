// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import java.util.Locale;
import java.util.stream.Collectors;

/** Makes any text fit to be shown on one line. */
public final class PlainLine {
  /** Joiners within words of Persian and of Indian scripts: they show in the shape of letters. */
  private static final String JOINERS = "\u200c\u200d";

  private PlainLine() {}

  /**
   * Writes out, as a backslash, a u and its number in hexadecimal, what would break the line, steer
   * a terminal or not show: control and format characters, line separators, odd blanks and halves
   * of characters.
   *
   * @param text any text
   * @return the same, all of it visible on one line
   */
  public static String of(String text) {
    return text.codePoints()
        .mapToObj(c -> shows(c) ? Character.toString(c) : written(c))
        .collect(Collectors.joining());
  }

  private static boolean shows(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.UNASSIGNED ->
          false;
      case Character.FORMAT -> JOINERS.indexOf(c) >= 0;
      case Character.SPACE_SEPARATOR -> c == ' ';
      default -> true;
    };
  }

  private static String written(int c) {
    return String.format(Locale.ROOT, "\\u%04x", c);
  }
}
