// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.util.List;
import java.util.Locale;
import org.raftgauge.proving.accuracy.LookScore;
import org.raftgauge.proving.accuracy.ScoreFiles.Method;

/** Writes scores as rows of one table: Raftgauge and the plain script side by side. */
final class SummaryRows {
  /** Head of the README's table and of each section's first one. */
  static final String HEAD =
      "| photos | open sites (missed) | median error | 95th | plain script: median | 95th"
          + " | empty sites | largest area found, cm2 | plain script |\n"
          + "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n";

  private SummaryRows() {}

  /**
   * Writes a row for each look of ours.
   *
   * @param ours scores of the program
   * @param plain scores of the plain script on the same sites
   * @return the rows
   */
  static String of(Method ours, Method plain) {
    StringBuilder rows = new StringBuilder();
    for (LookScore score : ours.scores()) {
      rows.append(row(score.look(), score, find(plain, score.look())));
    }
    return rows.toString();
  }

  /** Writes one row under a name of its own. */
  static String row(String name, LookScore ours, LookScore plain) {
    return String.format(
        Locale.ROOT,
        "| %s | %d (%d) | %s | %s | %s | %s | %d | %.1f | %.1f |\n",
        name,
        ours.open().sites(),
        ours.open().missed(),
        percent(ours.open().sites(), ours.open().medianShare()),
        percent(ours.open().sites(), ours.open().p95Share()),
        percent(ours.open().sites(), plain.open().medianShare()),
        percent(ours.open().sites(), plain.open().p95Share()),
        ours.empty().sites(),
        ours.empty().largestCm2(),
        plain.empty().largestCm2());
  }

  /** Finds the score of a look. */
  static LookScore find(Method method, String look) {
    List<LookScore> found = method.scores().stream().filter(s -> s.look().equals(look)).toList();
    if (found.isEmpty()) {
      throw new IllegalArgumentException("no look \"" + look + "\" in " + method.method());
    }
    return found.get(0);
  }

  private static String percent(int sites, double share) {
    return sites == 0 ? "" : String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }
}
