// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVRecord;

/** Scores how well a run tells the plants of one raft from each other, whatever hides of all. */
public final class SharesOfRaft {
  private static final double[] SHARED_FROM = {0, 0.1, 0.35, 0.6};
  private static final List<String> NAMES =
      List.of("under 0.1", "0.1 to 0.35", "0.35 to 0.6 (closed)", "0.6 and more (closed)");

  private SharesOfRaft() {}

  /** A plant's ln(measured / true), by the photo alone and as settled. */
  private record Off(double shared, double alone, double settled) {}

  /**
   * Writes the table.
   *
   * @param truth the sites
   * @param file {@code sites.csv} of a run
   * @return Markdown
   * @throws IOException if the file cannot be read
   */
  public static String table(List<TruthSite> truth, Path file) throws IOException {
    StringBuilder text =
        new StringBuilder(
            """
            | outline shared | plants | each photo by itself | with the evenings before |
            | --- | ---: | ---: | ---: |
            """);
    List<Off> all = off(truth, file);
    for (int bin = 0; bin < SHARED_FROM.length; bin++) {
      double from = SHARED_FROM[bin];
      double to = bin + 1 < SHARED_FROM.length ? SHARED_FROM[bin + 1] : 2;
      List<Off> in = all.stream().filter(o -> o.shared >= from && o.shared < to).toList();
      text.append(
          String.format(
              Locale.ROOT,
              "| %s | %d | %.1f %% | %.1f %% |%n",
              NAMES.get(bin),
              in.size(),
              100 * in.stream().mapToDouble(o -> Math.abs(o.alone)).average().orElse(0),
              100 * in.stream().mapToDouble(o -> Math.abs(o.settled)).average().orElse(0)));
    }
    return text.toString();
  }

  private static List<Off> off(List<TruthSite> truth, Path file) throws IOException {
    Map<SiteKey, Double> shared = new LinkedHashMap<>();
    for (CSVRecord row : Table.read(file)) {
      String cell = row.get("shared_outline_fraction");
      shared.put(SiteKey.of(row), cell.isEmpty() ? 0 : Double.parseDouble(cell));
    }
    Map<SiteKey, Answer> alone = Answer.readPhotosAlone(file);
    Map<SiteKey, Answer> settled = Answer.read(file);
    Map<String, List<Off>> rafts = new LinkedHashMap<>();
    for (TruthSite site : truth) {
      OptionalDouble before = alone.getOrDefault(site.key(), Answer.NONE).projectedAreaCm2();
      boolean told = before.isPresent() && before.getAsDouble() > 0;
      if (told && site.planted() && site.visibleAreaCm2() >= ScoreRun.LEAST_VISIBLE_CM2) {
        double now = settled.get(site.key()).projectedAreaCm2().orElseThrow();
        double cm2 = site.projectedAreaCm2();
        rafts
            .computeIfAbsent(site.key().photo() + site.key().raft(), raft -> new ArrayList<>())
            .add(
                new Off(
                    shared.get(site.key()),
                    Math.log(before.getAsDouble() / cm2),
                    Math.log(now / cm2)));
      }
    }
    return rafts.values().stream().flatMap(raft -> fromMedian(raft).stream()).toList();
  }

  private static List<Off> fromMedian(List<Off> raft) {
    double alone = ScoreRun.quantile(raft.stream().map(Off::alone).toList(), 0.5);
    double settled = ScoreRun.quantile(raft.stream().map(Off::settled).toList(), 0.5);
    return raft.stream().map(o -> new Off(o.shared, o.alone - alone, o.settled - settled)).toList();
  }
}
