// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.evening.RaftGrowth;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.track.Spread;
import org.raftgauge.core.track.Verdict;

/**
 * Draws how the plants of a raft have grown: every site as a line over its age, the flagged ones in
 * colours and with marks of their own by verdict, over the band in which a plant is on track. Areas
 * on a logarithmic axis: equal growth rates are equal slopes.
 */
public final class RaftPlots {
  private static final String PROLOG = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

  private final RaftGrowth raft;
  private final Units units;

  private RaftPlots(RaftGrowth raft, Units units) {
    this.raft = raft;
    this.units = units;
  }

  /**
   * Writes a plot for each raft with at least one area.
   *
   * @param folder made where absent
   * @param rafts what to draw
   * @param units of the areas
   * @param spread goes through the plots
   * @return true
   * @throws IOException if a file cannot be written
   */
  public static boolean write(Path folder, List<RaftGrowth> rafts, Units units, Spread spread)
      throws IOException {
    List<Map.Entry<String, RaftGrowth>> files = List.copyOf(files(rafts).entrySet());
    if (!files.isEmpty()) {
      Files.createDirectories(folder);
    }
    try {
      spread.each(files, f -> new RaftPlots(f.getValue(), units).write(folder.resolve(f.getKey())));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    return true;
  }

  private void write(Path file) {
    try {
      Files.writeString(file, PROLOG + PaintChart.svg(chart(), "p") + "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Returns the file of each plot, {@code growth-RAFT.svg}; a raft that holds several crops or lots
   * has several, numbered.
   *
   * @param rafts what to draw; those without an area have no file
   */
  public static Map<String, RaftGrowth> files(List<RaftGrowth> rafts) {
    Set<String> names = new HashSet<>();
    Map<String, RaftGrowth> files = new LinkedHashMap<>();
    for (RaftGrowth raft : rafts) {
      if (raft.sites().stream().anyMatch(site -> !site.points().isEmpty())) {
        files.put("growth-" + name(raft.raft(), names) + ".svg", raft);
      }
    }
    return files;
  }

  /** Returns a name that any file system takes and no other raft has. */
  private static String name(String raft, Set<String> taken) {
    String plain = raft.replaceAll("[^\\p{L}\\p{N}_-]", "_");
    String name = plain;
    for (int n = 2; !taken.add(name.toLowerCase(Locale.ROOT)); n++) {
      name = plain + "-" + n;
    }
    return name;
  }

  private Chart chart() {
    String pond = raft.pond().isEmpty() ? "" : ", pond " + raft.pond();
    return new Chart(
        "Raft " + raft.raft() + pond + ": " + raft.crop(),
        new Chart.Axis(axis(raft.clock()), Chart.Scale.LINEAR),
        new Chart.Axis("projected leaf area, " + units.areaUnit(), Chart.Scale.LOG),
        series());
  }

  private static String axis(PlantSeries.AgeClock clock) {
    return switch (clock) {
      case TRANSPLANT -> "days after transplant (DAT)";
      case SOWING -> "days after sowing (DAS)";
      case CUT -> "days after the cut (DAC)";
    };
  }

  private List<Chart.Series> series() {
    Map<Verdict, List<RaftGrowth.OfSite>> flagged = new TreeMap<>();
    List<RaftGrowth.OfSite> others = new ArrayList<>();
    for (RaftGrowth.OfSite site : raft.sites()) {
      if (!site.points().isEmpty()) {
        site.verdict()
            .filter(v -> !v.isCalm())
            .map(v -> flagged.computeIfAbsent(v, word -> new ArrayList<>()))
            .orElse(others)
            .add(site);
      }
    }
    List<Chart.Series> series = new ArrayList<>();
    series.addAll(reference(raft.reference()));
    if (!others.isEmpty()) {
      series.add(lines(others.size() + " other plants", Chart.Look.FAINT, others));
    }
    flagged.forEach(
        (verdict, sites) -> series.add(lines(named(verdict, sites), Chart.Look.MARKED, sites)));
    return series;
  }

  private static String named(Verdict verdict, List<RaftGrowth.OfSite> sites) {
    int most = Math.min(3, sites.size());
    String names =
        sites.subList(0, most).stream()
            .map(s -> s.site().toString())
            .collect(Collectors.joining(" "));
    return verdict.word()
        + ": "
        + names
        + (sites.size() > most ? " +" + (sites.size() - most) : "");
  }

  private List<Chart.Series> reference(List<RaftGrowth.Reference> days) {
    if (days.isEmpty()) {
      return List.of();
    }
    List<Double> x = new ArrayList<>();
    List<Double> y = new ArrayList<>();
    for (RaftGrowth.Reference day : days) {
      x.add(day.dat());
      y.add(units.area(day.laggingCm2()));
    }
    for (int i = days.size() - 1; i >= 0; i--) {
      x.add(days.get(i).dat());
      y.add(units.area(days.get(i).aheadCm2()));
    }
    return List.of(
        new Chart.Series("lagging to ahead", Chart.Look.BAND, x, y),
        new Chart.Series(
            "reference",
            Chart.Look.DASHED,
            days.stream().map(RaftGrowth.Reference::dat).toList(),
            days.stream().map(day -> units.area(day.medianCm2())).toList()));
  }

  /** Returns all sites as one series that breaks off between them. */
  private Chart.Series lines(String name, Chart.Look look, List<RaftGrowth.OfSite> sites) {
    List<Double> x = new ArrayList<>();
    List<Double> y = new ArrayList<>();
    for (RaftGrowth.OfSite site : sites) {
      if (!x.isEmpty()) {
        x.add(x.get(x.size() - 1));
        y.add(Double.NaN);
      }
      for (RaftGrowth.Point point : site.points()) {
        x.add(point.dat());
        y.add(units.area(point.areaCm2()));
      }
    }
    return new Chart.Series(name, look, x, y);
  }
}
