// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.util.List;
import java.util.Locale;
import org.raftgauge.proving.accuracy.LookScore;
import org.raftgauge.proving.accuracy.LookScore.Errors;

/** Built-in and taught colour models on the same sites, a look a row. */
final class SideBySide {
  private SideBySide() {}

  static String table(List<LookScore> builtIn, List<LookScore> taught) {
    StringBuilder table =
        new StringBuilder(
            "| look | open sites | built-in (missed) | 95th | taught (missed) | 95th | overlapped"
                + " sites | built-in (missed) | taught (missed) | empty: built-in, cm2 | taught |\n"
                + "| --- |"
                + " ---: |".repeat(10)
                + "\n");
    for (int i = 0; i < builtIn.size(); i++) {
      table.append(row(builtIn.get(i), taught.get(i)));
    }
    return table.toString();
  }

  private static String row(LookScore builtIn, LookScore taught) {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %s | %s | %s | %s | %d | %s | %s | %.1f | %.1f |\n",
        builtIn.look(),
        builtIn.open().sites(),
        median(builtIn.open()),
        percent(builtIn.open(), builtIn.open().p95Share()),
        median(taught.open()),
        percent(taught.open(), taught.open().p95Share()),
        builtIn.overlapped().sites(),
        median(builtIn.overlapped()),
        median(taught.overlapped()),
        builtIn.empty().largestCm2(),
        taught.empty().largestCm2());
  }

  private static String median(Errors errors) {
    return errors.sites() == 0
        ? ""
        : percent(errors, errors.medianShare()) + " (" + errors.missed() + ")";
  }

  private static String percent(Errors errors, double share) {
    return errors.sites() == 0 ? "" : String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }
}
