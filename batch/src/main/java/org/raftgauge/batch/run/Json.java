// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.Collection;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes JSON (RFC 8259), indented by two. */
final class Json {

  private Json() {}

  /**
   * Writes a value.
   *
   * @param value a map with text keys, a collection, a number, a boolean, or anything else by its
   *     text
   * @return its JSON
   */
  static String of(Object value) {
    return of(value, "\n");
  }

  private static String of(Object value, String line) {
    String inner = line + "  ";
    if (value instanceof Map<?, ?> map) {
      return map.isEmpty()
          ? "{}"
          : map.entrySet().stream()
              .map(e -> text(e.getKey().toString()) + ": " + of(e.getValue(), inner))
              .collect(Collectors.joining("," + inner, "{" + inner, line + "}"));
    }
    if (value instanceof Collection<?> list) {
      return list.isEmpty()
          ? "[]"
          : list.stream()
              .map(e -> of(e, inner))
              .collect(Collectors.joining("," + inner, "[" + inner, line + "]"));
    }
    return value instanceof Number || value instanceof Boolean
        ? value.toString()
        : text(value.toString());
  }

  /** Writes a text in quotes. */
  static String text(String value) {
    StringBuilder json = new StringBuilder("\"");
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      if (c == '"' || c == '\\') {
        json.append('\\').append(c);
      } else if (c < 0x20) {
        json.append(String.format("\\u%04x", (int) c));
      } else {
        json.append(c);
      }
    }
    return json.append('"').toString();
  }
}
