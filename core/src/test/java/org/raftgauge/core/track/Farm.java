// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.site.SiteMeasure;

/** A farm written raft by raft: boards of 6 x 4 sites, plants that differ by 12 %. */
final class Farm {
  static final LocalDate FIRST = LocalDate.of(2027, 1, 4);
  static final int ROWS = 6;
  static final int COLUMNS = 4;
  static final int SITES = ROWS * COLUMNS;

  private final Path folder;
  private final Random random;
  private final List<String> plantings = new ArrayList<>();
  private final List<SiteLook> looks = new ArrayList<>();
  private String crop = "";
  private String events = "";
  private final List<String> climate = new ArrayList<>();

  /** Tells ln(area) of a site of a raft on a day, but for what is the plant's own. */
  interface Grows {
    double ln(int site, int dat);
  }

  Farm(Path folder, long seed) {
    this.folder = folder;
    this.random = new Random(seed);
  }

  /** Adds lines to what the book says of its one crop. */
  Farm crop(String more) {
    crop = more;
    return this;
  }

  Farm events(String rows) {
    events = rows;
    return this;
  }

  /** Writes the house's mean temperature of so many days from a day on, degrees C. */
  Farm climate(int from, double... meanC) {
    for (int i = 0; i < meanC.length; i++) {
      climate.add("," + FIRST.plusDays(from + i) + "," + meanC[i]);
    }
    return this;
  }

  /** Plants a raft on a day. */
  Farm plant(String raft, String pond, int from, int evenings) {
    plantings.add(
        String.join(
            ",",
            raft,
            pond,
            "pretend",
            "",
            FIRST.plusDays(from).toString(),
            FIRST.plusDays(from + evenings).toString()));
    return this;
  }

  /** Plants a raft on a day and photographs it on each evening from then on. */
  Farm raft(String raft, String pond, int from, int evenings, Grows grows) {
    plant(raft, pond, from, evenings);
    double[] own = new double[SITES];
    for (int site = 0; site < SITES; site++) {
      own[site] = 0.12 * random.nextGaussian();
    }
    for (int dat = 0; dat < evenings; dat++) {
      for (int site = 0; site < SITES; site++) {
        double ln = grows.ln(site, dat) + own[site] + 0.02 * random.nextGaussian();
        look(raft, from + dat, measure(site(site), Math.exp(ln), List.of()));
      }
    }
    return this;
  }

  /** Sows a tray. */
  Farm tray(String raft, int from) {
    plantings.add(String.join(",", raft, "", "pretend", FIRST.plusDays(from).toString(), "", ""));
    return this;
  }

  Farm look(String raft, int day, SiteMeasure measure) {
    looks.add(
        new SiteLook(
            raft + "-" + day,
            "bench",
            raft,
            FIRST.plusDays(day).atTime(18, 0).atOffset(ZoneOffset.UTC),
            measure));
    return this;
  }

  static SiteMeasure measure(SiteId site, double areaCm2, List<SiteMeasure.Colour> colour) {
    OptionalDouble area = OptionalDouble.of(areaCm2);
    OptionalDouble se = OptionalDouble.of(0.02 * areaCm2);
    return new SiteMeasure(site, area, se, area, false, 0, 0, 1, List.of(), colour, 1, "");
  }

  static SiteId site(int site) {
    return new SiteId(site / COLUMNS, site % COLUMNS);
  }

  CropBook book() {
    try {
      Files.writeString(folder.resolve("book.yaml"), "time_zone: UTC\nday_starts_at: \"04:00\"\n");
      Files.writeString(
          folder.resolve("layouts.yaml"),
          """
          layouts:
            board-24:
              board: {width_mm: 800, length_mm: 1200}
              sites: {rows: 6, columns: 4, first_x_mm: 130, first_y_mm: 150, pitch_x_mm: 180, pitch_y_mm: 180}
              tag: {x_mm: 400, y_mm: 42, side_mm: 60}
          """);
      Files.writeString(
          folder.resolve("crops.yaml"),
          """
          crops:
            pretend:
              colour_model: green-leaf
              height_model: {scale_mm: 5, exponent: 0.5}
          """
              + crop);
      StringBuilder rows =
          new StringBuilder("raft,pond,crop,sown_on,transplanted_on,ended_on,layout\n");
      plantings.forEach(row -> rows.append(row).append(",board-24\n"));
      Files.writeString(folder.resolve("plantings.csv"), rows.toString());
      Files.writeString(
          folder.resolve("events.csv"), "at,kind,raft,site,to_raft,to_site,by,note\n" + events);
      if (!climate.isEmpty()) {
        Files.writeString(
            folder.resolve("climate.csv"),
            "pond,date,mean_air_c\n" + String.join("\n", climate) + "\n");
      }
      return CropBook.read(folder).book();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  List<PlantSeries> series(int day) {
    return CollectSeries.withEnded(book(), looks, FIRST.plusDays(day));
  }

  List<Judged> judge(int day) {
    CropBook book = book();
    LocalDate evening = FIRST.plusDays(day);
    return JudgeEvening.judge(
        book, CollectSeries.withEnded(book, looks, evening), evening, TrackRules.defaults());
  }

  /** Returns the row of a raft, pond or station. */
  Judged group(int day, Judged.Scope scope, String name) {
    return judge(day).stream()
        .filter(row -> row.scope() == scope)
        .filter(
            row ->
                name.equals(
                    switch (scope) {
                      case RAFT -> row.place().raft();
                      case POND -> row.place().pond();
                      default -> row.place().station();
                    }))
        .findFirst()
        .orElseThrow();
  }

  List<Judged> sites(int day, String raft) {
    return judge(day).stream()
        .filter(row -> row.scope() == Judged.Scope.SITE && row.place().raft().equals(raft))
        .toList();
  }
}
