// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import org.raftgauge.batch.plot.RaftPlots;
import org.raftgauge.batch.run.BookFarm;
import org.raftgauge.batch.run.RunOutcome;
import org.raftgauge.batch.run.RunSummary;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.CloseEvening;
import org.raftgauge.core.evening.RaftLook;
import org.raftgauge.core.evening.Seen;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.report.RaftRows;
import org.raftgauge.core.report.SiteRow;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.track.Spread;

/**
 * A pretended farm of rafts of 24 sites in ponds of ten, photographed every second evening from day
 * 4 on. Plants grow by 0.2 a day of ln(area), from 10 cm2 on day 4; on every raft A1 is bare and B2
 * has 40 % of the others' area; the last raft of the book is never photographed.
 */
final class PretendRun {
  static final LocalDate PLANTED = LocalDate.of(2026, 4, 6);
  private static final double FIRST_DAY = 4;

  private final CropBook book;
  private final int rafts;
  private final int evenings;
  private final int ended;

  private PretendRun(CropBook book, int rafts, int evenings, int ended) {
    this.book = book;
    this.rafts = rafts;
    this.evenings = evenings;
    this.ended = ended;
  }

  /** Returns the same farm, but for a raft that was harvested before the last evening. */
  static PretendRun harvested(Path folder, int rafts, int evenings, int ended) throws IOException {
    of(folder, rafts, evenings);
    Path plantings = folder.resolve("plantings.csv");
    String row = name(ended) + ",";
    List<String> lines =
        Files.readAllLines(plantings).stream()
            .map(l -> l.startsWith(row) ? l.replace(",,,L1", ",," + last(evenings) + ",L1") : l)
            .toList();
    Files.write(plantings, lines);
    return new PretendRun(CropBook.read(folder).book(), rafts, evenings, ended);
  }

  /** Returns the same farm, but for the first raft, whose planting its book does not know. */
  static PretendRun unplanted(Path folder, int rafts, int evenings) throws IOException {
    of(folder, rafts, evenings);
    Path plantings = folder.resolve("plantings.csv");
    List<String> lines = Files.readAllLines(plantings);
    lines.removeIf(line -> line.startsWith(name(0) + ","));
    Files.write(plantings, lines);
    return new PretendRun(CropBook.read(folder).book(), rafts, evenings, -1);
  }

  private static LocalDate last(int evenings) {
    return PLANTED.plusDays((long) FIRST_DAY + 2L * (evenings - 1));
  }

  /** Writes a book into a folder and pretends a run. */
  static PretendRun of(Path folder, int rafts, int evenings) throws IOException {
    Files.createDirectories(folder.resolve("stations"));
    Files.writeString(folder.resolve("book.yaml"), "time_zone: UTC\nstation: bench\n");
    Files.writeString(
        folder.resolve("stations/bench.yaml"),
        """
        kind: passing
        cameras: 1
        image_width_px: 2000
        image_height_px: 3000
        lens: {fx_px: 2500, fy_px: 2500, cx_px: 1000, cy_px: 1500, k1: 0, k2: 0, p1: 0, p2: 0, k3: 0}
        camera_height_mm: 1500
        """);
    Files.writeString(
        folder.resolve("layouts.yaml"),
        """
        layouts:
          deck-24:
            board: {width_mm: 600, length_mm: 900}
            sites: {rows: 6, columns: 4, first_x_mm: 90, first_y_mm: 100, pitch_x_mm: 140, pitch_y_mm: 140, stagger_x_mm: 0}
        """);
    Files.writeString(
        folder.resolve("crops.yaml"),
        """
        crops:
          butterhead:
            colour_model: green-leaf
            height_model: {scale_mm: 5.2, exponent: 0.5, mean_to_top: 0.5}
            limits: {lagging_share: 0.78, ahead_share: 1.35, closed_outline: 0.35}
        """);
    StringBuilder plantings =
        new StringBuilder(
            "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,"
                + "ended_on,lot\n");
    for (int raft = 0; raft <= rafts; raft++) {
      plantings.append(
          name(raft)
              + ",P"
              + (1 + raft / 10)
              + ","
              + (1 + raft % 10)
              + ",butterhead,,deck-24,,2026-03-23,"
              + PLANTED
              + ",,,L1\n");
    }
    Files.writeString(folder.resolve("plantings.csv"), plantings);
    return new PretendRun(CropBook.read(folder).book(), rafts, evenings, -1);
  }

  static String name(int raft) {
    return String.format("R%03d", raft + 1);
  }

  CropBook book() {
    return book;
  }

