// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.verdict;

import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes scores of verdicts as Markdown. */
public final class ScoreTable {
  private ScoreTable() {}

  /** Returns the head of a table with a row for each season. */
  public static String head() {
    return "| season | at <= 70 %, called within 3 photo days | of these closed | days to the call:"
        + " median, 90th | false flags at >= 85 %, per 1,000 | called ahead at <= 124 %, per 1,000"
        + " | stalls called within 4 days | rafts and ponds at >= 90 % that are named | faults |\n"
        + "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |\n";
  }

  /**
   * Returns a row.
   *
   * @param name of the season
   * @param score what it came to
   */
  public static String row(String name, VerdictScore score) {
    VerdictScore.Recall small = score.small();
    String groups =
        score.soundGroups() == 0
            ? ""
            : String.format(Locale.ROOT, "%d of %d", score.falseGroups(), score.soundGroups());
    return String.format(
        Locale.ROOT,
        "| %s | %s | %s | %.0f, %.0f | %d of %d, %.2f | %.2f | %s | %s | %s |\n",
        name,
        recall(small),
        recall(score.closed()),
        small.days(0.5),
        small.days(0.9),
        score.falseFlags(),
        score.healthyDays(),
        score.falsePerThousand(),
        1000.0 * score.falseAhead() / Math.max(1, score.notAheadDays()),
        recall(score.stalls()),
        groups,
        String.join("; ", score.faults()));
  }

  /**
   * Returns a table of recall by what befell the plants, all seasons together.
   *
   * @param scores of seasons by name
   */
  public static String byPlight(Map<String, VerdictScore> scores) {
    String rows =
        scores.values().stream()
            .flatMap(s -> s.byPlight().keySet().stream())
            .distinct()
            .sorted()
            .map(plight -> plightRow(plight, scores))
            .collect(Collectors.joining());
    return "| what befell | at <= 70 %, called within 3 photo days | days to the call: median, 90th"
        + " |\n| --- | ---: | ---: |\n"
        + rows;
  }

  private static String plightRow(String plight, Map<String, VerdictScore> scores) {
    VerdictScore.Recall sum = new VerdictScore.Recall();
    scores.values().stream()
        .filter(s -> s.byPlight().containsKey(plight))
        .forEach(s -> sum.add(s.byPlight().get(plight)));
    return String.format(
        Locale.ROOT,
        "| %s | %s | %.0f, %.0f |\n",
        plight,
        recall(sum),
        sum.days(0.5),
        sum.days(0.9));
  }

  private static String recall(VerdictScore.Recall recall) {
    return recall.all() == 0
        ? "none"
        : String.format(
            Locale.ROOT, "%d of %d, %.1f %%", recall.called(), recall.all(), 100 * recall.share());
  }
}
