// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.site.SiteMeasure;

/**
 * A pretended farm: rafts of 12 plants each, all set out on {@link #FIRST}, whose healthy median is
 * 8 cm2 times exp(0.12 age); two ponds, each with its station, or one bench for both.
 */
final class Pretend {
  static final LocalDate FIRST = LocalDate.of(2027, 3, 1);
  static final double RATE = 0.12;
  static final int SITES = 12;

  private final Path folder;
  private final int rafts;
  private final Random random;
  private final double[][] plants;
  private double noise = 0.02;
  private boolean oneBench;
  private final List<SiteLook> looks = new ArrayList<>();

  /** Says by how much a plant departs on an evening, ln(area). */
  interface Departure {
    double of(int raft, int site, int day);
  }

  Pretend(Path folder, int rafts, long seed) {
    this.folder = folder;
    this.rafts = rafts;
    this.random = new Random(seed);
    this.plants = new double[rafts][SITES];
    for (double[] raft : plants) {
      for (int i = 0; i < SITES; i++) {
        raft[i] = 0.12 * random.nextGaussian();
      }
    }
    // The plants that tests look at are average ones.
    plants[0][0] = 0;
    plants[1][0] = 0;
  }

  Pretend withOneBench() {
    oneBench = true;
    return this;
  }

  Pretend withNoise(double sd) {
    noise = sd;
    return this;
  }

  static String raft(int raft) {
    return "P-" + (raft + 10);
  }

  /** Takes photos of every raft on evenings 0 to {@code last}. */
  Pretend photograph(int last, Departure departure) {
    for (int day = 0; day <= last; day++) {
      for (int raft = 0; raft < rafts; raft++) {
        for (int i = 0; i < SITES; i++) {
          double ln = Math.log(8) + RATE * day + plants[raft][i] + departure.of(raft, i, day);
          double area = Math.exp(ln + noise * random.nextGaussian());
          looks.add(look(raft, day, measure(i, area, false, "")));
        }
      }
    }
    return this;
  }

  /** Replaces what was said of a site on an evening. */
  Pretend say(int raft, int day, SiteMeasure measure) {
    SiteLook look = look(raft, day, measure);
    looks.removeIf(
        l ->
            l.raft().equals(look.raft())
                && l.takenAt().equals(look.takenAt())
                && l.measure().site().equals(measure.site()));
    looks.add(look);
    return this;
  }

  static SiteMeasure measure(int site, double areaCm2, boolean closed, String held) {
    OptionalDouble area = held.isEmpty() ? OptionalDouble.of(areaCm2) : OptionalDouble.empty();
    return new SiteMeasure(
        site(site),
        area,
        held.isEmpty() ? OptionalDouble.of(0.02 * areaCm2) : OptionalDouble.empty(),
        area,
        closed,
        closed ? 0.6 : 0,
        0,
        1,
        List.of(),
        List.of(),
        1,
        held);
  }

  static SiteId site(int site) {
    return new SiteId(site / 3, site % 3);
  }

  private SiteLook look(int raft, int day, SiteMeasure measure) {
    String station = oneBench ? "bench" : "bench-" + raft % 2;
    return new SiteLook(
        raft(raft) + "-" + day,
        station,
        raft(raft),
        FIRST.plusDays(day).atTime(18, 0).atOffset(ZoneOffset.UTC),
        measure);
  }

  List<Judged> judge(int day) {
    return said(day, Spread.IN_TURN).rows();
  }

  /** Judges an evening, its rafts gone through by a spread. */
  JudgeEvening.Said said(int day, Spread spread) {
    LocalDate evening = FIRST.plusDays(day);
    CropBook book = book();
    return JudgeEvening.all(
        book,
        CollectSeries.upTo(book, looks, evening),
        evening,
        new JudgeEvening.How(TrackRules.defaults(), spread));
  }

  /** Judges an evening and returns the sites' rows by raft and site. */
  Map<String, Judged> sites(int day) {
    Map<String, Judged> rows = new HashMap<>();
    for (Judged row : judge(day)) {
      if (row.scope() == Judged.Scope.SITE) {
        rows.put(row.place().raft() + "/" + row.place().site().orElseThrow(), row);
      }
    }
    return rows;
  }

  /** Returns a plant's own share of the healthy median, whatever befell it since. */
  double ownShare(String raftAndSite) {
    String[] parts = raftAndSite.split("/", 2);
    SiteId site = SiteId.parse(parts[1]);
    int raft = Integer.parseInt(parts[0].substring(2)) - 10;
    return Math.exp(plants[raft][site.row() * 3 + site.column()]);
  }

  Judged site(int raft, int site, int day) {
    return sites(day).get(raft(raft) + "/" + site(site));
  }

  List<Judged> groups(int day, Judged.Scope scope) {
    return judge(day).stream().filter(j -> j.scope() == scope).collect(Collectors.toList());
  }

  private CropBook book() {
    try {
      Files.writeString(folder.resolve("book.yaml"), "time_zone: UTC\nday_starts_at: \"04:00\"\n");
      Files.writeString(
          folder.resolve("layouts.yaml"),
          """
          layouts:
            pretend-12:
              board: {width_mm: 600, length_mm: 800}
              sites: {rows: 4, columns: 3, first_x_mm: 120, first_y_mm: 130, pitch_x_mm: 180, pitch_y_mm: 180}
              tag: {x_mm: 300, y_mm: 42, side_mm: 60}
          """);
      Files.writeString(
          folder.resolve("crops.yaml"),
          """
          crops:
            pretend:
              colour_model: green-leaf
              height_model: {scale_mm: 5, exponent: 0.5}
          """);
      StringBuilder plantings =
          new StringBuilder(
              "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot\n");
      for (int raft = 0; raft < rafts; raft++) {
        plantings.append(
            raft(raft) + ",pond-" + raft % 2 + ",,pretend,,pretend-12,,," + FIRST + ",,,\n");
      }
      Files.writeString(folder.resolve("plantings.csv"), plantings.toString());
      BookReading reading = CropBook.read(folder);
      return reading.book();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
