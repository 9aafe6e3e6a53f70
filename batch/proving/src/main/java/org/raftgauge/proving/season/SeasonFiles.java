// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Writes a season as a crop book, measures in the columns of {@code sites.csv}, and its truth. */
final class SeasonFiles {
  static final LocalDate FIRST = LocalDate.of(2027, 4, 5);

  private SeasonFiles() {}

  static void write(Path out, SeasonPlan plan, List<SeasonSite> sites) throws IOException {
    Path book = Files.createDirectories(out.resolve("book"));
    Files.createDirectories(book.resolve("stations"));
    for (String station : List.of("bench-a", "bench-b", "gantry")) {
      Files.writeString(
          book.resolve("stations").resolve(station + ".yaml"),
          """
          kind: passing
          cameras: 1
          image_width_px: 2000
          image_height_px: 3000
          lens: {fx_px: 3000, fy_px: 3000, cx_px: 1000, cy_px: 1500}
          camera_height_mm: 1600
          """);
    }
    Files.writeString(
        book.resolve("book.yaml"),
        "time_zone: UTC\nday_starts_at: \"04:00\"\nstation: bench-a\nunits: metric\n");
    Files.writeString(
        book.resolve("layouts.yaml"),
        """
        layouts:
          season-18:
            board: {width_mm: 600, length_mm: 1200}
            sites: {rows: 6, columns: 3, first_x_mm: 120, first_y_mm: 150, pitch_x_mm: 180, pitch_y_mm: 180}
            tag: {x_mm: 300, y_mm: 42, side_mm: 60}
        """);
    Files.writeString(
        book.resolve("crops.yaml"),
        """
        crops:
          batavia:
            colour_model: green-leaf
            height_model: {scale_mm: 5, exponent: 0.5}
        """);
    List<String> plantings =
        new ArrayList<>(
            List.of(
                "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,"
                    + "ended_on,lot"));
    for (int raft = 0; raft < plan.rafts(); raft++) {
      plantings.add(
          String.join(
              ",",
              SimulateSeason.raftId(raft),
              "pond-" + (SimulateSeason.pondOf(raft) + 1),
              "",
              "batavia",
              "",
              "season-18",
              "",
              "",
              FIRST.plusDays(SimulateSeason.startDay(raft)).toString(),
              "",
              "",
              ""));
    }
    Files.writeString(book.resolve("plantings.csv"), String.join("\n", plantings) + "\n");
    Files.writeString(out.resolve("sites.csv"), measures(sites));
    Files.writeString(out.resolve("truth.csv"), truth(sites));
  }

  private static String measures(List<SeasonSite> sites) {
    StringBuilder text =
        new StringBuilder(
            "station,raft,site,taken_at,projected_area_cm2,projected_area_se_cm2,closed\r\n");
    for (SeasonSite s : sites) {
      if (s.photographed()) {
        text.append(
            String.format(
                Locale.ROOT,
                "%s,%s,%s,%sT18:00:00Z,%.2f,%.2f,%s\r\n",
                s.station(),
                s.raft(),
                s.site(),
                FIRST.plusDays(s.day()),
                s.measuredCm2(),
                s.seCm2(),
                s.closed()));
      }
    }
    return text.toString();
  }

  private static String truth(List<SeasonSite> sites) {
    StringBuilder text =
        new StringBuilder("raft,site,evening,fate,onset_dat,true_area_cm2,healthy_median_cm2\r\n");
    for (SeasonSite s : sites) {
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%s,%s,%s,%s,%.3f,%.3f\r\n",
              s.raft(),
              s.site(),
              FIRST.plusDays(s.day()),
              s.fate().kind().name().toLowerCase(Locale.ROOT),
              s.fate().onsetDat() > 1000
                  ? ""
                  : String.format(Locale.ROOT, "%.2f", s.fate().onsetDat()),
              s.trueCm2(),
              s.healthyMedianCm2()));
    }
    return text.toString();
  }
}
