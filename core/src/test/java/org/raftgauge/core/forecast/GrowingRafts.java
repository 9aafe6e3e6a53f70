// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.LeftOut;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Size;
import org.raftgauge.core.grader.Term;
import org.raftgauge.core.grader.Validity;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Rafts of ten plants that all grow alike on a logistic curve, photographed without error each
 * second evening at 18:00: {@code A(t) = 400 / (1 + exp(-0.25 (t - 20)))} cm2.
 */
final class GrowingRafts {
  static final LocalDate TONIGHT = LocalDate.of(2027, 6, 1);
  static final DoubleUnaryOperator LOGISTIC = t -> 400 / (1 + Math.exp(-0.25 * (t - 20)));
  private static final int SITES = 10;
  private static final int CYCLE = 33;

  private final Path folder;
  private final StringBuilder plantings =
      new StringBuilder(
          "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,"
              + "lot\n");
  private final Map<String, String> files = new HashMap<>();
  private final List<SiteLook> looks = new ArrayList<>();
  private String harvest =
      "head_weight_g: 150, minimum_g: 100, ready_share: 0.9, window_dat: [20, 45]";

  GrowingRafts(Path folder) {
    this.folder = folder;
  }

  /** Adds three cycles that ended before. */
  GrowingRafts withPast() {
    for (int cycle = 1; cycle <= 3; cycle++) {
      LocalDate start = TONIGHT.minusDays(28 + 40L * cycle);
      plant("P-" + cycle, start, Optional.of(start.plusDays(CYCLE)));
      photograph("P-" + cycle, start, CYCLE);
    }
    return this;
  }

  /** Adds a raft that is so many days old tonight. */
  GrowingRafts raft(String id, int ageDays) {
    LocalDate start = TONIGHT.minusDays(ageDays);
    plant(id, start, Optional.empty());
    photograph(id, start, ageDays);
    return this;
  }

  GrowingRafts plant(String id, LocalDate start, Optional<LocalDate> ended) {
    plantings.append(
        "%s,pond-1,3,batavia,,ten,,,%s,,%s,\n"
            .formatted(id, start, ended.map(LocalDate::toString).orElse("")));
    return this;
  }

  /** Adds a tray that was sown some days ago and is not transplanted yet. */
  GrowingRafts tray(String id, int ageDays) {
    LocalDate sown = TONIGHT.minusDays(ageDays);
    plantings.append("%s,nursery,,batavia,,ten,,%s,,,,\n".formatted(id, sown));
    return photograph(id, sown, ageDays);
  }

  GrowingRafts file(String name, String text) {
    files.put(name, text);
    return this;
  }

  GrowingRafts harvest(String keys) {
    harvest = keys;
    return this;
  }

  /** Photographs a raft each second evening up to an age, the last one too. */
  GrowingRafts photograph(String id, LocalDate start, int last) {
    for (int age = last; age >= 4; age -= 2) {
      for (int site = 0; site < SITES; site++) {
        looks.add(look(id, site, start.plusDays(age), LOGISTIC.applyAsDouble(age + 0.75)));
      }
    }
    return this;
  }

  private static SiteLook look(String raft, int site, LocalDate day, double areaCm2) {
    SiteMeasure measure =
        new SiteMeasure(
            new SiteId(site / 2, site % 2),
            OptionalDouble.of(areaCm2),
            OptionalDouble.of(0.03 * areaCm2),
            OptionalDouble.of(areaCm2),
            false,
            0,
            0,
            1,
            List.of(),
            List.of(),
            1,
            "");
    return new SiteLook(
        raft + "-" + day, "bench", raft, day.atTime(18, 0).atOffset(ZoneOffset.UTC), measure);
  }

  /** Lets the leaf of a raft's first site be brown on all its photos. */
  GrowingRafts brown(String raft) {
    SiteId first = new SiteId(0, 0);
    looks.replaceAll(
        look ->
            look.raft().equals(raft) && look.measure().site().equals(first)
                ? new SiteLook(
                    look.photo(),
                    look.station(),
                    look.raft(),
                    look.takenAt(),
                    brown(look.measure()))
                : look);
    return this;
  }

  private static SiteMeasure brown(SiteMeasure m) {
    return new SiteMeasure(
        m.site(),
        m.projectedAreaCm2(),
        m.projectedAreaSeCm2(),
        m.visibleAreaCm2(),
        m.closed(),
        0,
        0,
        1,
        List.of(),
        List.of(new SiteMeasure.Colour(45, 8, 30, 0, 0.9)),
        1,
        "");
  }

  List<SiteLook> looks() {
    return looks;
  }

  CropBook book() {
    try {
      Files.createDirectories(folder.resolve("stations"));
      write(
          "book.yaml", "time_zone: UTC\nday_starts_at: \"04:00\"\nstation: bench\nunits: metric\n");
      write(
          "stations/bench.yaml",
          """
          kind: passing
          cameras: 1
          image_width_px: 2000
          image_height_px: 3000
          lens: {fx_px: 3000, fy_px: 3000, cx_px: 1000, cy_px: 1500}
          camera_height_mm: 1600
          """);
      write(
          "layouts.yaml",
          """
          layouts:
            ten:
              board: {width_mm: 600, length_mm: 1200}
              sites: {rows: 5, columns: 2, first_x_mm: 150, first_y_mm: 150, pitch_x_mm: 220, pitch_y_mm: 220}
              tag: {x_mm: 300, y_mm: 42, side_mm: 60}
          """);
      write(
          "crops.yaml",
          "crops:\n  batavia:\n    colour_model: green-leaf\n"
              + "    height_model: {scale_mm: 5, exponent: 0.5}\n    harvest: {"
              + harvest
              + "}\n");
      write("plantings.csv", plantings.toString());
      for (Map.Entry<String, String> file : files.entrySet()) {
        write(file.getKey(), file.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    BookReading reading = CropBook.read(folder);
    if (reading.problems().stream().anyMatch(p -> p.isError())) {
      throw new IllegalStateException(reading.problems().toString());
    }
    return reading.book();
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  EveningForecast forecast(Map<String, Grader> graders) {
    ForecastRule rule = ForecastRule.defaults();
    return ForecastEvening.of(book(), looks, graders, new Asked(TONIGHT, rule));
  }

  /** Returns a grader without error, {@code w = 0.5 A} g, that weighed plants of 50 to 300 cm2. */
  static Map<String, Grader> exact() {
    RegimeFit fit =
        new RegimeFit(
            new RegimeFit.Numbers(
                List.of(Term.of(), Term.of(Size.AREA)),
                "least squares",
                1e-6,
                1000,
                1,
                30,
                new LeftOut(0, 0, 0),
                new RegimeFit.Limits(0, 0, 0, 1),
                new Validity(
                    new EnumMap<>(Map.of(Size.AREA, new Validity.Range(50, 300))),
                    25,
                    175,
                    java.util.Set.of(""))),
            new double[] {Math.log(0.5), 1},
            new double[2][2]);
    Grader.Origin origin =
        new Grader.Origin(
            "2027-05-01T08:00Z",
            "test",
            "whole",
            "2027-04-20T08:00Z",
            "2027-04-30T08:00Z",
            24,
            "made by hand");
    return Map.of(
        "batavia",
        new Grader(
            "batavia", origin, Map.of(Regime.OPEN, fit), Map.of(), Optional.empty(), List.of()));
  }
}