  /** Returns what the run has to show. */
  RunOutcome outcome() {
    List<PhotoMeasure> photos = new ArrayList<>();
    List<RaftRows> rows = new ArrayList<>();
    Map<String, String> pictures = new HashMap<>();
    for (int evening = 0; evening < evenings; evening++) {
      for (int raft = 0; raft < rafts; raft++) {
        if (raft == ended && evening == evenings - 1) {
          continue;
        }
        PhotoMeasure photo = photo(raft, evening);
        photos.add(photo);
        pictures.put(photo.photo(), photo.photo().replace(".jpg", ""));
        rows.add(rows(photo));
      }
    }
    return new RunOutcome(
        photos, rows, pictures, summary(rows), new RunOutcome.Stamp("0", "c0de", "b00c"));
  }

  /** Writes the page and, as a run does before it, the growth plots. */
  void write(Path run) throws IOException {
    RunOutcome outcome = outcome();
    RaftPlots.write(
        run.resolve("plots"),
        outcome.summary().judged().orElseThrow().growth(),
        book.units(),
        Spread.IN_TURN);
    new RunPage(book).write(outcome, run);
  }

  /** Says what of the rows counts: all of it. */
  private static Seen seen(List<RaftRows> rows) {
    List<RaftLook> rafts = new ArrayList<>();
    List<SiteLook> sites = new ArrayList<>();
    for (RaftRows row : rows) {
      String photo = row.photo().photo();
      String raft = row.raft().raft().orElseThrow();
      OffsetDateTime at = row.photo().takenAt().orElseThrow();
      rafts.add(new RaftLook(photo, "bench", raft, at, "", RaftLook.Tag.FINE));
      row.sites().forEach(s -> sites.add(new SiteLook(photo, "bench", raft, at, s.site())));
    }
    return new Seen(rafts, sites);
  }

  private RunSummary summary(List<RaftRows> rows) {
    LocalDate evening = last(evenings);
    TreeMap<LocalDate, java.util.NavigableSet<String>> missing = new TreeMap<>();
    missing.put(evening, new TreeSet<>(List.of(name(rafts))));
    return new RunSummary(
        Path.of("out"),
        new EnumMap<>(PhotoStatus.class),
        rafts,
        24 * rafts,
        0,
        List.of(),
        missing,
        List.of(),
        List.of(),
        Optional.of(CloseEvening.of(book, seen(rows), evening, Map.of())),
        Optional.empty(),
        List.of());
  }

  private PhotoMeasure photo(int raft, int evening) {
    OffsetDateTime at =
        OffsetDateTime.parse(PLANTED + "T18:00:00Z").plusDays((long) FIRST_DAY + 2L * evening);
    return new PhotoMeasure(
        at.toLocalDate() + "/" + name(raft) + ".jpg",
        String.format("%064x", 1000 * evening + raft),
        "bench",
        Optional.of(at),
        "",
        PhotoStatus.USED,
        "",
        "",
        OptionalDouble.of(0.8),
        OptionalDouble.of(0),
        OptionalDouble.of(0),
        List.of(raft(raft, evening)));
  }

  private RaftMeasure raft(int raft, int evening) {
    Random random = new Random(31L * raft);
    List<SiteMeasure> sites = new ArrayList<>();
    for (SiteId id : book.layout("deck-24", PLANTED).orElseThrow().grid().sites()) {
      double healthy = 10 * Math.exp(0.2 * 2 * evening + 0.1 * random.nextGaussian());
      double area = id.toString().equals("A1") ? 0 : healthy;
      sites.add(site(id, id.toString().equals("B2") ? 0.4 * area : area));
    }
    return new RaftMeasure(
        Optional.of(name(raft)),
        "",
        "deck-24",
        PoseSource.MARKERS,
        0.3,
        0.4,
        1500,
        true,
        OptionalDouble.of(0.2),
        OptionalDouble.of(0),
        sites,
        0.9,
        "");
  }

  private static SiteMeasure site(SiteId id, double area) {
    return new SiteMeasure(
        id,
        OptionalDouble.of(area),
        OptionalDouble.of(0.02 * area),
        OptionalDouble.of(area),
        false,
        0,
        20,
        0.97,
        List.of(),
        List.of(),
        0.9,
        "");
  }

  private RaftRows rows(PhotoMeasure photo) {
    BookFarm farm = new BookFarm(book, "b00c");
    RaftMeasure raft = photo.rafts().get(0);
    List<SiteRow> sites =
        raft.sites().stream()
            .map(
                site ->
                    new SiteRow(
                        site,
                        farm.plantAt(
                            raft.raft().orElseThrow(), site.site(), photo.takenAt().orElseThrow())))
            .toList();
    return new RaftRows(photo, raft, sites, "", OptionalDouble.empty());
  }
}
