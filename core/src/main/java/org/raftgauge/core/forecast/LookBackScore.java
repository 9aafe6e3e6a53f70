// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;

/**
 * How forecasts of one crop and lead time came out.
 *
 * @param crop the crop
 * @param leadDays days ahead
 * @param harvests how many
 * @param medianAbsoluteShare median of |error| as a share of what was harvested
 * @param meanShare mean error; above 0 too much was forecast
 * @param inside80 share of harvests in their 80 % interval
 * @param inside95 share in their 95 % interval
 * @param width80Share mean width of the 80 % interval as a share of the forecast
 * @param hindsight how many were told by a grader that knew later weighings
 */
public record LookBackScore(
    String crop,
    int leadDays,
    int harvests,
    double medianAbsoluteShare,
    double meanShare,
    double inside80,
    double inside95,
    double width80Share,
    int hindsight) {

  /**
   * Scores.
   *
   * @param rows of a replay
   * @return by crop and lead time, sorted
   */
  public static List<LookBackScore> of(List<LookBackRow> rows) {
    TreeMap<String, TreeMap<Integer, List<LookBackRow>>> groups = new TreeMap<>();
    for (LookBackRow row : rows) {
      groups
          .computeIfAbsent(row.crop(), c -> new TreeMap<>())
          .computeIfAbsent(row.leadDays(), d -> new ArrayList<>())
          .add(row);
    }
    List<LookBackScore> scores = new ArrayList<>();
    groups.values().forEach(leads -> leads.values().forEach(own -> scores.add(score(own))));
    return scores;
  }

  /** Returns the score as a sentence. */
  public String words() {
    return String.format(
        Locale.ROOT,
        "%s, %d days ahead, %d harvests: median error %.1f %%, mean %+.1f %%, %.0f %% inside their"
            + " 80 %% interval%s",
        crop,
        leadDays,
        harvests,
        100 * medianAbsoluteShare,
        100 * meanShare,
        100 * inside80,
        hindsight > 0 ? "; the grader knew later weighings for " + hindsight : "");
  }

  private static LookBackScore score(List<LookBackRow> rows) {
    double[] absolute = rows.stream().mapToDouble(r -> Math.abs(r.errorShare())).sorted().toArray();
    int n = absolute.length;
    return new LookBackScore(
        rows.get(0).crop(),
        rows.get(0).leadDays(),
        n,
        (absolute[(n - 1) / 2] + absolute[n / 2]) / 2,
        rows.stream().mapToDouble(LookBackRow::errorShare).average().orElse(0),
        rows.stream().filter(r -> r.weightG().holds80(r.harvestedG())).count() / (double) n,
        rows.stream().filter(r -> r.weightG().holds95(r.harvestedG())).count() / (double) n,
        rows.stream()
            .mapToDouble(r -> (r.weightG().hi80() - r.weightG().lo80()) / r.weightG().mean())
            .average()
            .orElse(0),
        (int) rows.stream().filter(LookBackRow::hindsight).count());
  }
}
