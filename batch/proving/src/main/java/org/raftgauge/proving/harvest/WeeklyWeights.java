// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.cohort.CohortCurve;
import org.raftgauge.core.cohort.CohortFit;
import org.raftgauge.core.cohort.CohortPrior;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.cohort.FitCohort;
import org.raftgauge.core.cohort.Forecast;
import org.raftgauge.core.growth.Series;

/**
 * Forecasts the last weighing of published weekly weights from the first k dates, each plant
 * weighed once: with the other growers as past cycles, and with nothing else known.
 */
final class WeeklyWeights {
  private static final double Z80 = 1.2815515655446004;

  private final Map<String, TreeMap<Double, List<Double>>> growers = new TreeMap<>();

  static String section(Path table) throws IOException {
    WeeklyWeights weights = new WeeklyWeights();
    for (String line : Files.readAllLines(table)) {
      String[] cells = line.split(",", -1);
      if (!cells[0].equals("grower")) {
        weights
            .growers
            .computeIfAbsent(cells[0], g -> new TreeMap<>())
            .computeIfAbsent(Double.valueOf(cells[2]), d -> new ArrayList<>())
            .add(Double.valueOf(cells[4]));
      }
    }
    return weights.text();
  }

  private String text() {
    StringBuilder text =
        new StringBuilder(
            "\n## Published weekly weights\n\nThe last weighing of each of three growers from the"
                + " first k dates (destructive weighings, 3rd International Autonomous Greenhouse"
                + " Challenge, Bleiswijk 2022, shared test data). Error: forecast mean over weighed"
                + " mean, less 1. Inside: share of the last weighing's plants in their 80 %"
                + " interval. Three growers are few: the figures are no more than an"
                + " indication.\n\n| k | known of other growers | days ahead | errors | mean"
                + " absolute error | inside 80 % | mean width |\n| ---: | --- | --- | --- | ---: | ---: | ---: |\n");
    for (int k = 2; k <= 6; k++) {
      row(text, k, true);
      row(text, k, false);
    }
    return text.toString();
  }

  private void row(StringBuilder text, int k, boolean history) {
    List<String> errors = new ArrayList<>();
    List<String> ahead = new ArrayList<>();
    double absolute = 0;
    double width = 0;
    int inside = 0;
    int plants = 0;
    for (String grower : growers.keySet()) {
      Optional<CohortCurve> curve = curve(grower, k, history);
      TreeMap<Double, List<Double>> dates = growers.get(grower);
      double last = dates.lastKey();
      double from = List.copyOf(dates.keySet()).get(Math.min(k, dates.size()) - 1);
      if (curve.isEmpty() || from >= last) {
        errors.add(curve.isEmpty() ? "no curve" : "-");
        continue;
      }
      ahead.add(String.format(Locale.ROOT, "%.0f", last - from));
      Forecast plant = curve.get().lnArea(last);
      double mean = Math.exp(plant.mean() + square(curve.get().plantSd(0)) / 2);
      double weighed = dates.get(last).stream().mapToDouble(w -> w).average().orElseThrow();
      errors.add(String.format(Locale.ROOT, "%+.0f %%", 100 * (mean / weighed - 1)));
      absolute += Math.abs(mean / weighed - 1);
      width += 2 * Math.sinh(Z80 * plant.sd());
      for (double w : dates.get(last)) {
        plants++;
        inside += Math.abs(Math.log(w) - plant.mean()) <= Z80 * plant.sd() ? 1 : 0;
      }
    }
    int n = Math.max(1, ahead.size());
    text.append(
        String.format(
            Locale.ROOT,
            "| %d | %s | %s | %s | %s | %s | %s |%n",
            k,
            history ? "yes" : "no",
            String.join(", ", ahead),
            String.join(", ", errors),
            ahead.isEmpty() ? "-" : percent(absolute / n),
            plants == 0 ? "-" : inside + " of " + plants,
            ahead.isEmpty() ? "-" : percent(width / n)));
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * share);
  }

  private static double square(double x) {
    return x * x;
  }

  private Optional<CohortCurve> curve(String grower, int k, boolean history) {
    List<Series> own = plants(grower, k);
    CohortRule rule = CohortRule.defaults();
    if (history) {
      List<List<Series>> others =
          growers.keySet().stream()
              .filter(g -> !g.equals(grower))
              .map(g -> plants(g, Integer.MAX_VALUE))
              .toList();
      Optional<CohortPrior> prior = FitCohort.priorOf(others, rule);
      return prior.map(p -> FitCohort.of(own, rule, p));
    }
    CohortFit fit = FitCohort.of(own, rule);
    return fit instanceof CohortCurve curve ? Optional.of(curve) : Optional.empty();
  }

  private List<Series> plants(String grower, int k) {
    List<Series> plants = new ArrayList<>();
    int n = 0;
    for (Map.Entry<Double, List<Double>> date : growers.get(grower).entrySet()) {
      if (n++ < k) {
        for (double w : date.getValue()) {
          plants.add(Series.of(new double[] {date.getKey()}, new double[] {w}));
        }
      }
    }
    return plants;
  }
}
