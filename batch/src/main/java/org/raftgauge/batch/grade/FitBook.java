// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.batch.plot.PaintChart;
import org.raftgauge.batch.run.BookLooks;
import org.raftgauge.batch.run.ProgramVersion;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Weighing;
import org.raftgauge.core.forecast.HarvestLessons;
import org.raftgauge.core.grader.FitGrader;
import org.raftgauge.core.grader.FitRule;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.GraderFile;
import org.raftgauge.core.grader.GraderResult;
import org.raftgauge.core.grader.JoinWeighings;
import org.raftgauge.core.grader.Weighed;
import org.raftgauge.core.history.SiteLook;

/** Fits a grader to a book's weighings and writes it to {@code graders/}. */
public final class FitBook {

  /**
   * What is asked for.
   *
   * @param folder of the crop book
   * @param crop to fit
   * @param within how far photo and weighing may lie apart
   * @param state how plants were weighed, as {@code weighings.csv} says; nothing for the commonest
   * @param rule which sizes weights may be told from
   * @param now the time to write down
   */
  public record Request(
      Path folder,
      String crop,
      Duration within,
      Optional<String> state,
      FitRule rule,
      OffsetDateTime now) {}

  /**
   * What came of it.
   *
   * @param result the grader, or why there is none
   * @param written files written, none where there is no grader
   * @param lines for people: what was left out and why, and what to look at
   */
  public record Outcome(GraderResult result, List<Path> written, List<String> lines) {

    /** Copies the lists. */
    public Outcome {
      written = List.copyOf(written);
      lines = List.copyOf(lines);
    }
  }

  private FitBook() {}

  /**
   * Fits.
   *
   * @param book the crop book as read
   * @param request what is asked for
   * @return the grader and what was written
   * @throws IOException if the history cannot be read or a file not written
   */
  public static Outcome fit(CropBook book, Request request) throws IOException {
    List<String> lines = new ArrayList<>();
    List<Weighing> weighings = oneState(book.diary().weighings(), request.state(), lines);
    List<SiteLook> looks = BookLooks.upTo(book, request.folder(), LocalDate.MAX);
    JoinWeighings.Joined joined =
        new BookMeasures(book, looks).join(request.crop(), weighings, request.within());
    joined.notJoined().forEach(n -> lines.add("weighings.csv:" + n.line() + ": " + n.why()));
    GraderResult result =
        FitGrader.fit(
            request.crop(),
            joined.weighed(),
            request.rule(),
            origin(request, joined.weighed(), stateOf(weighings)));
    if (!(result instanceof Grader fitted)) {
      return new Outcome(result, List.of(), lines);
    }
    Grader grader = HarvestLessons.teach(book, looks, fitted);
    grader.remarks().forEach(lines::add);
    return new Outcome(grader, write(grader, joined.weighed(), request, lines), lines);
  }

  /** Keeps the weighings of one state: what is weighed must be one thing. */
  static List<Weighing> oneState(
      List<Weighing> weighings, Optional<String> wanted, List<String> lines) {
    Map<String, List<Weighing>> byState =
        weighings.stream()
            .collect(Collectors.groupingBy(FitBook::stateOf, TreeMap::new, Collectors.toList()));
    if (byState.isEmpty()) {
      return List.of();
    }
    String state =
        wanted.orElseGet(
            () ->
                byState.entrySet().stream()
                    .max(Comparator.comparingInt(e -> e.getValue().size()))
                    .orElseThrow()
                    .getKey());
    byState.forEach(
        (other, rows) -> {
          if (!other.equals(state)) {
            lines.add(
                rows.size()
                    + " weighings of state \""
                    + other
                    + "\" were left out: this grader is for \""
                    + state
                    + "\"; fit those with --state "
                    + other);
          }
        });
    return byState.getOrDefault(state, List.of());
  }

  private static String stateOf(Weighing weighing) {
    return weighing.state().map(s -> s.name().toLowerCase(Locale.ROOT)).orElse("unsaid");
  }

  private static String stateOf(List<Weighing> weighings) {
    return weighings.isEmpty() ? "unsaid" : stateOf(weighings.get(0));
  }

  private static Grader.Origin origin(Request request, List<Weighed> weighed, String state) {
    List<OffsetDateTime> times =
        weighed.stream()
            .map(Weighed::weighedAt)
            .sorted(Comparator.comparing(OffsetDateTime::toInstant))
            .toList();
    String first = times.isEmpty() ? "" : times.get(0).toString();
    String last = times.isEmpty() ? "" : times.get(times.size() - 1).toString();
    return new Grader.Origin(
        request.now().truncatedTo(ChronoUnit.SECONDS).toString(),
        ProgramVersion.current().version(),
        state,
        first,
        last,
        request.within().toMinutes() / 60.0,
        weighed.size() + " rows of weighings.csv joined with photos in history.db");
  }

  private static List<Path> write(
      Grader grader, List<Weighed> weighed, Request request, List<String> lines)
      throws IOException {
    Path folder = Files.createDirectories(request.folder().resolve("graders"));
    String name = request.crop();
    Map<Path, String> files = new LinkedHashMap<>();
    Map<String, String> plots = new LinkedHashMap<>();
    grader
        .fits()
        .forEach(
            (regime, fit) ->
                GraderPlots.of(
                        regime, fit, weighed.stream().filter(w -> w.regime() == regime).toList())
                    .forEach(
                        (plot, chart) -> {
                          String id = regime + "-" + plot;
                          String svg = PaintChart.svg(chart, id);
                          plots.put(id, svg);
                          files.put(folder.resolve(name + "-" + id + ".svg"), svg);
                        }));
    files.put(folder.resolve(name + ".html"), SummaryPage.of(grader, plots, lines));
    files.put(folder.resolve(name + ".yaml"), GraderFile.write(grader));
    for (Map.Entry<Path, String> file : files.entrySet()) {
      Path part = folder.resolve("." + file.getKey().getFileName() + ".part");
      Files.writeString(part, file.getValue(), StandardCharsets.UTF_8);
      Files.move(part, file.getKey(), StandardCopyOption.REPLACE_EXISTING);
    }
    return List.copyOf(files.keySet());
  }
}
