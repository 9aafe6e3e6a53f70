// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Reads the ids of rafts as a person lists them: with commas, or as a range. */
final class RaftNames {
  private static final Pattern RANGE =
      Pattern.compile("(.*?)(\\d{1,9})\\s*(?:\\.\\.|\\s+to\\s+)\\s*(.*?)(\\d{1,9})");

  /** A slip of the finger asks for more. */
  private static final int MOST = 2000;

  private RaftNames() {}

  /** Returns the ids of {@code } or {@code R-001..R-012}, each once, in order. */
  static List<String> of(String text) {
    Set<String> names = new LinkedHashSet<>();
    for (String part : text.split(",", -1)) {
      Matcher range = RANGE.matcher(part.strip());
      if (range.matches()) {
        names.addAll(range(part.strip(), range));
      } else {
        names.add(Answers.name(part.strip()));
      }
    }
    return List.copyOf(names);
  }

  private static List<String> range(String text, Matcher range) {
    int first = Integer.parseInt(range.group(2));
    int last = Integer.parseInt(range.group(4));
    boolean alike = range.group(3).isEmpty() || range.group(3).equals(range.group(1));
    if (!alike || last < first || last - first >= MOST) {
      throw Answers.wrong(text, "a range upwards of the same letters, as in R-001..R-012");
    }
    String digits = "%0" + range.group(2).length() + "d";
    return IntStream.rangeClosed(first, last)
        .mapToObj(n -> Answers.name(range.group(1) + digits.formatted(n)))
        .toList();
  }
}
