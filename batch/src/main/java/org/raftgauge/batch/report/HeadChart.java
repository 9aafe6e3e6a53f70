// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.batch.plot.Chart;
import org.raftgauge.core.book.Harvest;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.HeadSpread;
import org.raftgauge.core.forecast.RaftForecast;

/** Charts how many heads of a raft are expected in each class of weights. */
final class HeadChart {
  /** Classes up to the heaviest head; a working value. */
  private static final double CLASSES = 14;

  /** The heaviest head shown: 99 of 100 lie under it. */
  private static final double HEAVIEST_SD = 2.33;

  private final RaftForecast raft;
  private final EveningForecast forecast;
  private final Units units;
  private final double step;
  private final int classes;

  private HeadChart(RaftForecast raft, EveningForecast forecast, Units units) {
    this.raft = raft;
    this.forecast = forecast;
    this.units = units;
    double heaviest = Math.max(heaviest(0), heaviest(later()));
    this.step = nice(heaviest / CLASSES);
    this.classes = (int) Math.ceil(heaviest / step);
  }

  /**
   * Charts.
   *
   * @param raft a raft's forecast
   * @param forecast the evening's
   * @param units of the weights
   * @return nothing where weights cannot be told
   */
  static Optional<Ahead.Heads> of(RaftForecast raft, EveningForecast forecast, Units units) {
    if (raft.headSpread(0).heads().isEmpty()) {
      return Optional.empty();
    }
    HeadChart chart = new HeadChart(raft, forecast, units);
    return Optional.of(new Ahead.Heads(chart.chart(), chart.words()));
  }

  /** Returns the ready day, or the last day that is forecast. */
  private int later() {
    return raft.readyDay(0.5).orElse(raft.lastDay());
  }

  private double heaviest(int day) {
    return units.head(
        raft.headSpread(day).heads().stream()
            .mapToDouble(h -> h.medianG() * Math.exp(HEAVIEST_SD * h.sdLn()))
            .max()
            .orElse(0));
  }

  /** Returns 1, 2 or 5 times a power of ten, at least the given width. */
  private static double nice(double width) {
    double ten = Math.pow(10, Math.floor(Math.log10(width)));
    double share = width / ten;
    return ten * (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10);
  }

  private Chart chart() {
    List<Chart.Series> series = new ArrayList<>();
    series.add(steps(raft.headSpread(0), "this evening", Chart.Look.BAND));
    if (later() > 0 && !raft.headSpread(later()).heads().isEmpty()) {
      String ready = raft.readyDay(0.5).isPresent() ? ", ready" : "";
      String day = Texts.day(forecast.date(later()));
      series.add(steps(raft.headSpread(later()), day + ready, Chart.Look.LINE));
    }
    double top = series.stream().flatMap(s -> s.y().stream()).mapToDouble(y -> y).max().orElse(1);
    raft.who()
        .harvest()
        .map(Harvest::minimumG)
        .filter(g -> g > 0)
        .ifPresent(
            g ->
                series.add(
                    new Chart.Series(
                        "minimum",
                        Chart.Look.DASHED,
                        List.of(units.head(g), units.head(g)),
                        List.of(0.0, top))));
    return new Chart(
        "",
        new Chart.Axis("weight of a head, " + units.headUnit(), Chart.Scale.LINEAR),
        new Chart.Axis(
            "heads in each " + number(step) + " " + units.headUnit(), Chart.Scale.LINEAR),
        series);
  }

  /** Returns the classes as steps from the axis and back to it. */
  private Chart.Series steps(HeadSpread spread, String name, Chart.Look look) {
    List<Double> x = new ArrayList<>(List.of(0.0));
    List<Double> y = new ArrayList<>(List.of(0.0));
    double grams = step / units.head(1);
    for (int i = 0; i < classes; i++) {
      double heads = spread.expected(i * grams, (i + 1) * grams);
      x.addAll(List.of(i * step, (i + 1) * step));
      y.addAll(List.of(heads, heads));
    }
    x.add(classes * step);
    y.add(0.0);
    return new Chart.Series(name, look, x, y);
  }

  private String words() {
    HeadSpread tonight = raft.headSpread(0);
    List<Double> medians =
        tonight.heads().stream().map(h -> units.head(h.medianG())).sorted().toList();
    String under =
        raft.who()
            .harvest()
            .map(Harvest::minimumG)
            .filter(g -> g > 0)
            .map(
                g ->
                    ", "
                        + Texts.whole(tonight.expected(0, g))
                        + " under the minimum of "
                        + number(units.head(g))
                        + " "
                        + units.headUnit())
            .orElse("");
    return "This evening "
        + Texts.count(medians.size(), "head")
        + ", the middle one "
        + number(RaftLook.median(medians).orElseThrow())
        + " "
        + units.headUnit()
        + under;
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, value < 10 ? "%.1f" : "%.0f", value)
        .replaceFirst("\\.0$", "");
  }
}
