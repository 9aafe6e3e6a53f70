// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.raftgauge.batch.run.CorrectionNotes;
import org.raftgauge.batch.run.RunSummary;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.problem.PlainLine;
import org.raftgauge.core.problem.Problem;

/** Says what a run came to, on one screen. */
final class SummaryText {
  /** Lines of a kind that leave the whole on a screen of 30 lines. */
  private static final int MOST_LINES = 5;

  private static final int MOST_RAFTS = 12;

  /** An inch is 2.54 cm exactly (International yard and pound agreement of 1959). */
  private static final double CM2_IN_SQUARE_FOOT = 144 * 6.4516;

  private SummaryText() {}

  /** Words a run; what is wrong with the book comes again, since it holds up sites. */
  static List<String> lines(RunSummary run, Workplace.OpenBook open) {
    List<String> lines = new ArrayList<>();
    run.evening().ifPresent(evening -> lines.add("Evening  " + evening));
    lines.add("Photos   " + photos(run));
    lines.add(
        String.format(
            Locale.ROOT,
            "Rafts    %d measured, %d sites, %s of leaf",
            run.rafts(),
            run.sites(),
            area(run.totalAreaCm2(), open.farm().book().units())));
    run.evening().ifPresent(evening -> lines.add("Missing  " + missing(run)));
    run.judged().ifPresent(judged -> lines.addAll(stations(judged)));
    run.judged().ifPresent(judged -> lines.addAll(EveningText.lines(judged)));
    if (!run.corrections().isEmpty()) {
      lines.add("Amended  " + CorrectionNotes.line(run.corrections()));
    }
    List<String> attention = new ArrayList<>();
    open.problems().stream()
        .filter(Problem::isError)
        .map(Problem::toString)
        .forEach(attention::add);
    attention.addAll(run.attention());
    some("To see to:", attention, "photos.csv and sites.csv", lines);
    some("Note:", run.notes(), "run.json", lines);
    lines.add("Results  " + run.folder());
    if (Files.isRegularFile(run.folder().resolve("report.html"))) {
      lines.add("Page     report.html in that folder: open it in a browser");
    }
    return lines;
  }

  private static List<String> stations(EveningResult evening) {
    return evening.stations().stream()
        .map(s -> "Station  " + s.station() + (s.holds() ? ", photos held: " : ": ") + s.finding())
        .toList();
  }

  private static String area(double cm2, Units units) {
    return switch (units) {
      case METRIC ->
          cm2 < 1e4
              ? String.format(Locale.ROOT, "%.0f cm2", cm2)
              : String.format(Locale.ROOT, "%.2f m2", cm2 / 1e4);
      case IMPERIAL ->
          cm2 < CM2_IN_SQUARE_FOOT
              ? String.format(Locale.ROOT, "%.1f sq in", units.area(cm2))
              : String.format(Locale.ROOT, "%.1f sq ft", cm2 / CM2_IN_SQUARE_FOOT);
    };
  }

  private static String photos(RunSummary run) {
    String counts =
        run.photos().entrySet().stream()
            .filter(e -> e.getValue() > 0)
            .map(e -> e.getValue() + " " + e.getKey().name().toLowerCase(Locale.ROOT))
            .collect(Collectors.joining(", "));
    return counts.isEmpty() ? "none" : counts;
  }

  private static String missing(RunSummary run) {
    Collection<String> rafts = run.notPhotographed();
    if (rafts.isEmpty()) {
      return "no raft: each that the run looked for was photographed";
    }
    String more = rafts.size() > MOST_RAFTS ? ", ... (all in run.json)" : "";
    return rafts.size()
        + " expected, not photographed: "
        + rafts.stream().limit(MOST_RAFTS).collect(Collectors.joining(", "))
        + more;
  }

  private static void some(String title, List<String> all, String where, List<String> lines) {
    if (all.isEmpty()) {
      return;
    }
    lines.add(title);
    all.stream().limit(MOST_LINES).map(PlainLine::of).forEach(line -> lines.add("  " + line));
    if (all.size() > MOST_LINES) {
      lines.add("  ... and " + (all.size() - MOST_LINES) + " more in " + where);
    }
  }
}
