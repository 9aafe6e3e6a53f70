// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.batch.plot.Chart;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;
import org.raftgauge.core.report.SitePlant;
import org.raftgauge.core.report.SiteRow;
import org.raftgauge.core.track.Judged;

/**
 * Charts how a raft grows: the median plant of each evening, what was expected of it, the crop's
 * limits about that, and the sites to look at. Areas on a logarithmic axis: equal growth rates are
 * equal slopes.
 */
final class GrowthChart {
  private static final int FEWEST_EVENINGS = 2;

  private final Gathered all;
  private final String raft;
  private final List<RaftLook> looks;

  GrowthChart(Gathered all, String raft, List<RaftLook> looks) {
    this.all = all;
    this.raft = raft;
    this.looks = looks;
  }

  /** Values along the axis of days. */
  private record Line(List<Double> days, List<Double> areas) {
    Line() {
      this(new ArrayList<>(), new ArrayList<>());
    }

    void add(double day, double area) {
      days.add(day);
      areas.add(area);
    }

    Chart.Series named(String name, Chart.Look look) {
      return new Chart.Series(name, look, days, areas);
    }
  }

  /** Returns the chart; nothing before two evenings have an age and an area. */
  Optional<Chart> chart() {
    Line measured = measured();
    if (measured.days().size() < FEWEST_EVENINGS) {
      return Optional.empty();
    }
    List<Chart.Series> series = new ArrayList<>();
    series.add(measured.named("median plant", Chart.Look.POINTS));
    Crop.Limits limits = limits();
    Line expected = expected(1);
    if (!expected.days().isEmpty()) {
      Chart.Look solid = expected.days().size() > 1 ? Chart.Look.LINE : Chart.Look.POINTS;
      Chart.Look dashed = expected.days().size() > 1 ? Chart.Look.DASHED : Chart.Look.POINTS;
      series.add(expected(limits.laggingShare()).named("lagging below", dashed));
      series.add(expected.named("expected", solid));
      series.add(expected(limits.aheadShare()).named("ahead above", dashed));
    }
    Line flagged = flagged();
    if (!flagged.days().isEmpty()) {
      series.add(flagged.named("sites to look at", Chart.Look.POINTS));
    }
    return Optional.of(
        new Chart(
            "",
            new Chart.Axis("days", Chart.Scale.LINEAR),
            new Chart.Axis("leaf area, " + all.texts().areaUnit(), Chart.Scale.LOG),
            series));
  }

  private Line measured() {
    Map<LocalDate, double[]> evenings = new TreeMap<>(remembered());
    for (RaftLook look : looks) {
      if (look.ageDays().isPresent() && look.medianCm2().isPresent()) {
        evenings.put(
            look.evening(),
            new double[] {look.ageDays().getAsDouble(), look.medianCm2().getAsDouble()});
      }
    }
    Line line = new Line();
    evenings.values().forEach(at -> line.add(at[0], all.texts().inUnit(at[1])));
    return line;
  }

  /** Returns age and median area of each evening of the plants that stand on the raft. */
  private Map<LocalDate, double[]> remembered() {
    Map<LocalDate, List<Sight>> sights = new TreeMap<>();
    for (PlantSeries series : all.seriesOf(raft)) {
      for (Sight sight : series.sights()) {
        if (sight.hasArea()) {
          sights.computeIfAbsent(sight.evening(), e -> new ArrayList<>()).add(sight);
        }
      }
    }
    Map<LocalDate, double[]> evenings = new TreeMap<>();
    sights.forEach(
        (evening, seen) -> {
          List<Double> areas = seen.stream().map(Sight::areaCm2).sorted().toList();
          double age = seen.stream().mapToDouble(Sight::ageDays).min().orElseThrow();
          evenings.put(evening, new double[] {age, RaftLook.median(areas).orElseThrow()});
        });
    return evenings;
  }

  private Line expected(double factor) {
    Line line = new Line();
    for (LocalDate evening : all.input().verdicts().keySet()) {
      List<Judged> rows = rows(evening);
      List<Double> areas =
          rows.stream().map(r -> r.share().orElseThrow().expectedAreaCm2()).sorted().toList();
      OptionalDouble age = rows.stream().flatMapToDouble(r -> r.place().ageDays().stream()).min();
      if (age.isPresent()) {
        double area = RaftLook.median(areas).orElseThrow() * factor;
        line.add(age.getAsDouble(), all.texts().inUnit(area));
      }
    }
    return line;
  }

  /** Returns the row of the raft where something is expected of it, else those of its sites. */
  private List<Judged> rows(LocalDate evening) {
    Optional<Judged> whole = all.verdicts().raft(evening, raft).filter(r -> r.share().isPresent());
    return whole.isPresent()
        ? List.of(whole.get())
        : all.verdicts().sites(evening, raft).stream().filter(r -> r.share().isPresent()).toList();
  }

  private Line flagged() {
    RaftLook last = looks.get(looks.size() - 1);
    Line line = new Line();
    for (SiteRow row : last.rows().sites()) {
      boolean toLookAt =
          all.verdicts()
              .site(last.evening(), raft, row.site().site())
              .filter(j -> Mark.of(j.verdict()).toLookAt())
              .isPresent();
      double area = row.site().projectedAreaCm2().orElse(0);
      if (toLookAt && area > 0 && last.ageDays().isPresent()) {
        line.add(last.ageDays().getAsDouble(), all.texts().inUnit(area));
      }
    }
    return line;
  }

  private Crop.Limits limits() {
    return looks.get(looks.size() - 1).rows().sites().stream()
        .flatMap(site -> site.plant().stream())
        .map(SitePlant::planting)
        .flatMap(planting -> all.book().crop(planting).stream())
        .findFirst()
        .map(Crop::limits)
        .orElse(Crop.Limits.defaults());
  }
}
