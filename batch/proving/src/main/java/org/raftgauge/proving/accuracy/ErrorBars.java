// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;

/**
 * Judges a run's standard errors by standardised errors, {@code (measured - true) / se}: true ones
 * have mean 0 and spread 1, and 95 % of them lie within 1.96.
 *
 * <p>Open sites are judged on the projected area, overlapped ones on the visible area. Sites
 * without an answer or without a standard error do not count here: they count as misses elsewhere.
 */
public final class ErrorBars {
  /** 95 % of a normal distribution lie within this many standard deviations. */
  private static final double WITHIN = 1.96;

  /** Fewer sites than this have no thirds worth comparing. */
  private static final int LEAST_TO_RANK = 15;

  /** Visible area under which an overlapped plant is not judged, cm2, as in {@link ScoreRun}. */
  private static final double LEAST_VISIBLE_CM2 = 1;

  private ErrorBars() {}

  /**
   * How true the standard errors are under one look.
   *
   * @param look what the sites are grouped by
   * @param sites number of sites judged
   * @param bias mean of the standardised errors
   * @param spread root of the mean square of the standardised errors
   * @param coveredShare share of sites whose 95 % interval holds the truth
   * @param lowThirdCm2 mean absolute error of the third with the smallest standard errors, cm2; 0
   *     with fewer than 15 sites
   * @param highThirdCm2 the same of the third with the largest
   */
  public record LookBars(
      String look,
      int sites,
      double bias,
      double spread,
      double coveredShare,
      double lowThirdCm2,
      double highThirdCm2) {}

  /**
   * A site's error and its standard error.
   *
   * @param errorCm2 measured minus true, cm2
   * @param seCm2 standard error, cm2, over 0
   */
  record Bar(double errorCm2, double seCm2) {}

  /**
   * Judges all looks, in the order of their first site, and all of them together as {@code all}.
   *
   * @param truth the sites
   * @param sites of a run, {@code sites.csv}
   * @return the looks with at least one site judged
   * @throws IOException if the file cannot be read
   */
  public static List<LookBars> judge(List<TruthSite> truth, Path sites) throws IOException {
    Map<SiteKey, CSVRecord> rows = new HashMap<>();
    for (CSVRecord row : Table.read(sites)) {
      rows.put(SiteKey.of(row), row);
    }
    Map<String, List<Bar>> looks = new LinkedHashMap<>();
    List<Bar> all = new ArrayList<>();
    for (TruthSite site : truth) {
      CSVRecord row = rows.get(site.key());
      if (row != null && judged(site, row)) {
        Bar bar = bar(site, row);
        looks.computeIfAbsent(site.look(), look -> new ArrayList<>()).add(bar);
        all.add(bar);
      }
    }
    List<LookBars> judged = new ArrayList<>();
    looks.forEach((look, bars) -> judged.add(of(look, bars)));
    if (!all.isEmpty()) {
      judged.add(of("all", all));
    }
    return judged;
  }

  private static boolean judged(TruthSite site, CSVRecord row) {
    String se = Table.cell(row, "projected_area_se_cm2");
    boolean enough = site.open() || site.visibleAreaCm2() >= LEAST_VISIBLE_CM2;
    return site.planted() && enough && !se.isBlank() && Double.parseDouble(se) > 0;
  }

  private static Bar bar(TruthSite site, CSVRecord row) {
    double error =
        site.open()
            ? Table.number(row, "projected_area_cm2") - site.projectedAreaCm2()
            : Table.number(row, "visible_area_cm2") - site.visibleAreaCm2();
    return new Bar(error, Table.number(row, "projected_area_se_cm2"));
  }

  static LookBars of(String look, List<Bar> bars) {
    double sum = 0;
    double squares = 0;
    int covered = 0;
    for (Bar bar : bars) {
      double z = bar.errorCm2 / bar.seCm2;
      sum += z;
      squares += z * z;
      covered += Math.abs(z) <= WITHIN ? 1 : 0;
    }
    double n = bars.size();
    List<Bar> ranked = new ArrayList<>(bars);
    ranked.sort(Comparator.comparingDouble(Bar::seCm2));
    int third = bars.size() < LEAST_TO_RANK ? 0 : Math.floorDiv(bars.size(), 3);
    return new LookBars(
        look,
        bars.size(),
        sum / n,
        Math.sqrt(squares / n),
        covered / n,
        meanError(ranked.subList(0, third)),
        meanError(ranked.subList(bars.size() - third, bars.size())));
  }

  private static double meanError(List<Bar> bars) {
    return bars.stream().mapToDouble(b -> Math.abs(b.errorCm2)).average().orElse(0);
  }

  /**
   * Writes looks as a Markdown table.
   *
   * @param looks the looks
   * @return the text
   */
  public static String markdown(List<LookBars> looks) {
    StringBuilder text =
        new StringBuilder("| look | sites | mean | spread | 95 % interval holds the truth |")
            .append(" mean error, smallest third, cm2 | largest third, cm2 | times |\n| --- |")
            .append(" ---: |".repeat(7))
            .append('\n');
    for (LookBars l : looks) {
      text.append(
          String.format(
              Locale.ROOT,
              "| %s | %d | %+.2f | %.2f | %.1f %% | %s |\n",
              l.look,
              l.sites,
              l.bias,
              l.spread,
              100 * l.coveredShare,
              thirds(l)));
    }
    return text.toString();
  }

  private static String thirds(LookBars l) {
    return l.sites < LEAST_TO_RANK || l.lowThirdCm2 <= 0
        ? "| | "
        : String.format(
            Locale.ROOT,
            "%.2f | %.2f | %.1f",
            l.lowThirdCm2,
            l.highThirdCm2,
            l.highThirdCm2 / l.lowThirdCm2);
  }
}
