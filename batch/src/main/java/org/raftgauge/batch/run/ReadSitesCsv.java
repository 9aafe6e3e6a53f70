// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Known;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.report.SitesTable;
import org.raftgauge.core.table.Cells;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvRow;
import org.raftgauge.core.table.CsvTable;

/** Reads measures in the format of {@code sites.csv} as photos measured elsewhere. */
final class ReadSitesCsv {
  private static final List<String> REQUIRED =
      List.of("raft", "site", "taken_at", "projected_area_cm2");
  private static final double MOST_CM2 = 1e6;

  private final CropBook book;
  private final Findings findings = new Findings();
  private final Set<String> rafts = new TreeSet<>();
  private final Map<String, List<SiteCells>> photos = new LinkedHashMap<>();
  private final Map<String, Optional<Planting>> plantings = new HashMap<>();
  private final Set<String> seen = new HashSet<>();
  private final Set<String> unread = new HashSet<>();

  private final Known named;

  private ReadSitesCsv(BookReading reading) {
    this.book = reading.book();
    this.named = reading.rafts();
    book.tenures().forEach(tenure -> rafts.add(tenure.raft()));
  }

  /**
   * What a file holds.
   *
   * @param photos in the order of their first rows
   * @param warnings what a person should know
   */
  record Read(List<PhotoMeasure> photos, List<Problem> warnings) {}

  /**
   * Reads a file.
   *
   * @param file the file
   * @param book the book that knows rafts and layouts, as read
   * @return its photos
   * @throws InputException with every problem, if there is an error
   */
  static Read read(Path file, BookReading book) throws InputException {
    String name = Optional.ofNullable(file.getFileName()).map(Path::toString).orElse("");
    CsvTable table = CsvTable.read(file, name, columns());
    ReadSitesCsv reader = new ReadSitesCsv(book);
    table.problems().forEach(p -> reader.findings.addAll(List.of(unknownIsWrong(p))));
    table.rows().forEach(reader::row);
    if (reader.findings.errors() > 0) {
      throw new InputException(reader.findings.list());
    }
    List<PhotoMeasure> photos = reader.photos.values().stream().map(ImportedPhoto::of).toList();
    return new Read(photos, reader.findings.list());
  }

  private static Columns columns() {
    List<String> optional = new ArrayList<>(SitesTable.columns());
    optional.removeAll(REQUIRED);
    return new Columns(REQUIRED, optional);
  }

  /** Makes an error of a column that is not known: a misspelt one would be lost unsaid. */
  private static Problem unknownIsWrong(Problem problem) {
    return problem.isError() || !problem.found().startsWith("the column is unknown")
        ? problem
        : new Problem(
            problem.place(),
            "the column is unknown",
            guess(problem.remedy()) + "known: " + String.join(", ", SitesTable.columns()));
  }

  /** Keeps the nearest spelling of a remedy and drops its short list. */
  private static String guess(String remedy) {
    int list = remedy.indexOf("known: ");
    return list < 0 ? "" : remedy.substring(0, list);
  }

  private void row(CsvRow row) {
    Cells cells = new Cells(row, findings);
    String raft = cells.required("raft");
    if (!raft.isEmpty() && !rafts.contains(raft) && named.lacks(raft)) {
      cells.error(
          "raft", "the raft \"" + raft + "\" is unknown", NearestSpelling.remedy(raft, rafts));
    }
    Optional<OffsetDateTime> takenAt = time(cells);
    Optional<SiteId> site = site(cells);
    SiteNumbers numbers = SiteNumbers.read(cells, MOST_CM2);
    String held = cells.text("reason");
    if (numbers.area().isEmpty() && held.isEmpty() && cells.sound()) {
      cells.error("projected_area_cm2", "the cell is blank", "fill it in, or say why in reason");
    }
    if (cells.sound()) {
      String layout = layout(cells, raft, site.orElseThrow(), takenAt.orElseThrow());
      add(cells, new SiteCells(row, raft, site.get(), takenAt.get(), numbers, layout));
    }
  }

  private Optional<OffsetDateTime> time(Cells cells) {
    String text = cells.required("taken_at");
    Optional<OffsetDateTime> time =
        text.isEmpty() ? Optional.empty() : book.farmDay().parseTime(text);
    if (time.isEmpty() && !text.isEmpty()) {
      cells.error(
          "taken_at",
          "\"" + text + "\" is not a time",
          "write date and time, as in 2026-04-06T18:00");
    }
    if (book.farmDay().isLeftOut(text)) {
      cells.error(
          "taken_at",
          "\"" + text + "\" never was on the farm's clock, which went forward over it",
          "write what the clock showed, or the offset behind it, as in 2026-04-06T18:00+02:00");
    }
    return time;
  }

  private static Optional<SiteId> site(Cells cells) {
    String text = cells.required("site");
    try {
      return text.isEmpty() ? Optional.empty() : Optional.of(SiteId.parse(text));
    } catch (IllegalArgumentException odd) {
      cells.error("site", "\"" + text + "\" does not name a site", "write a site as in B12");
      return Optional.empty();
    }
  }

  /** Returns the name of the raft's layout; a site that it does not have is an error. */
  private String layout(Cells cells, String raft, SiteId site, OffsetDateTime at) {
    LocalDate evening = book.farmDay().evening(at.toInstant());
    boolean first = !plantings.containsKey(raft + " " + evening);
    Optional<Planting> planting =
        plantings.computeIfAbsent(
            raft + " " + evening, k -> book.plantingsOn(raft, evening).stream().findFirst());
    Optional<Layout> layout = planting.flatMap(p -> book.layout(p.layout(), evening));
    if (!rafts.contains(raft)) {
      unread(cells, raft);
    } else if (planting.isEmpty() && first) {
      cells.warning(
          "taken_at",
          "raft " + raft + " has no planting on " + evening,
          "mend plantings.csv; until then its rows of that evening are kept and not judged");
    } else if (layout.isPresent() && !layout.get().grid().sites().contains(site)) {
      cells.error(
          "site",
          "layout " + layout.get().name() + " has no site " + site,
          "write one of "
              + layout.get().grid().rows()
              + " rows and "
              + layout.get().grid().columns()
              + " columns");
    }
    return planting.map(Planting::layout).orElse("");
  }

  /** Says once of a raft that what the book says of it cannot be used. */
  private void unread(Cells cells, String raft) {
    if (unread.add(raft)) {
      cells.warning(
          "raft",
          "what the book says of raft " + raft + " cannot be read, as said above",
          "mend that first; its rows here are kept, and not judged until then");
    }
  }

  private void add(Cells cells, SiteCells site) {
    String photo = site.photo();
    List<SiteCells> rows = photos.computeIfAbsent(photo, p -> new ArrayList<>());
    if (!rows.isEmpty() && !rows.get(0).takenAt().isEqual(site.takenAt())) {
      cells.error("taken_at", "photo \"" + photo + "\" has another time above", "give it one time");
    }
    if (!rows.isEmpty() && !rows.get(0).station().equals(site.station())) {
      cells.error(
          "station", "photo \"" + photo + "\" has another station above", "give it one station");
    }
    if (!seen.add(photo + "\n" + site.raft() + "\n" + site.site())) {
      cells.error("site", site.site() + " stands twice in photo \"" + photo + "\"", "keep one row");
    }
    rows.add(site);
  }
}
