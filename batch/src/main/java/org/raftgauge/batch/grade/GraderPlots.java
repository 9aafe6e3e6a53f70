// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.raftgauge.batch.plot.Chart;
import org.raftgauge.batch.plot.Chart.Axis;
import org.raftgauge.batch.plot.Chart.Look;
import org.raftgauge.batch.plot.Chart.Scale;
import org.raftgauge.batch.plot.Chart.Series;
import org.raftgauge.core.grader.Prediction;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Weighed;

/** The three plots of a fit: predicted and weighed, residuals, agreement. */
final class GraderPlots {
  private static final Axis PREDICTED = new Axis("predicted weight, g", Scale.LOG);

  private record Point(String variety, double predictedG, double weighedG) {
    double shareOff() {
      return 100 * (predictedG / weighedG - 1);
    }
  }

  private GraderPlots() {}

  /**
   * Returns the plots by the name of their files.
   *
   * @param regime of the fit, for the titles
   * @param fit the fit
   * @param weighed the plants that it was fitted on
   */
  static Map<String, Chart> of(Regime regime, RegimeFit fit, List<Weighed> weighed) {
    List<Point> points = new ArrayList<>();
    for (Weighed plant : weighed) {
      Optional<Prediction> told = fit.predict(plant.traits());
      told.ifPresent(
          p -> points.add(new Point(plant.traits().variety(), p.medianG(), plant.freshWeightG())));
    }
    Map<String, Chart> charts = new LinkedHashMap<>();
    String sites = regime == Regime.OPEN ? "Open sites: " : "Closed sites: ";
    if (!points.isEmpty()) {
      charts.put("fit", fitted(sites, fit, points));
      charts.put("residuals", residuals(sites, points));
      charts.put("agreement", agreement(sites, fit, points));
    }
    return charts;
  }

  private static Chart fitted(String sites, RegimeFit fit, List<Point> points) {
    List<Double> ends = ends(points, Point::predictedG);
    double reach = Math.exp(1.645 * fit.numbers().residualSd());
    List<Series> series = new ArrayList<>(byVariety(points, Point::predictedG, Point::weighedG));
    series.add(new Series("equal", Look.LINE, ends, ends));
    series.add(
        new Series(
            "95 % weigh less", Look.DASHED, ends, ends.stream().map(v -> v * reach).toList()));
    series.add(
        new Series(
            "5 % weigh less", Look.DASHED, ends, ends.stream().map(v -> v / reach).toList()));
    return new Chart(
        sites + "weighed and predicted", PREDICTED, new Axis("weighed, g", Scale.LOG), series);
  }

  private static Chart residuals(String sites, List<Point> points) {
    List<Series> series =
        new ArrayList<>(
            byVariety(points, Point::predictedG, p -> Math.log(p.weighedG() / p.predictedG())));
    series.add(
        new Series("no error", Look.LINE, ends(points, Point::predictedG), List.of(0.0, 0.0)));
    return new Chart(
        sites + "residuals",
        PREDICTED,
        new Axis("ln weighed - ln predicted", Scale.LINEAR),
        series);
  }

  private static Chart agreement(String sites, RegimeFit fit, List<Point> points) {
    ToDoubleFunction<Point> mean = p -> Math.sqrt(p.predictedG() * p.weighedG());
    List<Double> ends = ends(points, mean);
    List<Series> series = new ArrayList<>(byVariety(points, mean, Point::shareOff));
    RegimeFit.Limits limits = fit.numbers().agreement();
    series.add(flat("bias", Look.LINE, ends, limits.biasShare()));
    series.add(flat("lower limit", Look.DASHED, ends, limits.lowerShare()));
    series.add(flat("upper limit", Look.DASHED, ends, limits.upperShare()));
    return new Chart(
        sites + "agreement (Bland and Altman)",
        new Axis("mean of predicted and weighed, g", Scale.LOG),
        new Axis("predicted - weighed, %", Scale.LINEAR),
        series);
  }

  private static Series flat(String name, Look look, List<Double> ends, double share) {
    return new Series(name, look, ends, List.of(100 * share, 100 * share));
  }

  private static List<Double> ends(List<Point> points, ToDoubleFunction<Point> x) {
    double low = points.stream().mapToDouble(x).min().orElseThrow();
    double high = points.stream().mapToDouble(x).max().orElseThrow();
    return List.of(low, high);
  }

  private static List<Series> byVariety(
      List<Point> points, ToDoubleFunction<Point> x, ToDoubleFunction<Point> y) {
    Map<String, List<Point>> groups =
        points.stream()
            .collect(
                Collectors.groupingBy(
                    p -> p.variety().isEmpty() ? "plants" : p.variety(),
                    TreeMap::new,
                    Collectors.toList()));
    return groups.entrySet().stream()
        .map(
            e ->
                new Series(
                    e.getKey(),
                    Look.POINTS,
                    e.getValue().stream().map(x::applyAsDouble).toList(),
                    e.getValue().stream().map(y::applyAsDouble).toList()))
        .toList();
  }
}
