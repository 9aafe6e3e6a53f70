// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import org.raftgauge.core.book.Planting;

/**
 * Writes {@code rafts.csv}: one row for each raft that counts.
 *
 * <p>{@code total_area_cm2} is the sum of its sites' projected areas; median, 10th and 90th
 * percentile and coefficient of variation are over the sites with canopy: bare and held ones are
 * counted in their own columns.
 */
public final class RaftsTable {
  private static final List<String> HEADER =
      List.of(
          "photo",
          "station",
          "raft",
          "pond",
          "berth",
          "crop",
          "lot",
          "taken_at",
          "dat",
          "sites_planted",
          "sites_empty",
          "sites_closed",
          "sites_held",
          "canopy_cover",
          "total_area_cm2",
          "median_area_cm2",
          "p10_area_cm2",
          "p90_area_cm2",
          "area_cv",
          "leftover_canopy_cm2",
          "slot",
          "pose_source",
          "pose_error_mm",
          "mm_per_px",
          "quality",
          "reason",
          "repeatability_ln",
          "notes");

  private RaftsTable() {}

  /**
   * Writes the table, sorted by raft, photo and slot.
   *
   * @param rafts the rafts that count
   * @return the text of the file
   */
  public static String csv(List<RaftRows> rafts) {
    CsvText csv = new CsvText(HEADER);
    for (RaftRows raft : rafts.stream().sorted(RaftRows.ORDER).toList()) {
      place(csv, raft);
      sites(csv, raft);
      csv.text(raft.raft().slot())
          .text(raft.raft().poseSource().name().toLowerCase(Locale.ROOT))
          .number(raft.raft().poseErrorMm(), 2)
          .number(raft.raft().mmPerPx(), 4)
          .number(raft.raft().quality(), 3)
          .text(raft.doubt())
          .number(raft.repeatabilityLn(), 4)
          .list(raft.raft().notes())
          .endRow();
    }
    return csv.toString();
  }

  private static void place(CsvText csv, RaftRows raft) {
    csv.text(raft.photo().photo())
        .text(raft.photo().station())
        .text(raft.raft().raft().orElse(""))
        .text(raft.each(Planting::pond))
        .text(raft.each(Planting::berth))
        .text(raft.each(Planting::crop))
        .text(raft.each(Planting::lot))
        .time(raft.photo().takenAt())
        .number(raft.dat(), 3);
  }

  private static void sites(CsvText csv, RaftRows raft) {
    List<Double> areas = raft.areasCm2();
    csv.number(count(raft, s -> s.plant().isPresent()))
        .number(count(raft, SiteRow::empty))
        .number(count(raft, s -> s.site().closed()))
        .number(count(raft, s -> !s.site().held().isEmpty()))
        .number(raft.raft().canopyCover(), 4)
        .number(raft.totalAreaCm2(), 2)
        .number(Spread.quantile(areas, 0.5), 2)
        .number(Spread.quantile(areas, 0.1), 2)
        .number(Spread.quantile(areas, 0.9), 2)
        .number(Spread.variation(areas), 4)
        .number(raft.raft().leftoverCanopyCm2(), 2);
  }

  private static int count(RaftRows raft, Predicate<SiteRow> which) {
    return (int) raft.sites().stream().filter(which).count();
  }
}
