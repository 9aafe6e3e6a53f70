// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Writes {@code sites.csv}: one row for each planted site of each raft that counts. A bare planted
 * site has area 0; a held one has an empty area and a reason.
 */
public final class SitesTable {
  private static final List<String> HEADER =
      List.of(
          "photo",
          "station",
          "raft",
          "pond",
          "crop",
          "variety",
          "lot",
          "site",
          "plant",
          "taken_at",
          "dat",
          "projected_area_cm2",
          "projected_area_se_cm2",
          "visible_area_cm2",
          "closed",
          "shared_outline_fraction",
          "height_mm",
          "height_source",
          "parallax_factor",
          "equivalent_diameter_mm",
          "largest_diameter_mm",
          "perimeter_mm",
          "solidity",
          "offset_x_mm",
          "offset_y_mm",
          "lab_l",
          "lab_a",
          "lab_b",
          "pale_fraction",
          "dead_fraction",
          "pose_source",
          "quality",
          "reason",
          "slot",
          "height_p95_mm",
          "canopy_volume_cm3",
          "height_seen_fraction",
          "split_moved_cm2");

  private SitesTable() {}

  /** Returns the names of the columns, in order. */
  public static List<String> columns() {
    return HEADER;
  }

  /**
   * Writes the table, sorted by raft, photo, slot and site.
   *
   * @param rafts the rafts that count
   * @return the text of the file
   */
  public static String csv(List<RaftRows> rafts) {
    CsvText csv = new CsvText(HEADER);
    for (RaftRows raft : rafts.stream().sorted(RaftRows.ORDER).toList()) {
      for (SiteRow row : raft.sites()) {
        place(csv, raft, row);
        areas(csv, row.site(), raft.raft());
        traits(csv, row.site());
        csv.text(raft.raft().poseSource().name().toLowerCase(Locale.ROOT))
            .number(row.site().quality(), 3)
            .text(row.site().held().isEmpty() ? raft.doubt() : row.site().held())
            .text(raft.raft().slot());
        relief(csv, row.site());
        csv.number(moved(row.site()), 2).endRow();
      }
    }
    return csv.toString();
  }

  private static void place(CsvText csv, RaftRows raft, SiteRow row) {
    Optional<Planting> planting = row.plant().map(SitePlant::planting);
    csv.text(raft.photo().photo())
        .text(raft.photo().station())
        .text(raft.raft().raft().orElse(""))
        .text(planting.map(Planting::pond).orElse(""))
        .text(planting.map(Planting::crop).orElse(""))
        .text(planting.map(Planting::variety).orElse(""))
        .text(planting.map(Planting::lot).orElse(""))
        .text(row.site().site().toString())
        .text(row.plant().map(SitePlant::plant).orElse(""))
        .time(raft.photo().takenAt())
        .number(row.plant().map(SitePlant::dat).orElse(OptionalDouble.empty()), 3);
  }

  private static void areas(CsvText csv, SiteMeasure site, RaftMeasure raft) {
    boolean measured = site.projectedAreaCm2().isPresent();
    csv.number(site.projectedAreaCm2(), 2)
        .number(site.projectedAreaSeCm2(), 2)
        .number(site.visibleAreaCm2(), 2);
    if (!measured) {
      csv.text("").text("").text("").text("").text("");
      return;
    }
    csv.flag(site.closed())
        .number(site.sharedOutlineFraction(), 3)
        .number(site.heightMm(), 1)
        .text(heightSource(site, raft))
        .number(site.parallaxFactor(), 4);
  }

  private static String heightSource(SiteMeasure site, RaftMeasure raft) {
    return site.relief().stream()
        .map(r -> r.source().name().toLowerCase(Locale.ROOT))
        .findFirst()
        .orElse(raft.rulerSites().contains(site.site()) ? "ruler" : "model");
  }

  private static void relief(CsvText csv, SiteMeasure site) {
    csv.number(relief(site, SiteMeasure.Relief::p95Mm), 1)
        .number(relief(site, SiteMeasure.Relief::volumeCm3), 1)
        .number(relief(site, SiteMeasure.Relief::seenFraction), 3);
  }

  private static OptionalDouble moved(SiteMeasure site) {
    return site.projectedAreaCm2().isPresent()
        ? OptionalDouble.of(site.movedCm2())
        : OptionalDouble.empty();
  }

  private static OptionalDouble relief(
      SiteMeasure site, ToDoubleFunction<SiteMeasure.Relief> part) {
    return site.relief().stream().mapToDouble(part).findFirst();
  }

  private static void traits(CsvText csv, SiteMeasure site) {
    csv.number(shape(site, SiteMeasure.Shape::equivalentDiameterMm), 1)
        .number(shape(site, SiteMeasure.Shape::largestDiameterMm), 1)
        .number(shape(site, SiteMeasure.Shape::perimeterMm), 1)
        .number(shape(site, SiteMeasure.Shape::solidity), 3)
        .number(shape(site, SiteMeasure.Shape::offsetXMm), 1)
        .number(shape(site, SiteMeasure.Shape::offsetYMm), 1)
        .number(colour(site, SiteMeasure.Colour::labL), 1)
        .number(colour(site, SiteMeasure.Colour::labA), 1)
        .number(colour(site, SiteMeasure.Colour::labB), 1)
        .number(colour(site, SiteMeasure.Colour::paleFraction), 3)
        .number(colour(site, SiteMeasure.Colour::deadFraction), 3);
  }

  private static OptionalDouble shape(SiteMeasure site, ToDoubleFunction<SiteMeasure.Shape> part) {
    return site.shape().stream().mapToDouble(part).findFirst();
  }

  private static OptionalDouble colour(
      SiteMeasure site, ToDoubleFunction<SiteMeasure.Colour> part) {
    return site.colour().stream().mapToDouble(part).findFirst();
  }
}
